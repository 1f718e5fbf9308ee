#pragma once
#include <string_view>
#include <vector>

namespace ohmtrail::netlist {

/// The known key that another word of the trade stands for ("positive" → plus); empty where there is none.
[[nodiscard]] std::string_view key_synonym(std::string_view met, const std::vector<std::string_view>& known);

}  // namespace ohmtrail::netlist
