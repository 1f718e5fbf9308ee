#include <tuple>

#include "solve/branch_law.hpp"
#include "solve/series_parallel.hpp"
#include "solve/solver_state.hpp"
#include "units/index.hpp"

// A branch of tangent resistance t, which loses Δv more at its present current i and has tangent t' once
// replaced, acts on the rest (open-circuit voltage and resistance ρ) as a current
//   Δi = −Δv/(t' + ρ);   with the resistance seen at its ends, branch included, s = tρ/(t + ρ),
// a load whose voltage answers w to 1 A driven through these ends gains Δv w/((t'/t) t + (1 − t'/t) s).

namespace ohmtrail::solve {

namespace {

class BestGains {
 public:
  BestGains(SolverState& state, const std::vector<int>& loads)
      : state_(state), jacobian_(state.structure->jacobian), point_(state.structure->point), loads_(loads) {
    for (std::size_t k = 0; k < loads.size(); ++k) {
      const auto [from, to] = jacobian_.ends(at(loads[k]));
      if (from == to && unmoved_.load < 0) unmoved_.load = static_cast<int>(k);
    }
  }

  std::vector<LoadGain> find(const std::vector<Replacement>& replacements) {
    const auto views = view_edges(jacobian_.unknowns(), linear_edges());
    if (!views) state_.factor_here();
    std::vector<LoadGain> gains;
    for (const Replacement& one : replacements)
      gains.push_back(
          gain_of(one, views ? with_unmoved((*views)[at(one.branch)]) : view_by_column(one.branch)));
    return gains;
  }

 private:
  /// As many as there are branches; those that are no part of the linear network join the ground to itself.
  std::vector<LinearEdge> linear_edges() const {
    std::vector<LinearEdge> edges(state_.circuit.branches.size());
    for (std::size_t b = 0; b < edges.size(); ++b) {
      const auto [from, to] = jacobian_.ends(b);
      const bool part = point_.island(b) >= 0 && point_.flows(b);
      if (part && (point_.conductance()[b] != 0)) edges[b] = {from, to, point_.conductance()[b], -1};
    }
    for (std::size_t k = 0; k < loads_.size(); ++k) {
      LinearEdge& edge = edges[at(loads_[k])];
      std::tie(edge.from, edge.to) = jacobian_.ends(at(loads_[k]));
      edge.load = static_cast<int>(k);
    }
    return edges;
  }

  /// A load between fixed voltages answers 0 to everything.
  EdgeView with_unmoved(EdgeView view) const {
    if (unmoved_.load < 0) return view;
    if (view.loads.most.load < 0 || view.loads.most.volts < 0) view.loads.most = unmoved_;
    if (view.loads.least.load < 0 || view.loads.least.volts > 0) view.loads.least = unmoved_;
    return view;
  }

  EdgeView view_by_column(int branch) const {
    Eigen::VectorXd column = Eigen::VectorXd::Zero(jacobian_.unknowns());
    const auto [from, to] = jacobian_.ends(at(branch));
    if (from >= 0) column[from] += 1;
    if (to >= 0) column[to] -= 1;
    column = jacobian_.solve(column);
    EdgeView view;
    view.resistance = across(column, branch);
    for (std::size_t k = 0; k < loads_.size(); ++k) {
      const Response response{across(column, loads_[k]), static_cast<int>(k)};
      view.loads = merged(view.loads, {response, response});
    }
    return view;
  }

  double across(const Eigen::VectorXd& column, int branch) const {
    const auto [from, to] = jacobian_.ends(at(branch));
    return (from >= 0 ? column[from] : 0) - (to >= 0 ? column[to] : 0);
  }

  LoadGain gain_of(const Replacement& one, const EdgeView& view) const {
    if (loads_.empty()) return {};
    LoadGain gain{loads_.front(), 0};
    const Branch& old = state_.circuit.branches[at(one.branch)];
    if (!point_.flows(at(one.branch)) || old.resistance <= 0 || view.loads.most.load < 0) return gain;
    const double amperes = state_.current[at(one.branch)];
    const AtCurrent now = at_current(old, amperes);
    const AtCurrent then = at_current(one.by, amperes);
    const double ratio = then.resistance / now.resistance;
    const double volts = (then.volts - now.volts) / (ratio * now.resistance + (1 - ratio) * view.resistance);
    const Response& best = volts > 0 ? view.loads.most : view.loads.least;
    return volts == 0 ? gain : LoadGain{loads_[at(best.load)], volts * best.volts};
  }

  SolverState& state_;
  const Jacobian& jacobian_;
  const OperatingPoint& point_;
  const std::vector<int>& loads_;
  Response unmoved_;
};

}  // namespace

std::vector<LoadGain> Solver::estimate_best_gains(const std::vector<int>& loads,
                                                  const std::vector<Replacement>& replacements) const {
  return BestGains(*state_, loads).find(replacements);
}

}  // namespace ohmtrail::solve
