#pragma once
#include <string>
#include <string_view>

#include "ohmtrail/units/parse.hpp"

/// The likely slips of a person with a meter in one hand.
namespace ohmtrail::netlist {

/// What was probably meant by a text that is no quantity of its kind; empty where nothing is likely.
[[nodiscard]] std::string quantity_hint(std::string_view text, units::Kind kind);

/// The same for gauges.
[[nodiscard]] std::string gauge_hint(std::string_view text);

}  // namespace ohmtrail::netlist
