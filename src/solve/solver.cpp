#include "ohmtrail/solve/solver.hpp"

#include <algorithm>

#include "solve/functional.hpp"
#include "solve/solver_state.hpp"
#include "units/index.hpp"

namespace ohmtrail::solve {

SolverState::SolverState(Circuit circuit_to_solve)
    : circuit(std::move(circuit_to_solve)),
      fed(fed_parts(circuit)),
      unfed(find_unfed(circuit, fed)),
      islands(find_islands(circuit, fed, unfed)),
      voltage(at(circuit.points)),
      current(circuit.branches.size(), 0.0) {
  demand.share.assign(at(islands.count), 1.0);
  demand.power.reserve(circuit.branches.size());
  for (const Branch& branch : circuit.branches) {
    const std::size_t b = demand.power.size();
    demand.power.push_back(branch.size);
    if (branch.law == Law::regulator || branch.law == Law::diode) switching.push_back(b);
    if (branch.stops_below > 0) stoppable.push_back(b);
  }
}

bool SolverState::is_running_load(std::size_t branch) const {
  return modes[branch] != Mode::idle && structure->point.flows(branch);
}

void SolverState::stop(std::size_t branch) {
  stopped[branch] = 1;
  modes[branch] = Mode::idle;
  for (const std::size_t b : switching) {
    if (circuit.branches[b].law == Law::regulator && circuit.branches[b].input == static_cast<int>(branch))
      stop(b);
  }
}

bool SolverState::stop_weakest() {
  int weakest = -1;
  double lowest = 1 - 1e-12;
  for (const std::size_t b : stoppable) {
    if (!is_running_load(b)) continue;
    const double level = structure->point.drop()[b] / circuit.branches[b].stops_below;
    if (level < lowest) {
      lowest = level;
      weakest = static_cast<int>(b);
    }
  }
  if (weakest >= 0) stop(at(weakest));
  return weakest >= 0;
}

// Loads that fall below `stops_below` go out one at a time, the one furthest below first, and stay out for
// this solve, although the voltage that comes back may be enough for them: hunting is for others to tell.
tl::expected<Solution, Failure> SolverState::solve() {
  resistance_seen.clear();
  // Outputs of converters that went out with their inputs try again.
  const bool afresh = !solved || std::count(stopped.begin(), stopped.end(), 1) > 0;
  stopped.assign(circuit.branches.size(), 0);
  start_modes(afresh);
  for (std::size_t b = 0; b < unfed.size(); ++b) {
    if (unfed[b]) stop(b);
  }
  for (;;) {
    std::fill(demand.share.begin(), demand.share.end(), 1.0);
    collapse.reset();
    auto failed = settle();
    if (!failed && !afresh) {
      start_modes(true);
      failed = settle();
    }
    if (!failed) return tl::unexpected(failed.error());
    if (std::count(failed->begin(), failed->end(), 1) > 0) {
      if (auto failure = find_folds(*failed)) return tl::unexpected(*failure);
    }
    if (!stop_weakest()) break;
  }
  Solution solution = make_solution(*this);
  if (!is_certified(solution)) return tl::unexpected(Failure{Failure::Kind::not_certified, {}, 0});
  return solution;
}

void SolverState::factor_here() {
  Jacobian& jacobian = structure->jacobian;
  const std::vector<double>& conductance = structure->point.conductance();
  if (!jacobian.factored() || jacobian.drift(conductance) > 0) jacobian.factor(conductance);
}

Solver::Solver(Circuit circuit) : state_(std::make_unique<SolverState>(std::move(circuit))) {}
Solver::~Solver() = default;
Solver::Solver(Solver&&) noexcept = default;
Solver& Solver::operator=(Solver&&) noexcept = default;

const Circuit& Solver::circuit() const {
  return state_->circuit;
}

void Solver::set_resistance(int branch, double ohms) {
  Branch& changed = state_->circuit.branches[at(branch)];
  state_->merge_changed = state_->merge_changed || (changed.resistance <= 0) != (ohms <= 0);
  changed.resistance = ohms;
}

void Solver::set_size(int branch, double size) {
  Branch& changed = state_->circuit.branches[at(branch)];
  const bool fixes = changed.law == Law::regulator ||
                     (changed.law != Law::power && changed.law != Law::current && changed.resistance <= 0);
  state_->merge_changed = state_->merge_changed || (fixes && changed.size != size);
  changed.size = size;
  state_->demand.power[at(branch)] = size;
}

tl::expected<Solution, Failure> Solver::solve() {
  return state_->solve();
}

const Effort& Solver::effort() const {
  return state_->effort;
}

std::vector<double> Solver::respond(const std::vector<double>& injection) const {
  state_->factor_here();
  const Jacobian& jacobian = state_->structure->jacobian;
  Eigen::VectorXd into = Eigen::VectorXd::Zero(jacobian.unknowns());
  for (std::size_t p = 0; p < injection.size(); ++p) {
    if (const int unknown = jacobian.unknown(static_cast<int>(p)); unknown >= 0)
      into[unknown] += injection[p];
  }
  const Eigen::VectorXd response = jacobian.solve(into);
  std::vector<double> volts(injection.size(), 0.0);
  for (std::size_t p = 0; p < volts.size(); ++p) {
    if (const int unknown = jacobian.unknown(static_cast<int>(p)); unknown >= 0) volts[p] = response[unknown];
  }
  return volts;
}

Gradient Solver::gradient_of_voltage(int red, int black) const {
  return gradient(*state_, voltage_between(*state_, red, black));
}

Gradient Solver::gradient_of_current(int branch) const {
  return gradient(*state_, current_of(*state_, branch));
}

}  // namespace ohmtrail::solve
