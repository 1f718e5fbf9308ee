#include "plan/tree_bound.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace ohmtrail::plan {

namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();
/// Limits and ceilings are loosened by this share, so that rounding takes no design away.
constexpr double kRounding = 4e-9;
/// V, above any drop.
constexpr double kSpan = 1e4;

std::size_t at(int i) {
  return static_cast<std::size_t>(i);
}

/// The tolerance before an arm of each label beyond it; rising.
///
/// A design in which the far end has drop d ≤ t may lose d − r I(d) before the arm. That rises with d where
/// the current's own rise with d takes less than d itself; elsewhere the least current at any drop counts.
std::vector<double> before_arm(const Front& beyond, const std::vector<double>& amperes,
                               const NodeCurrent& current, const Curve& curve) {
  std::vector<double> tolerances(beyond.size());
  double best = -kInfinity;
  for (std::size_t i = 0; i < beyond.size(); ++i) {
    const double t = beyond[i].tolerance;
    double amps = amperes[i];
    const double left = std::max(current.volts - t, current.lowest_volts);
    const double steepness =
        current.watts > 0 ? (curve.cold + 3 * curve.least * amps * amps) * current.watts / (left * left) : 0;
    if (steepness > 1) amps = current.between(0, t);
    best = std::max(best, t - curve.least_ohms(amps) * amps);
    tolerances[i] = best;
  }
  return tolerances;
}

std::vector<double> currents_at(const Front& front, const NodeCurrent& current) {
  std::vector<double> amperes;
  amperes.reserve(front.size());
  for (const Label& label : front) amperes.push_back(current.at(label.tolerance));
  return amperes;
}

}  // namespace

TreeBound::TreeBound(const TreeProblem& problem)
    : problem_(problem),
      currents_(node_currents(problem.in_case, problem.tree, problem.known)),
      fronts_(problem.tree.size()),
      passed_(problem.tree.size(), 0) {
  for (std::size_t a = 0; a < problem.in_case.arms.size(); ++a) {
    const Arm& arm = problem.in_case.arms[a];
    double least = arm.run < 0 ? 0 : kInfinity;
    for (std::size_t c = 0; c < arm.choices.size(); ++c)
      if (arm.run >= 0 && allowed(arm, c)) least = std::min(least, problem.costs[a][c]);
    cheapest_.push_back(least);
    total_ += least;
  }
  ceiling_ = problem.ceiling + kRounding * std::abs(problem.ceiling);
  for (std::size_t n = fronts_.size(); n-- > 0;) fill(n);
}

bool TreeBound::allowed(const Arm& arm, std::size_t candidate) const {
  return arm.run < 0 || problem_.box[at(arm.run)][candidate];
}

void TreeBound::fill(std::size_t node) {
  fronts_[node].push_back(bottom(node));
  for (const int child : problem_.tree[node].children) passed_[node] += passed_[at(child)];
  for (const int arm : problem_.tree[node].arms) {
    passed_[node] += cheapest_[at(arm)];
    fronts_[node].push_back(pass(node, arm, fronts_[node].back()));
  }
}

/// Where the node's own loads hang and its children begin.
Front TreeBound::bottom(std::size_t node) const {
  double tolerance = problem_.known.terminal.high;
  for (const int l : problem_.tree[node].loads) {
    const double most = problem_.known.terminal.high - problem_.known.load_volts[at(l)].low;
    tolerance = std::min({tolerance, problem_.share * problem_.in_case.loads[at(l)].limit * (1 + kRounding),
                          most * (1 + kRounding) + kRounding});
  }
  const Front own{{tolerance, 0, -1, -1}};
  std::vector<const Front*> parts{&own};
  for (const int child : problem_.tree[node].children) parts.push_back(&fronts_[at(child)].back());
  Front sum = sum_of(parts);
  keep_unbeaten(sum, problem_.labels);
  return sum;
}

Front TreeBound::pass(std::size_t node, int index, const Front& beyond) const {
  const Arm& arm = problem_.in_case.arms[at(index)];
  const auto amperes = currents_at(beyond, currents_[node]);
  const double ceiling = ceiling_ - (total_ - passed_[node]);
  Front labels;
  for (std::size_t c = 0; c < arm.choices.size(); ++c) {
    if (!allowed(arm, c)) continue;
    const double cost = arm.run < 0 ? 0 : problem_.costs[at(index)][c];
    const auto tolerances = before_arm(beyond, amperes, currents_[node], arm.choices[c]);
    for (std::size_t i = 0; i < beyond.size(); ++i)
      if (tolerances[i] >= 0 && beyond[i].cost + cost <= ceiling)
        labels.push_back({tolerances[i], beyond[i].cost + cost, arm.run < 0 ? -1 : static_cast<int>(c),
                          static_cast<int>(i)});
  }
  keep_unbeaten(labels, problem_.labels);
  return labels;
}

