#include "plan/tree_cases.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "units/index.hpp"

namespace ohmtrail::plan {

namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();

double least_cost(const std::vector<bool>& allowed, const RunSpace& run) {
  double least = kInfinity;
  for (std::size_t c = 0; c < allowed.size(); ++c)
    if (allowed[c]) least = std::min(least, run.candidates[c].cost);
  return least;
}

/// The allowed candidate with the least marginal; of equal ones the cheapest.
int least_dear(const std::vector<bool>& allowed, const std::vector<double>& least, const RunSpace& run) {
  int best = -1;
  for (std::size_t c = 0; c < allowed.size(); ++c) {
    if (!allowed[c]) continue;
    const bool beats = best < 0 || least[c] < least[at(best)] - 1e-9 * std::abs(least[c]) ||
                       (least[c] <= least[at(best)] + 1e-9 * std::abs(least[c]) &&
                        run.candidates[c].cost < run.candidates[at(best)].cost);
    if (beats) best = static_cast<int>(c);
  }
  return best;
}

}  // namespace

TreeCases::TreeCases(const DesignSpace& space, const std::vector<RadialCase>& cases,
                     std::vector<LoadTree> trees)
    : space_(space), cases_(cases), trees_(std::move(trees)), active_(cases.size(), false) {
  for (const RadialCase& in_case : cases) {
    costs_.emplace_back();
    for (const Arm& arm : in_case.arms) costs_.back().emplace_back(arm.choices.size(), 0.0);
  }
  copies_.resize(space.runs.size());
}

void TreeCases::activate(std::size_t in_case, const std::vector<Bounds>& known) {
  active_[in_case] = true;
  const auto& arms = cases_[in_case].arms;
  for (std::size_t a = 0; a < arms.size(); ++a)
    if (arms[a].run >= 0 && !arms[a].loads.empty())
      copies_[at(arms[a].run)].push_back({in_case, static_cast<int>(a)});
  split_costs(known);
}

void TreeCases::split_costs(const std::vector<Bounds>& known) {
  for (std::size_t k = 0; k < copies_.size(); ++k) {
    const Copy* most = nullptr;
    double amperes = -1;
    for (const Copy& copy : copies_[k]) {
      auto& costs = costs_[copy.in_case][at(copy.arm)];
      std::fill(costs.begin(), costs.end(), 0.0);
      const double carries = known[copy.in_case].arm_amperes[at(copy.arm)].low;
      if (carries > amperes) amperes = carries, most = &copy;
    }
    if (most == nullptr) continue;
    auto& costs = costs_[most->in_case][at(most->arm)];
    for (std::size_t c = 0; c < costs.size(); ++c) costs[c] = space_.runs[k].candidates[c].cost;
  }
}

/// Runs that feed nothing in any active case count with the cheapest candidate.
double TreeCases::unowned_cost(const Box& box) const {
  double sum = 0;
  for (std::size_t k = 0; k < copies_.size(); ++k) {
    if (copies_[k].empty()) sum += least_cost(box[k], space_.runs[k]);
  }
  return sum;
}

/// Of one case what it chose; of several the candidate of each run with the least joint marginal.
Design TreeCases::proposed(const std::vector<Bounded>& each, const JointBound& joint, const Box& box) const {
  Design design(box.size(), -1);
  if (each.size() == 1) {
    const auto choices = each.front().tree.choices();
    for (std::size_t a = 0; a < choices.size(); ++a)
      if (const int run = cases_[each.front().in_case].arms[a].run; run >= 0)
        design[at(run)] = std::max(design[at(run)], choices[a]);
  }
  for (std::size_t k = 0; k < box.size(); ++k)
    if (design[k] < 0) design[k] = least_dear(box[k], joint.least[k], space_.runs[k]);
  return design;
}

double TreeCases::floor_of(std::size_t in_case, const Box& box) const {
  double sum = 0;
  for (std::size_t a = 0; a < cases_[in_case].arms.size(); ++a) {
    const int run = cases_[in_case].arms[a].run;
    if (run < 0) continue;
    double least = kInfinity;
    for (std::size_t c = 0; c < box[at(run)].size(); ++c)
      if (box[at(run)][c]) least = std::min(least, costs_[in_case][a][c]);
    sum += least;
  }
  return sum;
}

