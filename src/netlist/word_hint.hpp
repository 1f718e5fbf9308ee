#pragma once
#include <string>
#include <string_view>
#include <vector>

namespace ohmtrail::netlist {

/// The one of `known` that somebody means who writes another word of the trade for it: "lithium" for "lfp";
/// empty: none. Case and spaces do not matter.
[[nodiscard]] std::string word_meant(std::string_view text, const std::vector<std::string_view>& known);

}  // namespace ohmtrail::netlist
