#pragma once
#include <optional>
#include <string>

#include "ohmtrail/trade/words.hpp"
#include "ohmtrail/units/quantity.hpp"

/// Rules on overcurrent protection: how large a fuse may be, how far off it may sit, what it must break.
namespace ohmtrail::trade {

/// A limit and the rule it comes from.
template <class Q>
struct Rule {
  Q limit;
  std::string source;
};

/// Largest fuse over a wire of this ampacity: 150 % below 50 V, 100 % from 50 V up, where the next larger
/// standard rating may be taken if 100 % is not one, up to 150 % (33 CFR 183.455(c)).
[[nodiscard]] Rule<units::Current> largest_fuse(units::Current ampacity, units::Voltage nominal);

/// How far along the conductor from its source the fuse may sit.
struct FuseDistances {
  Rule<units::Length> plain;         ///< 7 in, 33 CFR 183.455(b)(1)
  Rule<units::Length> sheathed;      ///< 40 in in a sheath or enclosure, 33 CFR 183.455(b)(2)
  Rule<units::Length> from_battery;  ///< 72 in, 33 CFR 183.460(a)
  Rule<units::Length> european;      ///< 200 mm, from memory: ISO 10133
  Rule<units::Length> park_trailer;  ///< 18 in, NEC 552.10(E)(4)
};
[[nodiscard]] const FuseDistances& fuse_distances();

/// Largest low-voltage fuse by gauge in recreational vehicles (from memory: NEC 551.10(E)(1)); empty off the
/// table.
[[nodiscard]] std::optional<Rule<units::Current>> vehicle_fuse_limit(const Gauge& gauge);

/// Least current that breakers must interrupt on lead-acid batteries of this cold-cranking total.
struct Interrupting {
  units::Current main, branch;
  std::string source;
};
/// 12 and 24 V; 32 V and above take the 32 V rows (from memory). Written for lead-acid: says nothing of
/// lithium.
[[nodiscard]] Interrupting interrupting_capacity(units::Voltage nominal, units::Current cold_cranking);

}  // namespace ohmtrail::trade
