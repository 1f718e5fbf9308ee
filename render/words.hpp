#pragma once
#include <fmt/format.h>

#include <string>
#include <string_view>

#include "ohmtrail/diagnose/cause.hpp"
#include "ohmtrail/diagnose/finding.hpp"
#include "ohmtrail/netlist/system.hpp"

/// Sentences from the table of words, filled in.
namespace ohmtrail::render {

template <class... Args>
[[nodiscard]] std::string filled(std::string_view pattern, const Args&... args) {
  return fmt::format(fmt::runtime(pattern), args...);
}

/// With a capital at its beginning, where that is a plain letter.
[[nodiscard]] std::string sentence(std::string words);

[[nodiscard]] std::string_view what_it_is(diagnose::Cause cause);
[[nodiscard]] std::string_view rank_in_words(diagnose::Severity severity);

/// A point and where it is: "A2 + (port locker)".
[[nodiscard]] std::string point_in_words(const netlist::System& system, const std::string& point);

/// Where an element is, for someone who stands before it: "cable bank plus, its end at A2 + (port locker)".
[[nodiscard]] std::string where(const netlist::System& system, const std::string& element_id);

}  // namespace ohmtrail::render
