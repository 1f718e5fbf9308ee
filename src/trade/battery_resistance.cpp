#include "ohmtrail/trade/battery_resistance.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <array>

#include "trade/battery_curve.hpp"

namespace ohmtrail::trade {
namespace {

using units::Charge;
using units::Resistance;
using units::Temperature;

constexpr double seconds_per_hour = 3600;

// Ω·Ah of one cell, DC over seconds, 25 °C, full. Common practice, low confidence:
constexpr double cart_block = 0.0023 / 3 * 225;       // 6 V 225 Ah cart battery: 2.3 mΩ
constexpr double flooded_12_volts = 0.008 / 6 * 100;  // 12 V 100 Ah deep-cycle: 8 mΩ
// From memory: published data sheets, 1 kHz values (12 V 100 Ah: AGM 5 mΩ, gel 6 mΩ; LFP cell 100 Ah 0.4 mΩ).
constexpr double agm_cell = 0.005 / 6 * 100 * seconds_over_tester;
constexpr double gel_cell = 0.006 / 6 * 100 * seconds_over_tester;
constexpr double lfp_cell = 0.0004 * 100 * seconds_over_tester;
// What is left of the typical 10 mΩ of a 12.8 V 100 Ah battery: its management switch, sense and inner
// wiring.
constexpr double lfp_switch = 0.010 - 4 * lfp_cell / 100;

// From memory: cell data sheets.
constexpr std::array<CurvePoint, 3> lfp_by_temperature{{{-20, 4.5}, {0, 2.0}, {25, 1.0}}};
// From memory: battery textbooks.
constexpr std::array<CurvePoint, 3> lead_by_charge{{{0.2, 1.8}, {0.5, 1.2}, {1, 1.0}}};

double ohm_hours_of_cell(Chemistry chemistry, units::Voltage nominal) {
  switch (chemistry) {
    case Chemistry::agm:
      return agm_cell;
    case Chemistry::gel:
      return gel_cell;
    case Chemistry::lfp:
      return lfp_cell;
    case Chemistry::flooded:
      break;
  }
  return nominal.si() < 10 ? cart_block : flooded_12_volts;
}

}  // namespace

Resistance resistance_of_cca(units::Current cca, units::Voltage nominal) {
  return Resistance{3 / cca.si() * nominal.si() / 12};
}

Resistance resistance_of_capacity(Charge capacity, Chemistry chemistry, units::Voltage nominal) {
  const double hours = capacity.si() / seconds_per_hour;
  const double cells = cells_in(chemistry, nominal) * ohm_hours_of_cell(chemistry, nominal) / hours;
  return Resistance{cells + (chemistry == Chemistry::lfp ? lfp_switch : 0)};
}

double resistance_by_temperature(Chemistry chemistry, Temperature battery) {
  if (chemistry == Chemistry::lfp) return on_curve(lfp_by_temperature, battery.celsius());
  return 1 - 0.01 * (std::clamp(battery.celsius(), -30.0, 50.0) - 25);
}

double resistance_by_charge(Chemistry chemistry, units::Fraction charge) {
  return chemistry == Chemistry::lfp ? 1 : on_curve(lead_by_charge, charge.of_one());
}

std::optional<SoundResistance> sound_resistance(const BatteryFacts& facts, Temperature battery,
                                                units::Fraction charge) {
  const double factor =
      resistance_by_temperature(facts.chemistry, battery) * resistance_by_charge(facts.chemistry, charge);
  const auto at = fmt::format("at {:.0f} °C and {:.0f} % charge", battery.celsius(), charge.percent());
  // A lithium battery's management switch limits its current: a CCA on its label tells nothing of its
  // resistance.
  if (facts.cca && facts.chemistry != Chemistry::lfp)
    return SoundResistance{
        resistance_of_cca(*facts.cca, facts.nominal) * factor,
        fmt::format("rated {:.0f} CCA (3/CCA Ω for 12 V, common practice), {}", facts.cca->si(), at)};
  if (facts.capacity)
    return SoundResistance{resistance_of_capacity(*facts.capacity, facts.chemistry, facts.nominal) * factor,
                           fmt::format("typical of {:.0f} Ah and its chemistry (common practice), {}",
                                       facts.capacity->si() / 3600, at)};
  return std::nullopt;
}

}  // namespace ohmtrail::trade
