#include "plan/tree_bound.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "units/index.hpp"

namespace ohmtrail::plan {

namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();
/// Limits and ceilings are loosened by this share, so that rounding takes no design away.
constexpr double kRounding = 4e-9;
/// V, above any drop.
constexpr double kSpan = 1e4;

/// The tolerance before an arm of a label beyond it.
///
/// A design in which the far end has drop d ≤ t may lose d − r I(d) before the arm. That rises with d where
/// the current's own rise with d takes less than d itself; elsewhere the least current at any drop counts.
double before_arm(const Label& beyond, const NodeCurrent& current, const Curve& curve) {
  const double t = beyond.tolerance;
  double amps = current.at(t, beyond);
  const double steepness = (curve.cold + 3 * curve.least * amps * amps) * current.slope(t, beyond);
  if (steepness > 1) amps = current.between(0, t, beyond);
  return t - curve.least_ohms(amps) * amps;
}

/// The label as it stands before the arm.
Label passed(const Label& beyond, const NodeCurrent& current, const Hull& hull) {
  Label label = beyond;
  label.tolerance = before_arm(beyond, current, hull.low);
  const double least = current.between(current.least_drop, beyond.tolerance, beyond);
  label.sag += current.watts * hull.low.least_ohms(least) * least;
  label.lag += current.siemens * hull.high.most_ohms(current.most_amperes) * current.most_amperes;
  return label;
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

/// A fixed arm has what the bounds know of it: a device's resistance depends on the box.
Hull TreeBound::hull(int arm, std::size_t candidate) const {
  const Arm& one = problem_.in_case.arms[at(arm)];
  return one.run < 0 ? problem_.known.arm_curves[at(arm)]
                     : Hull{one.choices[candidate], one.choices[candidate]};
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
  const Front own{Label{tolerance}};
  std::vector<const Front*> parts{&own};
  for (const int child : problem_.tree[node].children) parts.push_back(&fronts_[at(child)].back());
  Front sum = sum_of(parts);
  keep_unbeaten(sum, problem_.labels);
  return sum;
}

Front TreeBound::pass(std::size_t node, int index, const Front& beyond) const {
  const Arm& arm = problem_.in_case.arms[at(index)];
  const double ceiling = ceiling_ - (total_ - passed_[node]);
  Front labels;
  for (std::size_t c = 0; c < arm.choices.size(); ++c) {
    if (!allowed(arm, c)) continue;
    const double cost = arm.run < 0 ? 0 : problem_.costs[at(index)][c];
    for (std::size_t i = 0; i < beyond.size() && beyond[i].cost + cost <= ceiling; ++i) {
      Label label = passed(beyond[i], currents_[node], hull(index, c));
      if (label.tolerance < problem_.known.lead_volts.low) continue;
      label.cost += cost;
      label.candidate = arm.run < 0 ? -1 : static_cast<int>(c);
      label.beyond = static_cast<int>(i);
      labels.push_back(label);
    }
  }
  keep_unbeaten(labels, problem_.labels);
  return labels;
}

double TreeBound::bound() const {
  const Front& top = fronts_.front().back();
  const int label = cheapest(top, problem_.known.lead_volts.low);
  return label < 0 ? kInfinity : top[at(label)].cost;
}

std::vector<int> TreeBound::choices() const {
  std::vector<int> choices(problem_.in_case.arms.size(), -1);
  choose(0, problem_.known.lead_volts.low, choices);
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
  outside.front() = {Label{kSpan - problem_.known.lead_volts.low}};
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
          Label{label.tolerance, label.cost + bottom[at(all)].cost - own[at(mine)].cost});
    }
    keep_unbeaten(outside[at(child)], problem_.labels);
  }
}

/// What stands before the far end of an arm: all that stands before the arm, and the arm itself.
Front TreeBound::descend(std::size_t node, int index, const Front& beyond, const Front& above) const {
  const Arm& arm = problem_.in_case.arms[at(index)];
  const Front rest = certain(beyond);
  Front labels;
  for (const Label& label : above) {
    const double drop = kSpan - label.tolerance;
    const int any = cheapest(rest, drop);
    if (any < 0) continue;
    const double amps = currents_[node].between(drop, rest.back().tolerance, rest[at(any)]);
    for (std::size_t c = 0; c < arm.choices.size(); ++c) {
      if (!allowed(arm, c)) continue;
      const double far = drop + hull(index, c).low.least_ohms(amps) * amps;
      const double cost = label.cost + (arm.run < 0 ? 0 : problem_.costs[at(index)][c]);
      const int next = cheapest(rest, far);
      if (next >= 0 && cost + rest[at(next)].cost <= ceiling_) labels.push_back(Label{kSpan - far, cost});
    }
  }
  keep_unbeaten(labels, problem_.labels);
  return labels;
}

void TreeBound::note_marginals(std::size_t node, int index, const Front& beyond, const Front& above,
                               std::vector<double>& least) const {
  const Arm& arm = problem_.in_case.arms[at(index)];
  for (std::size_t c = 0; c < arm.choices.size(); ++c) {
    if (!allowed(arm, c)) continue;
    const double cost = arm.run < 0 ? 0 : problem_.costs[at(index)][c];
    for (const Label& label : beyond) {
      const double tolerance = before_arm(label, currents_[node], hull(index, c).low);
      const int rest = cheapest(above, kSpan - tolerance - kRounding);
      if (rest >= 0) least[c] = std::min(least[c], above[at(rest)].cost + cost + label.cost);
    }
  }
}

}  // namespace ohmtrail::plan
