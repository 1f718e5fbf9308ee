#pragma once
#include <optional>
#include <string>
#include <vector>

#include "ohmtrail/trade/battery_facts.hpp"

/// A battery as the network sees it: an open-circuit voltage behind a resistance, and what each was taken
/// from.
namespace ohmtrail::trade {

/// Something that the reader of a result must know; `name` is stable and kebab-case.
struct SourceNote {
  std::string name, text;
};

struct BatterySource {
  units::Voltage open_circuit;
  std::string open_circuit_from;
  units::Resistance resistance;  ///< on the scale of seconds, at the posts: no cable is in it
  std::string resistance_from;
  bool resistance_measured = false;                   ///< given, load test or tester; else from the label
  std::optional<units::Resistance> sound_resistance;  ///< what the label implies; empty: it says nothing
  std::string sound_resistance_from;
  units::Fraction charge;
  std::string charge_from;
  std::vector<SourceNote> notes;
};

/// Open-circuit voltage from: emf; rest voltage after 6 h (flooded) or 3 h (others); mean specific gravity at
/// 26.7 °C; state of charge. Resistance from: resistance; load test; tester; rated CCA; capacity; chemistry
/// alone. Facts that contradict physics (a load test that rises under load) are passed over, and a note says
/// so.
[[nodiscard]] BatterySource estimate_source(const BatteryFacts& facts);

/// How long a battery must stand, loads and chargers off, before its volts tell its charge.
/// Sources: cart owner manual (public): 6 h at least, flooded; US Army TM 9-6115-730-24: 3 h at least, AGM.
[[nodiscard]] units::Time rest_needed(Chemistry chemistry);

/// The charge that a rest voltage names, where it is used; empty: no rest reading, or one with a charger on.
[[nodiscard]] std::optional<units::Fraction> charge_from_rest(const BatteryFacts& facts);

/// Mean gravity at 26.7 °C of the cells that have one; empty: none has.
[[nodiscard]] std::optional<double> mean_gravity(const BatteryFacts& facts);

/// A cell's own temperature, else the battery's.
[[nodiscard]] units::Temperature cell_temperature(const BatteryFacts& facts, const CellFact& cell);

}  // namespace ohmtrail::trade
