#include "solve/newton.hpp"

#include <algorithm>
#include <cmath>

#include "solve/by_island.hpp"
#include "units/index.hpp"

// Unknowns: the base voltage of every cluster of merged points but the grounded ones.
// Equations: the branch currents i(v) that leave a cluster sum to 0.
// Derivative: J = Σ g (e_a − e_b)(e_a − e_b)ᵀ, g = di/dv: 1/r of wires and sources, 1/(r0 + 3 r2 i²) of wires
// that their current warms, −P/v² of constant-power loads. J is symmetric.
//
// The currents are the gradient of one function Φ of the voltages (the content), and J is its Hessian. P/v²
// is convex in v > 0, so J ⪰ 0 holds in a convex set of voltages, and Φ is convex there: it has at most one
// stationary point in it. That is the upper solution, the one that the no-load state leads to as the loads
// grow. Newton therefore only has to stay in the set (all pivots positive, all power loads above 0 V) and not
// to overshoot along its step; where it cannot, this start does not lead to a solution.
//
// A factor is used again while conductances have drifted little and the imbalance falls tenfold a step.

namespace ohmtrail::solve {

namespace {

constexpr double good_enough = 1e-11;  // accepted where it falls no further
constexpr double shortest_step = 1e-4;
constexpr double most_drift = 1e-3;
constexpr int most_iterations = 200;

class Newton {
 public:
  Newton(const Circuit& circuit, OperatingPoint& point, Jacobian& jacobian, const Demand& demand,
         Effort& effort, double enough)
      : circuit_(circuit),
        point_(point),
        jacobian_(jacobian),
        demand_(demand),
        effort_(effort),
        enough_(enough),
        failed_(point.islands(), 0) {}

  std::vector<char> run() {
    point_.evaluate(demand_);
    length_.assign(failed_.size(), 0.0);
    fail_reversed_loads();
    for (int iteration = 0; iteration < most_iterations; ++iteration) {
      const double worst = worst_of_the_living();
      if (worst <= enough_ || (worst <= good_enough && worst > 0.5 * before_)) return failed_;
      if (overshot()) {
        retreat();
        continue;
      }
      if (needs_factor(worst) && !refactor()) continue;
      before_ = worst;
      advance();
    }
    give_up();
    return failed_;
  }

 private:
  const Imbalance& imbalance() const { return point_.imbalance(); }

  double worst_of_the_living() const {
    double worst = 0;
    for (std::size_t k = 0; k < imbalance().relative.size(); ++k) {
      if (!failed_[k])
        worst = std::isfinite(imbalance().relative[k]) ? std::max(worst, imbalance().relative[k]) : HUGE_VAL;
    }
    return worst;
  }

  bool takes_power(std::size_t b) const { return point_.current()[b] != 0; }

  /// A start where a power load has no voltage, or a reversed one, leads nowhere.
  void fail_reversed_loads() {
    for (const std::size_t b : point_.power_loads()) {
      if (takes_power(b) && !(point_.drop()[b] > 0)) failed_[at(point_.island(b))] = 1;
    }
  }

  bool needs_factor(double worst) const {
    return !jacobian_.factored() || worst > 0.1 * before_ ||
           jacobian_.drift(point_.conductance()) > most_drift;
  }

  /// False: the factor is not positive definite, and the islands concerned went half their step back.
  bool refactor() {
    ++effort_.factorings;
    std::vector<char> indefinite(failed_.size(), 0);
    if (jacobian_.factor(point_.conductance())) {
      jacobian_.mark_indefinite(indefinite);
    } else {
      indefinite.assign(failed_.size(), 1);
    }
    retreating_.assign(failed_.size(), 0);
    bool any = false;
    for (std::size_t k = 0; k < failed_.size(); ++k) {
      if (failed_[k] || !indefinite[k]) continue;
      retreating_[k] = 1;
      any = true;
    }
    if (any) retreat();
    return !any;
  }

  void advance() {
    ++effort_.steps;
    step_ = jacobian_.solve(-imbalance().leaving);
    length_.assign(failed_.size(), 1.0);
    for (std::size_t k = 0; k < failed_.size(); ++k) {
      if (failed_[k]) length_[k] = 0;
    }
    slope_ = slopes();
    keep_loads_above_zero();
    point_.move(step_, length_);
    point_.evaluate(demand_);
  }

  /// No power load may lose more than four fifths of its voltage in one step.
  void keep_loads_above_zero() {
    for (const std::size_t b : point_.power_loads()) {
      if (!takes_power(b)) continue;
      const Branch& branch = circuit_.branches[b];
      double& length = length_[at(point_.island(b))];
      const double change = jacobian_.between(step_, branch.from, branch.to);
      const double volts = point_.drop()[b];
      if (length > 0 && volts + length * change < 0.2 * volts) length = -0.8 * volts / change;
    }
  }

  /// Per island, dΦ along the step: Φ's gradient is the imbalance.
  std::vector<double> slopes() const {
    std::vector<double> slope(failed_.size(), 0.0);
    {
      SumByIsland sums(slope);
      for (int u = 0; u < jacobian_.unknowns(); ++u)
        sums.add(jacobian_.island(u), imbalance().leaving[u] * step_[u]);
    }
    return slope;
  }

  /// Marks islands where Φ rises again at the end of the step about as steeply as it fell at its start.
  bool overshot() {
    if (step_.size() == 0) return false;
    retreating_.assign(failed_.size(), 0);
    bool any = false;
    std::vector<double> now;
    for (std::size_t k = 0; k < failed_.size(); ++k) {
      if (failed_[k] || length_[k] <= 0 || imbalance().relative[k] < 1e-6) continue;
      if (now.empty()) now = slopes();
      retreating_[k] = !std::isfinite(imbalance().relative[k]) || now[k] > 0.9 * std::abs(slope_[k]);
      any = any || retreating_[k];
    }
    return any;
  }

  /// Goes half of the last step back in the islands marked; gives up where the step has become too short.
  void retreat() {
    std::vector<double> back(failed_.size(), 0.0);
    for (std::size_t k = 0; k < failed_.size(); ++k) {
      if (!retreating_[k]) continue;
      if (length_[k] <= shortest_step) {
        failed_[k] = 1;
        continue;
      }
      length_[k] /= 2;
      back[k] = -length_[k];
    }
    if (step_.size() > 0) point_.move(step_, back);
    jacobian_.forget();
    point_.evaluate(demand_);
  }

  void give_up() {
    for (std::size_t k = 0; k < failed_.size(); ++k) {
      if (!(imbalance().relative[k] <= good_enough)) failed_[k] = 1;
    }
  }

  const Circuit& circuit_;
  OperatingPoint& point_;
  Jacobian& jacobian_;
  const Demand& demand_;
  Effort& effort_;
  double enough_;
  std::vector<char> failed_, retreating_;
  std::vector<double> length_, slope_;
  Eigen::VectorXd step_;
  double before_ = HUGE_VAL;  ///< worst imbalance one step ago
};

}  // namespace

std::vector<char> newton(const Circuit& circuit, OperatingPoint& at, Jacobian& jacobian, const Demand& demand,
                         Effort& effort, double enough) {
  return Newton(circuit, at, jacobian, demand, effort, enough).run();
}

}  // namespace ohmtrail::solve