std::vector<TreeCases::Bounded> TreeCases::bound_each(const TreeQuestion& question, double& total) const {
  std::vector<double> floors(cases_.size(), 0);
  total = unowned_cost(question.box);
  for (std::size_t s = 0; s < cases_.size(); ++s)
    if (active_[s]) total += floors[s] = floor_of(s, question.box);
  std::vector<Bounded> each;
  for (std::size_t s = 0; s < cases_.size(); ++s) {
    if (!active_[s]) continue;
    each.push_back({s, TreeBound({cases_[s], trees_[s], question.box, question.known[s], costs_[s],
                                  question.ceiling - (total - floors[s]), question.labels, question.share})});
    total += each.back().tree.bound() - floors[s];
    if (std::isinf(total)) break;
  }
  return each;
}

JointBound TreeCases::bound(const TreeQuestion& question) const {
  JointBound joint;
  const auto each = bound_each(question, joint.bound);
  if (std::isinf(joint.bound)) return joint;
  joint.least = joint_marginals(each, question.box, joint.bound);
  joint.design = proposed(each, joint, question.box);
  return joint;
}

/// A candidate is at least as dear as the sum over the cases of what each asks of designs that take it.
std::vector<std::vector<double>> TreeCases::joint_marginals(const std::vector<Bounded>& each, const Box& box,
                                                            double total) const {
  std::vector<std::vector<double>> least;
  for (std::size_t k = 0; k < box.size(); ++k) least.emplace_back(box[k].size(), total);
  for (const Bounded& one : each) {
    const ArmCosts marginals = one.tree.marginals();
    std::vector<std::vector<double>> extra(box.size());
    for (std::size_t a = 0; a < marginals.size(); ++a) {
      const int run = cases_[one.in_case].arms[a].run;
      if (run < 0 || cases_[one.in_case].arms[a].loads.empty()) continue;
      extra[at(run)].resize(box[at(run)].size(), 0);
      for (std::size_t c = 0; c < marginals[a].size(); ++c)
        extra[at(run)][c] = std::max(extra[at(run)][c], marginals[a][c] - one.tree.bound());
    }
    for (std::size_t k = 0; k < box.size(); ++k)
      for (std::size_t c = 0; c < extra[k].size(); ++c) least[k][c] += extra[k][c];
  }
  for (std::size_t k = 0; k < box.size(); ++k) {
    if (!copies_[k].empty()) continue;
    const double cheapest = least_cost(box[k], space_.runs[k]);
    for (std::size_t c = 0; c < box[k].size(); ++c)
      least[k][c] += std::max(0.0, space_.runs[k].candidates[c].cost - cheapest);
  }
  return least;
}

void TreeCases::improve(const TreeQuestion& question) {
  if (std::count(active_.begin(), active_.end(), true) < 2) return;
  double step = 0.5, best = 0;
  (void)bound_each(question, best);
  auto saved = costs_;
  for (int round = 0; round < 30 && step > 0.02 && std::isfinite(best); ++round) {
    average(question, step);
    double now = 0;
    (void)bound_each(question, now);
    if (now > best) {
      best = now;
      saved = costs_;
    } else {
      costs_ = saved;
      step /= 2;
    }
  }
  costs_ = saved;
}

/// Each copy of a run gives up what it asks more than the others' mean, and takes what it asks less.
void TreeCases::average(const TreeQuestion& question, double step) {
  double total = 0;
  const auto each = bound_each(question, total);
  if (std::isinf(total)) return;
  std::vector<ArmCosts> marginals(cases_.size());
  for (const Bounded& one : each) {
    marginals[one.in_case] = one.tree.marginals();
    for (auto& arm : marginals[one.in_case])
      for (double& least : arm) least = std::min(least - one.tree.bound(), question.ceiling);
  }
  for (std::size_t k = 0; k < copies_.size(); ++k) {
    if (copies_[k].size() < 2) continue;
    for (std::size_t c = 0; c < question.box[k].size(); ++c) {
      if (!question.box[k][c]) continue;
      double mean = 0;
      for (const Copy& copy : copies_[k]) mean += marginals[copy.in_case][at(copy.arm)][c];
      mean /= static_cast<double>(copies_[k].size());
      for (const Copy& copy : copies_[k])
        costs_[copy.in_case][at(copy.arm)][c] += step * (mean - marginals[copy.in_case][at(copy.arm)][c]);
    }
  }
}

}  // namespace ohmtrail::plan