double TreeBound::bound() const {
  const Front& top = fronts_.front().back();
  return top.empty() ? kInfinity : top.front().cost;
}

std::vector<int> TreeBound::choices() const {
  std::vector<int> choices(problem_.in_case.arms.size(), -1);
  choose(0, 0, choices);
  return choices;
}

void TreeBound::choose(std::size_t node, double drop, std::vector<int>& choices) const {
  const auto& fronts = fronts_[node];
  const auto& arms = problem_.tree[node].arms;
  int label = cheapest(fronts.back(), drop);
  for (std::size_t k = arms.size(); k > 0 && label >= 0; --k) {
    choices[at(arms[k - 1])] = fronts[k][at(label)].candidate;
    label = fronts[k][at(label)].beyond;
  }
  const double here = label < 0 ? drop : fronts.front()[at(label)].tolerance;
  for (const int child : problem_.tree[node].children) choose(at(child), here, choices);
}

ArmCosts TreeBound::marginals() const {
  ArmCosts least;
  for (const Arm& arm : problem_.in_case.arms) least.emplace_back(arm.choices.size(), kInfinity);
  std::vector<Front> outside(problem_.tree.size());
  outside.front() = {{kSpan, 0, -1, -1}};
  for (std::size_t n = 0; n < outside.size(); ++n) spread(n, outside[n], outside, least);
  return least;
}

/// From the top of a node through its arms to the tops of its children. Labels of what stands before a place
/// hold kSpan less the drop there, so that they too are better the more they tolerate.
void TreeBound::spread(std::size_t node, const Front& top, std::vector<Front>& outside,
                       ArmCosts& least) const {
  Front above = top;
  const auto& arms = problem_.tree[node].arms;
  for (std::size_t k = arms.size(); k-- > 0;) {
    note_marginals(node, arms[k], fronts_[node][k], above, least[at(arms[k])]);
    above = descend(node, arms[k], fronts_[node][k], above);
  }
  const Front& bottom = fronts_[node].front();
  for (const int child : problem_.tree[node].children) {
    const Front& own = fronts_[at(child)].back();
    for (const Label& label : above) {
      const int all = cheapest(bottom, kSpan - label.tolerance);
      const int mine = cheapest(own, kSpan - label.tolerance);
      if (all < 0 || mine < 0) continue;
      outside[at(child)].push_back(
          {label.tolerance, label.cost + bottom[at(all)].cost - own[at(mine)].cost, -1, -1});
    }
    keep_unbeaten(outside[at(child)], problem_.labels);
  }
}

/// What stands before the far end of an arm: all that stands before the arm, and the arm itself.
Front TreeBound::descend(std::size_t node, int index, const Front& beyond, const Front& above) const {
  const Arm& arm = problem_.in_case.arms[at(index)];
  Front labels;
  if (beyond.empty()) return labels;
  const double most = beyond.back().tolerance;
  for (const Label& label : above) {
    const double drop = kSpan - label.tolerance;
    const double amps = currents_[node].between(drop, most);
    for (std::size_t c = 0; c < arm.choices.size(); ++c) {
      if (!allowed(arm, c)) continue;
      const double beyond_drop = drop + arm.choices[c].least_ohms(amps) * amps;
      const double cost = label.cost + (arm.run < 0 ? 0 : problem_.costs[at(index)][c]);
      const int rest = cheapest(beyond, beyond_drop);
      if (rest < 0 || cost + beyond[at(rest)].cost > ceiling_) continue;
      labels.push_back({kSpan - beyond_drop, cost, -1, -1});
    }
  }
  keep_unbeaten(labels, problem_.labels);
  return labels;
}

void TreeBound::note_marginals(std::size_t node, int index, const Front& beyond, const Front& above,
                               std::vector<double>& least) const {
  const Arm& arm = problem_.in_case.arms[at(index)];
  const auto amperes = currents_at(beyond, currents_[node]);
  for (std::size_t c = 0; c < arm.choices.size(); ++c) {
    if (!allowed(arm, c)) continue;
    const double cost = arm.run < 0 ? 0 : problem_.costs[at(index)][c];
    const auto tolerances = before_arm(beyond, amperes, currents_[node], arm.choices[c]);
    // Rising tolerances need labels above with ever less left: one walk through both.
    std::size_t last = above.size();
    for (std::size_t i = 0; i < beyond.size(); ++i) {
      while (last > 0 && above[last - 1].tolerance >= kSpan - tolerances[i] - kRounding) --last;
      if (last < above.size()) least[c] = std::min(least[c], above[last].cost + cost + beyond[i].cost);
    }
  }
}

}  // namespace ohmtrail::plan
