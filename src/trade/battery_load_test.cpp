#include "ohmtrail/trade/battery_load_test.hpp"

#include <fmt/core.h>

#include <array>
#include <cmath>

#include "trade/battery_curve.hpp"
#include "trade/battery_rows.hpp"

namespace ohmtrail::trade {
namespace {

using units::Current;
using units::Temperature;
using units::Time;
using units::Voltage;

constexpr double cca_per_ampere_hour = 4;  // deep cycle, 3 to 5; common practice
constexpr double growth_per_halving = 0.05;

template <class Column>
double column_at(Temperature battery, Column column) {
  std::array<CurvePoint, load_test_rows.size()> curve{};
  for (std::size_t i = 0; i < curve.size(); ++i) {
    const auto& row = load_test_rows[curve.size() - 1 - i];  // the manual's rows start warm
    curve[i] = {row.celsius, column(row)};
  }
  return on_curve(curve, battery.celsius());
}

bool far_from(double value, double proper) {
  return std::abs(value / proper - 1) > 0.05;
}

}  // namespace

Voltage load_test_minimum(Voltage nominal, Temperature battery) {
  if (std::abs(nominal.si() - 6) < 0.1)
    return Voltage{column_at(battery, [](const LoadTestRow& row) { return row.volts_of_6; })};
  const double of_12 = column_at(battery, [](const LoadTestRow& row) { return row.volts_of_12; });
  return Voltage{of_12 * nominal.si() / 12};
}

bool load_test_table_reaches(Temperature battery) {
  return battery.celsius() >= load_test_rows.back().celsius;
}

std::optional<ProperLoad> proper_load(const BatteryFacts& facts) {
  if (facts.chemistry == Chemistry::lfp) return std::nullopt;
  if (facts.cca) return ProperLoad{*facts.cca / 2, fmt::format("half of {:.0f} CCA", facts.cca->si())};
  if (!facts.capacity) return std::nullopt;
  const double hours = facts.capacity->si() / 3600;
  return ProperLoad{Current{cca_per_ampere_hour * hours / 2},
                    fmt::format("half of an assumed {:.0f} CCA (4 for each Ah, common practice)",
                                cca_per_ampere_hour * hours)};
}

double sag_growth_to_full_hold(Time held) {
  if (held >= load_test_hold) return 1;
  constexpr double shortest = 0.001;
  return 1 + growth_per_halving * std::log2(load_test_hold.si() / std::max(held.si(), shortest));
}

std::optional<LoadTestResult> judge_load_test(const BatteryFacts& facts, Voltage open_circuit) {
  const auto proper = proper_load(facts);
  if (!facts.load_test || !proper || facts.load_test->charging) return std::nullopt;
  const auto& test = *facts.load_test;
  LoadTestResult result;
  result.before = test.before.value_or(open_circuit);
  if (test.amps.si() <= 0 || test.volts >= result.before) return std::nullopt;
  const auto held = test.duration.value_or(load_test_hold);
  const double scale = ratio(proper->amps, test.amps) * sag_growth_to_full_hold(held);
  result.proper = *proper;
  result.projected = result.before - (result.before - test.volts) * scale;
  result.battery = test.temperature.value_or(temperature_of(facts));
  result.minimum = load_test_minimum(facts.nominal, result.battery);
  // A hair of rounding must not fail a battery that stands exactly on the manual's value.
  result.passed = result.projected.si() >= result.minimum.si() - 1e-9;
  result.load_scaled = far_from(test.amps.si(), proper->amps.si());
  result.hold_scaled = held < load_test_hold;
  result.hold_assumed = !test.duration;
  result.weak_evidence = test.amps < proper->amps * 0.5 || held < Time{5};
  return result;
}

}  // namespace ohmtrail::trade
