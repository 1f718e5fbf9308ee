#pragma once
#include "ohmtrail/trade/words.hpp"
#include "ohmtrail/units/quantity.hpp"

/// What a battery gives at a current other than that of its rating, and when cold.
namespace ohmtrail::trade {

struct PeukertExponent {
  double least, usual, most;
};

/// Ranges found on public pages on Peukert's law; the usual value is a choice inside the range.
[[nodiscard]] PeukertExponent peukert_exponent(Chemistry chemistry);

/// Time to empty at a steady current: t = H (C / (I H))^k, with C the capacity at its rate of H hours (20 h).
[[nodiscard]] units::Time time_to_empty(units::Charge capacity, units::Current current, double exponent,
                                        units::Time rate = units::Time{20 * 3600.0});

/// What comes out by then: current times time.
[[nodiscard]] units::Charge capacity_at(units::Charge capacity, units::Current current, double exponent,
                                        units::Time rate = units::Time{20 * 3600.0});

/// Share of the 25 °C capacity that is left when cold. Flooded: at the 6 h rate, US Army TM 10-6140-200-14.
/// Sealed: discharges over one hour, public answers of a maker of sealed batteries. Lithium: 1 (its limit is
/// charging).
[[nodiscard]] units::Fraction capacity_by_temperature(Chemistry chemistry, units::Temperature battery);

}  // namespace ohmtrail::trade
