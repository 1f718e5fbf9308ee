#include "ohmtrail/diagnose/charging.hpp"

#include <algorithm>
#include <cmath>

#include "charging_end.hpp"
#include "fault.hpp"
#include "index.hpp"
#include "route.hpp"

namespace ohmtrail::diagnose {
namespace {

using network::Role;
using solve::Supply;

/// Chargers of more than this over nominal are meant for another bank: converters put banks of unlike voltage
/// into one island. Common practice: equalising goes to 16.5 V of 12 V.
constexpr double most_set_point = 1.4;
/// A charger at nearly its limit gives all it can.
constexpr double spent = 0.999;

const network::Element& first_of(const solve::CaseSolution& solved, const Supply& supply) {
  return at(solved.network.elements, supply.elements.front());
}

double nominal_of(const solve::CaseSolution& solved, const Supply& batteries) {
  double volts = 0;
  for (const int k : batteries.elements)
    volts += at(solved.network.elements, k).nominal.value_or(units::Voltage{}).si();
  return volts;
}

bool suits(const solve::CaseSolution& solved, const Supply& charger, const Supply& batteries) {
  const auto& element = first_of(solved, charger);
  const double set = element.voltage.si(), nominal = nominal_of(solved, batteries);
  return element.role == Role::charger && element.active && charger.island == batteries.island &&
         set >= nominal && set <= most_set_point * nominal;
}

/// Those that deliver, and the one of highest set point even where it waits.
std::vector<const Supply*> chargers_of(const solve::CaseSolution& solved, const Supply& batteries) {
  std::vector<const Supply*> suitable;
  const Supply* highest = nullptr;
  for (const auto& supply : solved.supplies) {
    if (!suits(solved, supply, batteries)) continue;
    suitable.push_back(&supply);
    if (!highest || first_of(solved, supply).voltage > first_of(solved, *highest).voltage) highest = &supply;
  }
  std::erase_if(suitable, [&](const Supply* one) { return one != highest && !(one->power > 0); });
  return suitable;
}

/// What lies between the posts of both in a solution of the same circuit.
double lost_between(const solve::Solution& solution, const Supply& charger, const Supply& batteries) {
  double volts = at(solution.drop, charger.elements.front());
  for (const int k : batteries.elements) volts -= at(solution.drop, k);
  return volts;
}

/// All that the rows of one case have in common.
struct Charging {
  const netlist::System& system;
  const solve::CaseSolution& solved;
  std::optional<solve::CaseSolution> end;
  WhatIf what_if;
};

std::optional<double> comes_back(Charging& all, const ChargeSplit& split, const Supply& charger,
                                 const Supply& batteries, int element) {
  const auto fault = fault_of(all.system, all.solved, element);
  if (!fault) return std::nullopt;
  const auto cured = all.what_if.with(fault->cure);
  if (!cured) return std::nullopt;
  return split.lost - lost_between(*cured, charger, batteries);
}

void add_losses(ChargeSplit& split, Charging& all, const Supply& charger, const Supply& batteries) {
  const auto way = charging_way(all.solved, charger, batteries);
  if (!way) return;
  for (const auto& leg : *way) {
    const auto& element = at(all.solved.network.elements, leg.element);
    add(split.parts, element.role, leg.lost);
    split.elements.push_back(
        {element.id, element.role, leg.lost, comes_back(all, split, charger, batteries, leg.element)});
  }
  std::stable_sort(split.elements.begin(), split.elements.end(),
                   [](const ChargeLoss& a, const ChargeLoss& b) { return a.lost > b.lost; });
}

/// Held against the charger of highest set point alone: the others need not bring it further.
void judge_end(ChargeSplit& split, const Charging& all, const Supply& charger, const Supply& batteries) {
  if (!all.end) return;
  const double reached =
      at(all.end->solution.voltage, batteries.plus) - at(all.end->solution.voltage, batteries.minus);
  if (!std::isfinite(reached)) return;
  split.reaches = reached;
  split.full = reached >= split.set_point * (1 - set_point_tolerance);
  const auto& element = first_of(*all.end, charger);
  const double amperes = std::abs(at(all.end->solution.current, charger.elements.front()));
  split.charger_is_spent = !split.full && element.limit.si() > 0 && amperes > spent * element.limit.si();
}

ChargeSplit split_of(Charging& all, const Supply& charger, const Supply& batteries) {
  ChargeSplit split;
  split.in_case = all.solved.network.case_name;
  split.charger = first_of(all.solved, charger).id;
  for (const int k : batteries.elements) split.batteries.push_back(at(all.solved.network.elements, k).id);
  split.limit = first_of(all.solved, charger).limit.si();
  split.set_point = first_of(all.solved, charger).voltage.si();
  split.charger_volts = charger.terminal;
  split.battery_volts = batteries.terminal;
  split.current = at(all.solved.solution.current, batteries.elements.front());
  split.lost = lost_between(all.solved.solution, charger, batteries);
  split.fraction = split.lost / nominal_of(all.solved, batteries);
  split.within = !(split.current > 0 && split.fraction > most_charging_drop);
  add_losses(split, all, charger, batteries);
  return split;
}

double highest_set_point(const solve::CaseSolution& solved, const std::vector<const Supply*>& chargers) {
  double highest = 0;
  for (const auto* one : chargers) highest = std::max(highest, first_of(solved, *one).voltage.si());
  return highest;
}

bool is_battery(const solve::CaseSolution& solved, const Supply& supply) {
  return first_of(solved, supply).role == Role::battery;
}

}  // namespace

std::vector<ChargeSplit> charging(const netlist::System& system, const solve::CaseSolution& solved) {
  std::vector<ChargeSplit> rows;
  const bool runs = std::any_of(solved.supplies.begin(), solved.supplies.end(),
                                [&](const Supply& one) { return !is_battery(solved, one); });
  if (!runs || solved.solution.collapse) return rows;
  Charging all{system, solved, end_of_charging(system, solved), WhatIf(solved)};
  for (const auto& batteries : solved.supplies) {
    if (!is_battery(solved, batteries)) continue;
    const auto chargers = chargers_of(solved, batteries);
    const double highest = highest_set_point(solved, chargers);
    for (const auto* charger : chargers) {
      rows.push_back(split_of(all, *charger, batteries));
      if (rows.back().set_point >= highest) judge_end(rows.back(), all, *charger, batteries);
    }
  }
  std::stable_sort(rows.begin(), rows.end(),
                   [](const ChargeSplit& a, const ChargeSplit& b) { return a.fraction > b.fraction; });
  return rows;
}

}  // namespace ohmtrail::diagnose
