#include "ohmtrail/diagnose/rank.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

#include "fault.hpp"
#include "fix.hpp"
#include "index.hpp"
#include "joint_heat.hpp"
#include "ohmtrail/diagnose/bank.hpp"
#include "ohmtrail/diagnose/doubt.hpp"
#include "ohmtrail/diagnose/temperature_in_words.hpp"
#include "solve/parallel.hpp"
#include "undersized.hpp"

namespace ohmtrail::diagnose {
namespace {

using network::Role;

/// One row with what orders it.
struct Row {
  HotSpot spot;
  int element = -1;
  const solve::CaseSolution* solved = nullptr;
};

/// A missing value stands below every number.
double or_lowest(const std::optional<double>& value) {
  return value.value_or(-std::numeric_limits<double>::infinity());
}

double volts_of(const HotSpot& spot) {
  return spot.recoverable ? spot.recoverable->volts : -std::numeric_limits<double>::infinity();
}

std::optional<std::string> wire_warning(double celsius, double rating) {
  if (!(celsius > rating)) return std::nullopt;
  return fmt::format("{}; its insulation is rated for {:.0f} °C", reaches_in_words(celsius), rating);
}

void add_temperature(HotSpot& spot, const netlist::System& system, const solve::CaseSolution& solved,
                     const JointHeat& heat, int index) {
  const double own = at(solved.solution.temperature, index);
  if (std::isfinite(own)) spot.temperature = own;
  if (spot.role == Role::wire) {
    const auto run = at(solved.network.elements, index).origin.index;
    spot.heat_warning = wire_warning(own, system.runs[run].insulation.celsius());
  } else if (const auto joint = heat.of(index)) {
    spot.temperature = joint->celsius;
    spot.heat_warning = heat_warning(*joint);
  }
}

/// What the case says of the element, without the what-if.
HotSpot as_found(const Fault& fault, const solve::CaseSolution& solved) {
  const int k = fault.cure.element;
  const auto& element = at(solved.network.elements, k);
  HotSpot spot;
  spot.id = element.id;
  spot.role = element.role;
  spot.cause = fault.cause;
  spot.in_case = solved.network.case_name;
  spot.current = at(solved.solution.current, k);
  spot.drop = at(solved.solution.drop, k);
  spot.heat = at(solved.solution.heat, k);
  spot.resistance = at(solved.solution.resistance, k);
  spot.sound_resistance = fault.sound_resistance;
  spot.excess = fault.excess;
  spot.better_gauge = fault.better_gauge;
  return spot;
}

std::vector<Fault> faults_in(const netlist::System& system, const solve::CaseSolution& solved) {
  auto faults = undersized(system, solved);
  for (int k = 0; k < static_cast<int>(solved.network.elements.size()); ++k)
    if (auto fault = fault_of(system, solved, k)) faults.push_back(std::move(*fault));
  std::sort(faults.begin(), faults.end(),
            [](const Fault& a, const Fault& b) { return a.cure.element < b.cure.element; });
  return faults;
}

/// Faults times elements up to which every fault is solved again, about a second; in larger systems only
/// those are that a first-order estimate puts first.
constexpr std::size_t most_to_solve_again = 2'000'000;
constexpr std::size_t solved_again_at_least = 100;

/// What each fault gives back when it is made good.
std::vector<std::optional<Gain>> gains_of(const std::vector<Fault>& faults,
                                          const solve::CaseSolution& solved) {
  WhatIf what_if(solved);
  std::vector<std::size_t> again(faults.size());
  std::iota(again.begin(), again.end(), 0);
  std::vector<std::optional<Gain>> gains(faults.size());
  if (faults.size() * solved.network.elements.size() > most_to_solve_again &&
      faults.size() > solved_again_at_least) {
    std::vector<Cure> cures;
    for (const Fault& fault : faults) cures.push_back(fault.cure);
    gains = what_if.estimate_gains(cures);
    const auto volts = [&](std::size_t k) { return gains[k] ? gains[k]->volts : 0; };
    std::stable_sort(again.begin(), again.end(),
                     [&](std::size_t a, std::size_t b) { return volts(a) > volts(b); });
    again.resize(solved_again_at_least);
  }
  for (const std::size_t k : again) gains[k] = what_if.best_gain(faults[k].cure);
  return gains;
}

Row row_of(const Fault& fault, const std::optional<Gain>& gain, const solve::CaseSolution& solved) {
  Row row{as_found(fault, solved), fault.cure.element, &solved};
  if (gain) {
    const auto& load = at(solved.loads, gain->load);
    row.spot.recoverable = Recoverable{at(solved.network.elements, load.element).id, gain->volts};
  }
  return row;
}

/// The hotter of two cases of one element; the first of equals.
std::optional<Hottest> hotter(const std::optional<Hottest>& kept, const HotSpot& other) {
  if (!other.temperature || (kept && !(*other.temperature > kept->celsius))) return kept;
  return Hottest{other.in_case, *other.temperature};
}

/// Rows by element index: every case builds the same elements in the same order.
void keep_better(std::map<int, Row>& rows, Row row) {
  row.spot.hottest = hotter({}, row.spot);
  const auto [place, is_new] = rows.try_emplace(row.element, row);
  if (is_new) return;
  const auto hottest = hotter(place->second.spot.hottest, row.spot);
  if (volts_of(row.spot) > volts_of(place->second.spot) + same_volts) place->second = std::move(row);
  place->second.spot.hottest = hottest;
}

std::vector<Row> rows_of(const netlist::System& system, const solve::CaseSolution& solved) {
  const JointHeat heat(system, solved);
  const auto faults = faults_in(system, solved);
  const auto gains = gains_of(faults, solved);
  std::vector<Row> rows;
  for (std::size_t k = 0; k < faults.size(); ++k) {
    rows.push_back(row_of(faults[k], gains[k], solved));
    add_temperature(rows.back().spot, system, solved, heat, rows.back().element);
  }
  return rows;
}

std::map<int, Row> best_rows(const netlist::System& system, const std::vector<solve::CaseSolution>& solved,
                             const RankOptions& options) {
  std::vector<std::vector<Row>> of_case(solved.size());
  solve::in_parallel(solved.size(), options.jobs, [&](std::size_t k) {
    if (options.only_case.empty() || solved[k].network.case_name == options.only_case)
      of_case[k] = rows_of(system, solved[k]);
  });
  std::map<int, Row> best;
  for (auto& rows : of_case)
    for (Row& row : rows) keep_better(best, std::move(row));
  return best;
}

double hours_a_day(const netlist::System& system, const std::string& case_name) {
  const auto found = std::find_if(system.cases.begin(), system.cases.end(),
                                  [&](const netlist::Case& one) { return one.name == case_name; });
  constexpr double seconds_an_hour = 3600;
  return found == system.cases.end() || !found->per_day ? 0 : found->per_day->si() / seconds_an_hour;
}

/// I² times the excess, over the hours of every case that says how long it lasts.
std::optional<DailyWaste> waste_of(const netlist::System& system,
                                   const std::vector<solve::CaseSolution>& solved, const Row& row) {
  if (!row.spot.excess || row.spot.cause == Cause::discharged_battery) return std::nullopt;
  double hours = 0, watt_hours = 0;
  for (const auto& one : solved) {
    const double lasts = hours_a_day(system, one.network.case_name);
    const double current = at(one.solution.current, row.element);
    hours += lasts;
    watt_hours += lasts * current * current * *row.spot.excess;
  }
  if (hours <= 0) return std::nullopt;
  return DailyWaste{watt_hours, watt_hours / system.info.nominal.si()};
}

/// Others that the readings hold for at fault as much, or half as much; the likeliest first. Where some are
/// more than twice as likely this one is no rival of theirs.
std::vector<std::string> rivals_of(const HotSpot& spot, const RankOptions& options) {
  constexpr double share = 0.5, worth_a_word = 0.05;
  std::vector<std::string> rivals;
  for (const auto& [id, odds] : options.fault_probability) {
    if (share * odds > *spot.likelihood) return {};
    if (id != spot.id && odds >= std::max(worth_a_word, share * *spot.likelihood)) rivals.push_back(id);
  }
  std::stable_sort(rivals.begin(), rivals.end(), [&](const std::string& a, const std::string& b) {
    constexpr double same_odds = 1e-6;
    return std::round(options.fault_probability.at(a) / same_odds) >
           std::round(options.fault_probability.at(b) / same_odds);
  });
  return rivals;
}

void set_likelihood(HotSpot& spot, const RankOptions& options) {
  const auto found = options.fault_probability.find(spot.id);
  if (found != options.fault_probability.end()) spot.likelihood = found->second;
  const auto shared = options.unparted.find(spot.id);
  if (shared != options.unparted.end()) spot.unparted = shared->second;
  if (in_doubt(spot)) spot.rivals = rivals_of(spot, options);
}

void set_fix(HotSpot& spot, const netlist::System& system, const Row& row) {
  FixContext context{system, at(row.solved->network.elements, row.element), spot.better_gauge};
  context.burns = spot.temperature && *spot.temperature >= touch_limit_celsius;
  if (spot.sound_resistance && *spot.sound_resistance > 0)
    context.resistance_over_sound = spot.resistance / *spot.sound_resistance;
  context.own_tests = spot.own_tests;
  spot.fix = fix(spot.cause, context);
}

/// What each battery's own checks say, by id; those without checks are left out.
std::map<std::string, BatteryState> own_tests_of(const netlist::System& system) {
  const auto tested = [](const netlist::Battery& battery) {
    const netlist::BatteryChecks& checks = battery.checks;
    return checks.rest || checks.load_test || checks.tester || !checks.cells.empty() || !battery.seen.empty();
  };
  std::map<std::string, BatteryState> states;
  if (std::none_of(system.batteries.begin(), system.batteries.end(), tested)) return states;
  const Bank bank = judge_bank(system);
  for (std::size_t k = 0; k < bank.batteries.size(); ++k)
    if (tested(system.batteries[k])) states.emplace(bank.batteries[k].id, bank.batteries[k].verdict);
  return states;
}

/// A battery that its own tests condemn does not only lack charge.
void set_own_tests(HotSpot& spot, const std::map<std::string, BatteryState>& states) {
  const auto found = states.find(spot.id);
  if (found == states.end() || spot.role != Role::battery) return;
  spot.own_tests = found->second;
  if (condemned(found->second)) spot.cause = Cause::weak_battery;
}

/// Equal but for rounding is equal, so that ties keep file order.
double rounded(double value) {
  return std::round(value / same_volts);
}

bool worse(const HotSpot& a, const HotSpot& b, RankBy by) {
  const auto volts = [](const HotSpot& spot) { return rounded(volts_of(spot)); };
  const auto heat = [](const HotSpot& spot) { return rounded(spot.heat); };
  const auto warmth = [](const HotSpot& spot) { return rounded(or_lowest(spot.temperature)); };
  switch (by) {
    case RankBy::volts:
      return std::pair(volts(a), heat(a)) > std::pair(volts(b), heat(b));
    case RankBy::heat:
      return std::pair(heat(a), volts(a)) > std::pair(heat(b), volts(b));
    case RankBy::temperature:
      return std::pair(warmth(a), heat(a)) > std::pair(warmth(b), heat(b));
  }
  return false;
}

void order(std::vector<HotSpot>& spots, const RankOptions& options) {
  std::stable_sort(spots.begin(), spots.end(),
                   [&](const HotSpot& a, const HotSpot& b) { return worse(a, b, options.by); });
  if (options.top && spots.size() > *options.top) spots.resize(*options.top);
  for (std::size_t k = 0; k < spots.size(); ++k) spots[k].rank = static_cast<int>(k) + 1;
}

}  // namespace

std::vector<HotSpot> rank(const netlist::System& system, const std::vector<solve::CaseSolution>& solved,
                          const RankOptions& options) {
  std::vector<HotSpot> spots;
  const auto states = own_tests_of(system);
  for (auto& [element, row] : best_rows(system, solved, options)) {
    set_own_tests(row.spot, states);
    set_likelihood(row.spot, options);
    set_fix(row.spot, system, row);
    row.spot.waste = waste_of(system, solved, row);
    spots.push_back(std::move(row.spot));
  }
  order(spots, options);
  return spots;
}

}  // namespace ohmtrail::diagnose
