#include "diagnose/infer/forward.hpp"

#include <cmath>
#include <utility>

#include "diagnose/infer/temperature_sight.hpp"

namespace ohmtrail::diagnose::inference {
namespace {

Eigen::Index at(int index) {
  return static_cast<Eigen::Index>(index);
}

std::size_t slot(int index) {
  return static_cast<std::size_t>(index);
}

}  // namespace

Forward::Forward(const Model& model) : model_(model), solutions_(model.cases.size()) {
  for (const CaseCircuit& one : model.cases) {
    solvers_.emplace_back(one.circuit);
  }
}

const solve::Solver* Forward::solved_case(std::size_t in_case, const Eigen::VectorXd& value) {
  solve::Solver& solver = solvers_[in_case];
  for (const Placement& placement : model_.cases[in_case].placements) {
    const double v = value[at(placement.parameter)];
    placement.on_size ? solver.set_size(placement.branch, v) : solver.set_resistance(placement.branch, v);
  }
  auto solved = solver.solve();
  if (!solved || solved->collapse) {
    return nullptr;
  }
  solutions_[in_case] = std::move(*solved);
  return &solver;
}

bool Forward::solve_all(const Eigen::VectorXd& value) {
  for (std::size_t k = 0; k < solvers_.size(); ++k) {
    if (solved_case(k, value) == nullptr) {
      return false;
    }
  }
  return true;
}

double Forward::raw(const Observation& observation, const Eigen::VectorXd& value) const {
  if (observation.sight == Sight::resistance) {
    const double also = observation.also >= 0 ? value[at(observation.also)] : 0;
    return observation.factor * (value[at(observation.parameter)] + also);
  }
  const solve::Solution& solution = solutions_[slot(observation.in_case)];
  if (observation.sight == Sight::voltage) {
    return solution.voltage[slot(observation.red)] - solution.voltage[slot(observation.black)];
  }
  const double current = solution.current[slot(observation.branch)];
  if (observation.sight == Sight::current) {
    return current;
  }
  const solve::Circuit& circuit = model_.cases[slot(observation.in_case)].circuit;
  const double celsius = observation.sight == Sight::joint_temperature
                             ? joint_temperature(model_.joints[slot(observation.joint)], circuit, solution)
                             : wire_temperature(circuit.branches[slot(observation.branch)].heating, current);
  return celsius - observation.above;
}

Eigen::VectorXd Forward::by_parameter(std::size_t in_case, const solve::Gradient& gradient) const {
  Eigen::VectorXd out = Eigen::VectorXd::Zero(at(static_cast<int>(model_.parameters.size())));
  for (const Placement& placement : model_.cases[in_case].placements) {
    const auto& by = placement.on_size ? gradient.by_size : gradient.by_resistance;
    out[at(placement.parameter)] += by[slot(placement.branch)];
  }
  return out;
}

Eigen::VectorXd Forward::raw_gradient(const Observation& observation) const {
  if (observation.sight == Sight::resistance) {
    Eigen::VectorXd out = Eigen::VectorXd::Zero(at(static_cast<int>(model_.parameters.size())));
    out[at(observation.parameter)] = observation.factor;
    if (observation.also >= 0) {
      out[at(observation.also)] = observation.factor;
    }
    return out;
  }
  const std::size_t in_case = slot(observation.in_case);
  const solve::Solver& solver = solvers_[in_case];
  if (observation.sight == Sight::voltage) {
    return by_parameter(in_case, solver.gradient_of_voltage(observation.red, observation.black));
  }
  if (observation.sight == Sight::joint_temperature) {
    return by_parameter(
        in_case, joint_temperature_gradient(model_.joints[slot(observation.joint)],
                                            model_.cases[in_case].circuit, solutions_[in_case], solver));
  }
  Eigen::VectorXd out = by_parameter(in_case, solver.gradient_of_current(observation.branch));
  if (observation.sight == Sight::wire_temperature) {
    const auto& branch = model_.cases[in_case].circuit.branches[slot(observation.branch)];
    out *= wire_temperature_by_current(branch.heating, solutions_[in_case].current[slot(observation.branch)]);
  }
  return out;
}

double Forward::with_meter(const Observation& observation, double raw, const Eigen::VectorXd& value) const {
  const double gain = observation.gain >= 0 ? value[at(observation.gain)] : 0;
  const double zero = observation.zero >= 0 ? value[at(observation.zero)] : 0;
  return (1 + gain) * raw + zero;
}

std::optional<Eigen::VectorXd> Forward::predict(const Eigen::VectorXd& value) {
  if (!solve_all(value)) {
    return std::nullopt;
  }
  Eigen::VectorXd out(at(static_cast<int>(model_.observations.size())));
  for (Eigen::Index i = 0; i < out.size(); ++i) {
    const Observation& observation = model_.observations[static_cast<std::size_t>(i)];
    out[i] = with_meter(observation, raw(observation, value), value);
    for (const int drift : observation.drifts) {
      out[i] += drift_slope_.size() > 0 ? drift_slope_(i, at(drift)) * value[at(drift)] : 0;
    }
  }
  return out.allFinite() ? std::optional(out) : std::nullopt;
}

// The meter's own columns, the gain on all others, and the drift columns, which copy those of their battery.
void Forward::fill_row(Eigen::Index row, double raw, const Eigen::VectorXd& value,
                       Eigen::MatrixXd& by_value) const {
  const Observation& observation = model_.observations[static_cast<std::size_t>(row)];
  if (observation.gain >= 0) {
    by_value.row(row) *= 1 + value[at(observation.gain)];
    by_value(row, at(observation.gain)) = raw;
  }
  if (observation.zero >= 0) {
    by_value(row, at(observation.zero)) = 1;
  }
  for (const int drift : observation.drifts) {
    by_value(row, at(drift)) = by_value(row, at(model_.parameters[slot(drift)].of));
  }
}

std::optional<Linearisation> Forward::linearise(const Eigen::VectorXd& value) {
  if (!solve_all(value)) {
    return std::nullopt;
  }
  const auto m = at(static_cast<int>(model_.observations.size()));
  Linearisation out{value, Eigen::VectorXd(m), Eigen::MatrixXd(m, value.size())};
  for (Eigen::Index i = 0; i < m; ++i) {
    const Observation& observation = model_.observations[static_cast<std::size_t>(i)];
    const double sight = raw(observation, value);
    if (!std::isfinite(sight)) {
      return std::nullopt;
    }
    out.by_value.row(i) = raw_gradient(observation).transpose();
    fill_row(i, sight, value, out.by_value);
    out.predicted[i] = with_meter(observation, sight, value);
    for (const int drift : observation.drifts) {
      out.predicted[i] += out.by_value(i, at(drift)) * value[at(drift)];
    }
  }
  drift_slope_ = out.by_value;
  return out.by_value.allFinite() ? std::optional(std::move(out)) : std::nullopt;
}

}  // namespace ohmtrail::diagnose::inference
