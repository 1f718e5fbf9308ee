#include "diagnose/bank_groups.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "diagnose/bank_group_findings.hpp"

namespace ohmtrail::diagnose {

std::string_view word(BatteryGroup::Kind kind) {
  return kind == BatteryGroup::Kind::series ? "series" : "parallel";
}

namespace bank {
namespace {

std::vector<std::size_t> batteries_in(const String& string) {
  std::vector<std::size_t> all;
  for (const auto& step : string.steps) all.insert(all.end(), step.begin(), step.end());
  return all;
}

std::vector<std::string> ids(const netlist::System& system, const std::vector<std::size_t>& batteries) {
  std::vector<std::string> names;
  for (const auto battery : batteries) names.push_back(system.batteries[battery].id);
  return names;
}

BatteryGroup series_group(const Members& members, const String& string) {
  BatteryGroup group;
  group.kind = BatteryGroup::Kind::series;
  for (const auto& step : string.steps) group.members.push_back(ids(members.system, step));
  judge_series(group, members, batteries_in(string));
  return group;
}

BatteryGroup parallel_group(const Members& members, const std::vector<std::vector<std::size_t>>& strings) {
  BatteryGroup group;
  group.kind = BatteryGroup::Kind::parallel;
  for (const auto& string : strings) group.members.push_back(ids(members.system, string));
  judge_parallel(group, members, strings);
  return group;
}

/// Strings across the same two points; within a string, the batteries of one step.
std::vector<std::vector<std::vector<std::size_t>>> side_by_side(const std::vector<String>& strings) {
  std::vector<std::vector<std::vector<std::size_t>>> found;
  std::vector<bool> taken(strings.size(), false);
  for (std::size_t i = 0; i < strings.size(); ++i) {
    std::vector<std::vector<std::size_t>> beside;
    for (std::size_t j = i; j < strings.size(); ++j) {
      if (taken[j] || strings[j].plus != strings[i].plus || strings[j].minus != strings[i].minus) continue;
      taken[j] = true;
      beside.push_back(batteries_in(strings[j]));
    }
    if (beside.size() > 1) found.push_back(beside);
    for (const auto& step : strings[i].steps) {
      if (step.size() < 2) continue;
      std::vector<std::vector<std::size_t>> batteries;
      for (const auto battery : step) batteries.push_back({battery});
      found.push_back(batteries);
    }
  }
  return found;
}

}  // namespace

std::vector<BatteryGroup> judge_groups(const netlist::System& system,
                                       const std::vector<BatteryVerdict>& batteries) {
  const auto strings = strings_of(system);
  const auto parallel = side_by_side(strings);
  const Members members{system, batteries, parallel.empty() ? BankCurrents{} : bank_currents(system)};
  std::vector<BatteryGroup> groups;
  for (const auto& string : strings)
    if (string.steps.size() > 1) groups.push_back(series_group(members, string));
  for (const auto& beside : parallel) groups.push_back(parallel_group(members, beside));
  return groups;
}

}  // namespace bank
}  // namespace ohmtrail::diagnose
