#pragma once
#include <optional>
#include <string>

#include "ohmtrail/trade/battery_facts.hpp"

/// Internal resistance of a sound battery on the scale of seconds (not of 1 kHz).
namespace ohmtrail::trade {

/// 3/CCA for 12 V, in proportion for others, at 25 °C and full. Common practice.
[[nodiscard]] units::Resistance resistance_of_cca(units::Current cca, units::Voltage nominal);

/// Typical resistance at 25 °C and full by capacity and chemistry. Common practice, low confidence.
[[nodiscard]] units::Resistance resistance_of_capacity(units::Charge capacity, Chemistry chemistry,
                                                       units::Voltage nominal);

/// Resistance over that at 25 °C. Lead-acid: 1 % less for each kelvin warmer (from memory: battery
/// textbooks); it lies between the two series that load-test minima and cranking power imply. Held at −30 and
/// +50 °C.
[[nodiscard]] double resistance_by_temperature(Chemistry chemistry, units::Temperature battery);

/// Resistance over that when full. From memory: battery textbooks.
[[nodiscard]] double resistance_by_charge(Chemistry chemistry, units::Fraction charge);

struct SoundResistance {
  units::Resistance value;
  std::string from;
};

/// What a good battery with this label has, at this temperature and charge: from its rated CCA, else from its
/// capacity; empty if the label says neither.
[[nodiscard]] std::optional<SoundResistance> sound_resistance(const BatteryFacts& facts,
                                                              units::Temperature battery,
                                                              units::Fraction charge);

/// Over-reading of seconds against a tester's frequency, 1.5 to 2; from memory: published data sheets.
inline constexpr double seconds_over_tester = 1.75;

}  // namespace ohmtrail::trade
