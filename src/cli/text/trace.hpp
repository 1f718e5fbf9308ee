#pragma once
#include <string>
#include <string_view>

#include "cli/text/printable.hpp"
#include "ohmtrail/diagnose/next.hpp"

namespace ohmtrail::cli {

/// A paragraph made safe to show, at most 60 columns wide: a serial line, a phone, a boat.
[[nodiscard]] std::string narrow(std::string_view text, std::string_view mark = "");

/// The three leading suspects with bars.
[[nodiscard]] std::string standing_in_words(const diagnose::NextResult& standing, bool colour);

}  // namespace ohmtrail::cli
