#include "diagnose/bank_evidence.hpp"

#include <algorithm>

#include "ohmtrail/network/battery_facts.hpp"
#include "ohmtrail/trade/battery_charge.hpp"
#include "ohmtrail/trade/battery_limits.hpp"

namespace ohmtrail::diagnose::bank {
namespace {

bool possible(double gravity) {
  return gravity >= trade::gravity_least_possible && gravity <= trade::gravity_most_possible;
}

void summarise(Gravities& gravities) {
  double sum = 0, highest = 0;
  gravities.lowest = gravities.of_cells.front().second;
  for (const auto& [cell, gravity] : gravities.of_cells) {
    sum += gravity;
    highest = std::max(highest, gravity);
    if (gravity > gravities.lowest && gravities.lowest_cell != 0) continue;
    gravities.lowest = gravity;
    gravities.lowest_cell = cell;
  }
  const auto count = static_cast<double>(gravities.of_cells.size());
  gravities.mean = sum / count;
  gravities.spread = highest - gravities.lowest;
  gravities.mean_of_others = count > 1 ? (sum - gravities.lowest) / (count - 1) : gravities.mean;
}

std::optional<Gravities> gravities_of(const trade::BatteryFacts& facts) {
  Gravities gravities;
  for (std::size_t i = 0; i < facts.cells.size(); ++i) {
    const auto& cell = facts.cells[i];
    if (!cell.specific_gravity || !possible(*cell.specific_gravity)) continue;
    gravities.of_cells.emplace_back(
        static_cast<int>(i) + 1,
        trade::gravity_at_reference(*cell.specific_gravity, trade::cell_temperature(facts, cell)));
  }
  if (gravities.of_cells.empty()) return std::nullopt;
  summarise(gravities);
  return gravities;
}

std::optional<units::Voltage> rest_at_reference(const Evidence& evidence) {
  const auto& rest = evidence.facts.rest;
  if (!rest || rest->charging) return std::nullopt;
  if (evidence.lithium()) return rest->volts;
  return rest->volts -
         trade::rest_voltage_shift(rest->temperature.value_or(evidence.temperature)) * evidence.cells;
}

}  // namespace

Evidence gather(const netlist::Battery& battery, const netlist::SystemInfo& info) {
  Evidence evidence;
  evidence.battery = &battery;
  evidence.info = &info;
  evidence.facts = network::battery_facts(battery, info.ambient);
  evidence.source = trade::estimate_source(evidence.facts);
  evidence.cells = trade::cells_in(battery.chemistry, battery.nominal);
  evidence.temperature = trade::temperature_of(evidence.facts);
  evidence.gravities = gravities_of(evidence.facts);
  evidence.rest = rest_at_reference(evidence);
  return evidence;
}

}  // namespace ohmtrail::diagnose::bank
