#pragma once
#include "ohmtrail/netlist/system.hpp"
#include "ohmtrail/trade/battery_facts.hpp"

namespace ohmtrail::network {

/// A battery of the netlist in the words of the trade layer; `surroundings` is where it stands.
[[nodiscard]] trade::BatteryFacts battery_facts(const netlist::Battery& battery,
                                                units::Temperature surroundings);

}  // namespace ohmtrail::network
