#pragma once
#include <string>
#include <string_view>
#include <tl/expected.hpp>
#include <vector>

#include "ohmtrail/diagnose/infer.hpp"
#include "ohmtrail/netlist/system.hpp"

/// What people type beside the meter.
namespace ohmtrail::diagnose {

[[nodiscard]] std::string_view trimmed(std::string_view text);

/// What can be typed, in one paragraph.
[[nodiscard]] std::string help_in_words();

/// "green-corrosion, loose-nut" as findings, or which words there are.
[[nodiscard]] tl::expected<netlist::Seen, std::string> observations(std::string_view words);

/// The one of these elements that is most probably faulty.
[[nodiscard]] std::string likeliest(const InferResult& inference, const std::vector<std::string>& ids);

}  // namespace ohmtrail::diagnose
