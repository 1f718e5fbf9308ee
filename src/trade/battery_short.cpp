#include "ohmtrail/trade/battery_short.hpp"

#include <algorithm>

#include "ohmtrail/trade/battery_resistance.hpp"
#include "ohmtrail/trade/battery_source.hpp"

namespace ohmtrail::trade {
namespace {

using units::Resistance;
using units::Voltage;

// Full and rested: 12.72 V for 12 V lead-acid, 13.6 V for four lithium cells; from memory: rested-voltage
// charts.
constexpr double full_lead_cell = 2.12, full_lithium_cell = 3.40;
// From memory: cell data sheets, 1 kHz.
constexpr double lithium_ohm_ampere_hours = 0.0004 * 100;
constexpr double ohmic_share = 1.0 / 3;
constexpr double seconds_per_hour = 3600;
// A lithium battery of unknown size; the current is large either way.
constexpr double usual_lithium_ampere_hours = 100;

Voltage full_emf(const BatteryFacts& facts) {
  const double cell = facts.chemistry == Chemistry::lfp ? full_lithium_cell : full_lead_cell;
  return Voltage{cell * cells_in(facts.chemistry, facts.nominal)};
}

ShortCircuit of_lithium(const BatteryFacts& facts) {
  const double hours = facts.capacity ? facts.capacity->si() / seconds_per_hour : usual_lithium_ampere_hours;
  const int cells = cells_in(facts.chemistry, facts.nominal);
  return {full_emf(facts), Resistance{cells * lithium_ohm_ampere_hours / hours},
          "its cells alone at 0.4 mΩ for 100 Ah, its management switch not trusted (from memory: cell data "
          "sheets)"};
}

}  // namespace

ShortCircuit short_circuit(const BatteryFacts& facts) {
  if (facts.chemistry == Chemistry::lfp) return of_lithium(facts);
  const auto source = estimate_source(facts);
  const Voltage emf = std::max(source.open_circuit, full_emf(facts));
  Resistance seconds = source.resistance;
  std::string from = "a third of " + source.resistance_from;
  if (const auto sound = sound_resistance(facts, units::Temperature{25}, units::Fraction{1});
      sound && sound->value < seconds) {
    seconds = sound->value;
    from = "a third of " + sound->from;
  }
  ShortCircuit result{emf, seconds * ohmic_share, from};
  if (facts.tester && facts.tester->resistance && *facts.tester->resistance < seconds) {
    result.resistance = *facts.tester->resistance;
    result.from = "the tester's reading";
  }
  return result;
}

}  // namespace ohmtrail::trade
