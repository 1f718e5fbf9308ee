#include <algorithm>
#include <cmath>
#include <utility>

#include "solve/solver_state.hpp"
#include "solve/wrong_modes.hpp"
#include "units/index.hpp"

// One resistance changed: J changes by δg a aᵀ, a = e_from − e_to. With z = J⁻¹a and S = a·z,
//   (J + δg a aᵀ)⁻¹ F = x − z δg (a·x)/(1 + δg S),  x = J⁻¹F    (Sherman and Morrison 1950).
// Steps with this fixed matrix converge at the rate by which the other conductances (power loads, warm wires)
// moved.

namespace ohmtrail::solve {

namespace {

constexpr int most_steps = 30;
constexpr double small_enough = 2e-14;
constexpr double good_enough = 1e-11;

/// Puts a state back as it was.
class Restore {
 public:
  explicit Restore(SolverState& state, int branch)
      : state_(state),
        branch_(at(branch)),
        resistance_(state.circuit.branches[branch_].resistance),
        point_(state.structure->point),
        voltage_(state.voltage),
        current_(state.current) {}
  Restore(const Restore&) = delete;
  Restore& operator=(const Restore&) = delete;
  ~Restore() {
    state_.circuit.branches[branch_].resistance = resistance_;
    std::swap(state_.structure->point, point_);
    state_.voltage.swap(voltage_);
    state_.current.swap(current_);
  }

 private:
  SolverState& state_;
  std::size_t branch_;
  double resistance_;
  OperatingPoint point_;
  std::vector<Precise> voltage_;
  std::vector<double> current_;
};

/// Moves the state to the solution with branch b as it is now; false where that is not sure to be the one
/// wanted.
bool polish(SolverState& state, int b, double old_conductance) {
  const Branch& branch = state.circuit.branches[at(b)];
  OperatingPoint& point = state.structure->point;
  const Jacobian& jacobian = state.structure->jacobian;
  Eigen::VectorXd column = Eigen::VectorXd::Zero(jacobian.unknowns());
  jacobian.add_between(column, branch.from, branch.to, 1);
  column = jacobian.solve(column);
  const double seen = jacobian.between(column, branch.from, branch.to);
  const std::vector<double> everywhere(point.islands(), 1.0);
  double before = HUGE_VAL;
  for (int step = 0; step < most_steps; ++step) {
    point.evaluate(state.demand);
    const Imbalance& imbalance = point.imbalance();
    double worst = 0;
    for (const double one : imbalance.relative) worst = std::max(worst, one);
    if (worst <= small_enough || (worst <= good_enough && worst > 0.5 * before)) return true;
    if (!(worst <= 0.5 * before) && step > 1) return false;
    before = worst;
    const double change = point.conductance()[at(b)] - old_conductance;
    if (1 + change * seen <= 0) return false;
    const Eigen::VectorXd plain = jacobian.solve(imbalance.leaving);
    const double correction = change * jacobian.between(plain, branch.from, branch.to) / (1 + change * seen);
    point.move(column * correction - plain, everywhere);
  }
  return false;
}

bool power_loads_above_zero(const SolverState& state) {
  const OperatingPoint& point = state.structure->point;
  const auto& loads = point.power_loads();
  return std::all_of(loads.begin(), loads.end(), [&](std::size_t b) { return point.drop()[b] > 0; });
}

/// No load, regulator or diode would change its state, and converters' inputs take what they should.
bool all_stay(SolverState& state) {
  const Demand kept = state.demand;
  const bool converters_stay = state.update_converters() <= 1e-12;
  state.demand = kept;
  const WrongModes wrong = find_wrong_modes(state);
  if (!converters_stay || !wrong.changes.empty() || !wrong.unfed.empty() || wrong.overloaded) return false;
  for (std::size_t b = 0; b < state.modes.size(); ++b) {
    const double least = state.circuit.branches[b].stops_below;
    if (least > 0 && state.is_running_load(b) && state.structure->point.drop()[b] < least) return false;
  }
  return true;
}

/// A load that dropped out might run again.
bool any_stopped(const SolverState& state) {
  for (std::size_t b = 0; b < state.stopped.size(); ++b) {
    if (state.stopped[b] && !state.unfed[b]) return true;
  }
  return false;
}

tl::expected<Solution, Failure> solve_anew(const SolverState& state, int branch, double ohms) {
  Circuit circuit = state.circuit;
  circuit.branches[at(branch)].resistance = ohms;
  return Solver(std::move(circuit)).solve();
}

}  // namespace

tl::expected<Solution, Failure> Solver::with_resistance(int branch, double ohms) {
  SolverState& state = *state_;
  const bool plain =
      state.structure->point.flows(at(branch)) && ohms > 0 && !state.collapse && !any_stopped(state);
  if (!plain) return solve_anew(state, branch, ohms);
  state.factor_here();
  {
    const Restore restore(state, branch);
    const double old_conductance = state.structure->point.conductance()[at(branch)];
    state.circuit.branches[at(branch)].resistance = ohms;
    state.structure->point.take_value(at(branch));
    if (polish(state, branch, old_conductance) && power_loads_above_zero(state)) {
      state.find_currents();
      state.voltage = state.structure->point.voltage();
      if (all_stay(state)) {
        if (auto solution = make_solution(state); is_certified(solution)) return solution;
      }
    }
  }
  return solve_anew(state, branch, ohms);
}

std::vector<double> Solver::estimate_gains(int load, const std::vector<double>& resistance) const {
  SolverState& state = *state_;
  state.factor_here();
  const Structure& structure = *state.structure;
  if (state.resistance_seen.empty()) state.resistance_seen = structure.jacobian.resistance_seen();
  const Branch& wanted = state.circuit.branches[at(load)];
  Eigen::VectorXd response = Eigen::VectorXd::Zero(structure.jacobian.unknowns());
  structure.jacobian.add_between(response, wanted.from, wanted.to, 1);
  response = structure.jacobian.solve(response);
  std::vector<double> gain(state.current.size(), 0.0);
  for (std::size_t b = 0; b < gain.size(); ++b) {
    const Branch& branch = state.circuit.branches[b];
    if (branch.resistance <= 0 || !structure.point.flows(b)) continue;
    // The tangent resistance grows in proportion to the resistance at 20 °C; so does the voltage at fixed
    // current.
    const double tangent = 1 / structure.point.conductance()[b];
    const double ratio = resistance[b] / branch.resistance;
    const double volts =
        branch.law == Law::resistor ? structure.point.drop()[b] : branch.resistance * state.current[b];
    const double reach = structure.jacobian.between(response, branch.from, branch.to);
    gain[b] = (ratio - 1) * volts * reach / (ratio * tangent + (1 - ratio) * state.resistance_seen[b]);
  }
  return gain;
}

}  // namespace ohmtrail::solve
