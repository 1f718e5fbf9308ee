#include "solve/fold.hpp"

#include <algorithm>
#include <cmath>

#include "units/index.hpp"

// The solutions for all shares s of the power loads make a curve that turns back at the fold, where J is
// singular and ds/dt = 0. The voltage t of the load that falls fastest grows steadily along the curve, also
// past the turn, so (V, s) is solved for a given t:
//   F(V, s) = 0, a·V = t;   with p = J⁻¹F, q = J⁻¹ ∂F/∂s:   ds = −(t − a·V + a·p)/(a·q),  dV = −p − q ds.
// Along the curve ds/dt = −1/(a·q), and the secant method on that in t finds the fold: near it s(t) is a
// parabola, so an error of 1e−8 in t is one of 1e−16 in s. For one source and one load ds/dt is a straight
// line.

namespace ohmtrail::solve {

namespace {

class Walk {
 public:
  Walk(SolverState& state, int island)
      : state_(state),
        point_(state.structure->point),
        jacobian_(state.structure->jacobian),
        island_(at(island)),
        only_here_(state.demand.share.size(), 0.0) {
    only_here_[island_] = 1;
  }

  std::optional<double> to_fold() {
    if (!choose_load()) return std::nullopt;
    double t = point_.drop()[load_];
    double slope = 0;
    if (!slope_at(t, slope)) return std::nullopt;
    double t_next = t * 0.99;
    for (int step = 0; step < 40; ++step) {
      double slope_next = 0;
      if (!slope_at(t_next, slope_next)) return std::nullopt;
      const double change = slope_next == slope ? 0 : -slope_next * (t_next - t) / (slope_next - slope);
      t = t_next;
      slope = slope_next;
      if (std::abs(change) <= 1e-9 * t) return state_.demand.share[island_];
      t_next = t + std::clamp(change, -0.1 * t, 0.1 * t);
    }
    return std::nullopt;
  }

 private:
  bool here(std::size_t b) const { return at(point_.island(b)) == island_; }

  /// ∂F/∂s: what the power loads take at a share of 1.
  Eigen::VectorXd by_share() const {
    Eigen::VectorXd derivative = Eigen::VectorXd::Zero(jacobian_.unknowns());
    for (const std::size_t b : point_.power_loads()) {
      if (!here(b)) continue;
      const Branch& branch = state_.circuit.branches[b];
      jacobian_.add_between(derivative, branch.from, branch.to, state_.demand.power[b] / point_.drop()[b]);
    }
    return derivative;
  }

  bool factor() { return jacobian_.factor(point_.conductance()); }

  /// The load whose voltage falls fastest, in proportion, as the share grows.
  bool choose_load() {
    point_.evaluate(state_.demand);
    if (!factor()) return false;
    const Eigen::VectorXd q = jacobian_.solve(by_share());
    double fastest = 0;
    for (const std::size_t b : point_.power_loads()) {
      if (!here(b)) continue;
      const Branch& branch = state_.circuit.branches[b];
      const double fall = jacobian_.between(q, branch.from, branch.to) / point_.drop()[b];
      if (fall > fastest) {
        fastest = fall;
        load_ = b;
      }
    }
    return fastest > 0;
  }

  /// Solves for load voltage t and gives ds/dt there; the operating point and the share are left at that
  /// state.
  bool slope_at(double t, double& slope) {
    const Branch& load = state_.circuit.branches[load_];
    double& share = state_.demand.share[island_];
    for (int iteration = 0; iteration < 30; ++iteration) {
      point_.evaluate(state_.demand);
      const Imbalance& imbalance = point_.imbalance();
      const double worst = imbalance.relative[island_];
      if (!std::isfinite(worst) || !factor()) return false;
      const Eigen::VectorXd p = jacobian_.solve(imbalance.leaving);
      const Eigen::VectorXd q = jacobian_.solve(by_share());
      const double aq = jacobian_.between(q, load.from, load.to);
      slope = -1 / aq;
      const double miss = t - point_.drop()[load_];
      if (worst <= 1e-13 && std::abs(miss) <= 1e-13 * t) return true;
      const double ds = -(miss + jacobian_.between(p, load.from, load.to)) / aq;
      share += ds;
      point_.move(-p - q * ds, only_here_);
    }
    return false;
  }

  SolverState& state_;
  OperatingPoint& point_;
  Jacobian& jacobian_;
  std::size_t island_;
  std::vector<double> only_here_;
  std::size_t load_ = 0;
};

}  // namespace

std::optional<double> walk_to_fold(SolverState& state, int island) {
  return Walk(state, island).to_fold();
}

}  // namespace ohmtrail::solve
