#include "cure.hpp"

#include <algorithm>
#include <cmath>

#include "index.hpp"

namespace ohmtrail::diagnose {
namespace {

/// Below this share of the largest current a current is rounding.
constexpr double no_current = 1e-13;

void apply(const Cure& cure, solve::Branch& branch) {
  branch.resistance = cure.resistance;
  if (cure.open_circuit) branch.size = *cure.open_circuit;
  if (cure.heating) branch.heating = *cure.heating;
}

}  // namespace

WhatIf::WhatIf(const solve::CaseSolution& solved)
    : solved_(solved), solver_(solve::circuit_of(solved.network)) {
  for (const double current : solved.solution.current)
    largest_current_ = std::max(largest_current_, std::abs(current));
}

bool WhatIf::without_effect(const Cure& cure) const {
  const double current = std::abs(at(solved_.solution.current, cure.element));
  return !cure.open_circuit && current <= no_current * largest_current_;
}

std::optional<Gain> WhatIf::best_gain_between(const std::vector<double>& before,
                                              const std::vector<double>& after) const {
  std::optional<Gain> best;
  for (std::size_t k = 0; k < solved_.loads.size(); ++k) {
    const auto& load = solved_.loads[k];
    if (!load.running) continue;
    const double volts = at(after, load.element) - at(before, load.element);
    if (!best || volts > best->volts + same_volts) best = Gain{static_cast<int>(k), volts};
  }
  return best;
}

tl::expected<solve::Solution, solve::Failure> WhatIf::solve_with(const Cure& cure) {
  if (cure.heating) {  // another law of warming is another circuit
    solve::Circuit cured = solver_.circuit();
    apply(cure, at(cured.branches, cure.element));
    return solve::Solver(std::move(cured)).solve();
  }
  const solve::Branch found = at(solver_.circuit().branches, cure.element);
  solver_.set_resistance(cure.element, cure.resistance);
  if (cure.open_circuit) solver_.set_size(cure.element, *cure.open_circuit);
  auto after = solver_.solve();
  solver_.set_resistance(cure.element, found.resistance);
  if (cure.open_circuit) solver_.set_size(cure.element, found.size);
  return after;
}

std::optional<solve::Solution> WhatIf::with(const Cure& cure) {
  auto after = solve_with(cure);
  if (!after || after->collapse) return std::nullopt;
  return std::move(*after);
}

std::vector<std::optional<Gain>> WhatIf::estimate_gains(const std::vector<Cure>& cures) {
  std::vector<std::optional<Gain>> gains(cures.size());
  std::vector<int> loads, positions;
  for (std::size_t k = 0; k < solved_.loads.size(); ++k) {
    if (!solved_.loads[k].running) continue;
    loads.push_back(solved_.loads[k].element);
    positions.push_back(static_cast<int>(k));
  }
  if (loads.empty() || !solver_.solve()) return gains;
  std::vector<solve::Replacement> replacements;
  for (const Cure& cure : cures) {
    replacements.push_back({cure.element, at(solver_.circuit().branches, cure.element)});
    apply(cure, replacements.back().by);
  }
  const auto estimates = solver_.estimate_best_gains(loads, replacements);
  for (std::size_t k = 0; k < gains.size(); ++k) {
    const auto place = std::lower_bound(loads.begin(), loads.end(), estimates[k].load);
    gains[k] = Gain{positions[static_cast<std::size_t>(place - loads.begin())], estimates[k].volts};
  }
  return gains;
}

std::optional<Gain> WhatIf::best_gain(const Cure& cure) {
  const auto& before = solved_.solution.drop;
  if (without_effect(cure)) return best_gain_between(before, before);
  const auto after = solve_with(cure);
  if (!after) return std::nullopt;
  return best_gain_between(before, after->drop);
}

}  // namespace ohmtrail::diagnose
