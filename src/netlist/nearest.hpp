#pragma once
#include <string>
#include <string_view>
#include <vector>

namespace ohmtrail::netlist {

/// How many letters must be put in, taken out, changed or swapped with their neighbour (optimal string
/// alignment); capitals and - _ blank count as equal. Stops counting above `limit`.
[[nodiscard]] std::size_t edit_distance(std::string_view a, std::string_view b, std::size_t limit);

/// The name nearest to `met`; empty where none is near enough to have been meant. The first of equals.
[[nodiscard]] std::string_view nearest(std::string_view met, const std::vector<std::string_view>& known);

/// `did you mean "NAME"?`, or nothing.
[[nodiscard]] std::string did_you_mean(std::string_view met, const std::vector<std::string_view>& known);

/// `a, b or c`.
[[nodiscard]] std::string one_of(const std::vector<std::string_view>& words);

}  // namespace ohmtrail::netlist
