#include "ohmtrail/trade/battery_facts.hpp"

#include <algorithm>
#include <cmath>

namespace ohmtrail::trade {

int cells_in(Chemistry chemistry, units::Voltage nominal) {
  const double volts = nominal.si();
  if (chemistry != Chemistry::lfp) return std::max(1, static_cast<int>(std::lround(volts / 2)));
  // "48 V" is sold with 16 cells, not with the 15 that make 48.0 V.
  const double blocks = volts / 12;
  if (blocks > 0.5 && std::abs(blocks - std::round(blocks)) < 0.01)
    return 4 * static_cast<int>(std::lround(blocks));
  return std::max(1, static_cast<int>(std::lround(volts / 3.2)));
}

units::Temperature temperature_of(const BatteryFacts& facts) {
  if (facts.load_test && facts.load_test->temperature) return *facts.load_test->temperature;
  if (facts.tester && facts.tester->temperature) return *facts.tester->temperature;
  if (facts.rest && facts.rest->temperature) return *facts.rest->temperature;
  double sum = 0;
  int count = 0;
  for (const auto& cell : facts.cells)
    if (cell.temperature) sum += cell.temperature->celsius(), ++count;
  if (count > 0) return units::Temperature{sum / count};
  return facts.temperature.value_or(units::Temperature{25});
}

}  // namespace ohmtrail::trade
