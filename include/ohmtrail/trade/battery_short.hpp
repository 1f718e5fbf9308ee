#pragma once
#include <string>

#include "ohmtrail/trade/battery_facts.hpp"

/// What a battery drives through a dead short at its posts: for what a fuse must be able to break.
namespace ohmtrail::trade {

struct ShortCircuit {
  units::Voltage emf;            ///< full, at rest
  units::Resistance resistance;  ///< ohmic, as at 1 kHz: what limits the first milliseconds
  std::string from;              ///< what the resistance rests on
  [[nodiscard]] units::Current current() const { return emf / resistance; }
};

/// Never from the resistance over seconds, which hides two thirds of the current: the tester's resistance as
/// it stands, else a third of what the label implies or was measured, whichever is less (a worn battery is
/// replaced by a good one behind the same fuse). Lithium: its cells alone, 0.4 mΩ at 100 Ah (from memory:
/// cell data sheets); its management switch is never trusted to open.
[[nodiscard]] ShortCircuit short_circuit(const BatteryFacts& facts);

}  // namespace ohmtrail::trade
