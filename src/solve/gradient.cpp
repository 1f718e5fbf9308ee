#include <Eigen/Dense>
#include <utility>

#include "solve/fixed_loop.hpp"
#include "solve/functional.hpp"
#include "units/index.hpp"

// A functional f = a·V + w·i(V, θ) at a state F(V, θ) = 0. One adjoint solve J y = a + Σ w g (e_from − e_to)
// gives every derivative: with h = w − (y_from − y_to) of a branch,
//   df/dθ = h ∂i/∂θ                                  of a branch that passes a current by its law,
//   df/de = the current through it when every point is fed with a + Σ ± h g     of a branch that fixes e
//   volts
// (raising e lifts all points on its `from` side by as much; their feeds add up to its current).
// A fixed branch of resistance r → 0 has e = size + r i, so df/dr = i df/de.
//
// With converters, inputs take P = delivered(V, θ)/efficiency + idle. By the chain rule over the few P:
// df = ∂f + Σ z_k ∂P_k with z = (I − T)⁻ᵀ s, s = ∂f/∂P, T = ∂P/∂P, each ∂ at fixed P by an adjoint of its
// own.

namespace ohmtrail::solve {

namespace {

Functional nothing(const SolverState& state) {
  return {std::vector<double>(state.voltage.size(), 0.0), std::vector<double>(state.current.size(), 0.0)};
}

class Adjoint {
 public:
  Adjoint(const SolverState& state, const Functional& functional)
      : state_(state), functional_(functional), weight_(state.current.size(), 0.0) {
    const Jacobian& jacobian = state.structure->jacobian;
    const Eigen::VectorXd response = jacobian.solve(right_side());
    for (std::size_t b = 0; b < weight_.size(); ++b) {
      if (!flows(b)) continue;
      weight_[b] = functional.by_current[b] - jacobian.between(response, branch(b).from, branch(b).to);
    }
  }

  Gradient gradient() const {
    Gradient result{std::vector<double>(weight_.size(), 0.0), std::vector<double>(weight_.size(), 0.0)};
    for (std::size_t b = 0; b < weight_.size(); ++b) {
      if (!flows(b)) continue;
      const Operating here{state_.current[b], state_.structure->point.conductance()[b]};
      const double volts = state_.structure->point.drop()[b];
      const double share = state_.demand.share[state_.island_of(b)];
      result.by_resistance[b] = weight_[b] * by_resistance(branch(b), here, volts);
      result.by_size[b] = weight_[b] * by_size(branch(b), volts, share);
    }
    if (state_.structure->merged_currents.any()) add_fixed(result);
    return result;
  }

 private:
  bool flows(std::size_t b) const { return state_.structure->point.flows(b); }
  const Branch& branch(std::size_t b) const { return state_.circuit.branches[b]; }

  Eigen::VectorXd right_side() const {
    const Jacobian& jacobian = state_.structure->jacobian;
    Eigen::VectorXd right = Eigen::VectorXd::Zero(jacobian.unknowns());
    for (std::size_t p = 0; p < functional_.by_point.size(); ++p) {
      const int unknown = jacobian.unknown(static_cast<int>(p));
      if (unknown >= 0) right[unknown] += functional_.by_point[p];
    }
    for (std::size_t b = 0; b < weight_.size(); ++b) {
      const double weight = functional_.by_current[b];
      if (weight == 0 || !flows(b)) continue;
      jacobian.add_between(right, branch(b).from, branch(b).to,
                           weight * state_.structure->point.conductance()[b]);
    }
    return right;
  }

  void add_fixed(Gradient& result) const {
    std::vector<double> feed = functional_.by_point;
    for (std::size_t b = 0; b < weight_.size(); ++b) {
      if (!flows(b)) continue;
      const double amount = weight_[b] * state_.structure->point.conductance()[b];
      feed[at(branch(b).from)] += amount;
      feed[at(branch(b).to)] -= amount;
    }
    std::vector<double> by_volts(weight_.size(), 0.0);
    state_.structure->merged_currents.find(feed, by_volts);
    const std::vector<char> bridged = in_loops();
    for (const int b : state_.structure->merged_currents.branches()) {
      if (state_.structure->merged.ties[at(b)]) continue;
      const Law law = branch(at(b)).law;
      if (law != Law::resistor) result.by_size[at(b)] = by_volts[at(b)];
      if (law != Law::regulator && !bridged[at(b)]) {
        result.by_resistance[at(b)] = by_volts[at(b)] * state_.current[at(b)] * warm(at(b));
      }
    }
  }

  /// r(i)/r20, which a resistance that grows from 0 has at once.
  double warm(std::size_t b) const {
    Branch unit = branch(b);
    unit.resistance = 1;
    return unit.law == Law::resistor ? resistance_at(unit, state_.current[b]) : 1;
  }

  /// Fixed branches that others of their kind bridge.
  std::vector<char> in_loops() const {
    std::vector<char> bridged(weight_.size(), 0);
    std::vector<char> tree = state_.structure->merged.fixes;
    for (const int b : state_.structure->merged.looped) tree[at(b)] = 0;
    for (const int b : state_.structure->merged.looped) {
      for (const int member : fixed_loop(state_.circuit, tree, b)) bridged[at(member)] = 1;
    }
    return bridged;
  }

  const SolverState& state_;
  const Functional& functional_;
  std::vector<double> weight_;  ///< h, per branch
};

struct Converter {
  int output, input;
};

std::vector<Converter> working_converters(const SolverState& state) {
  std::vector<Converter> found;
  for (std::size_t b = 0; b < state.circuit.branches.size(); ++b) {
    const Branch& branch = state.circuit.branches[b];
    if (branch.law != Law::regulator || branch.input < 0 || state.modes[b] == Mode::idle) continue;
    if (state.structure->point.flows(at(branch.input))) found.push_back({static_cast<int>(b), branch.input});
  }
  return found;
}

/// Gradient of the power that a converter's input takes, all inputs' power fixed.
Gradient gradient_of_demand(const SolverState& state, const Converter& converter) {
  const Branch& output = state.circuit.branches[at(converter.output)];
  const bool holds = state.modes[at(converter.output)] == Mode::active;
  Functional delivered =
      holds ? current_of(state, converter.output) : voltage_between(state, output.from, output.to);
  const double scale = (holds ? -output.size : output.limit) / output.efficiency;
  for (double& value : delivered.by_point) value *= scale;
  for (double& value : delivered.by_current) value *= scale;
  Gradient result = Adjoint(state, delivered).gradient();
  if (holds) result.by_size[at(converter.output)] -= state.current[at(converter.output)] / output.efficiency;
  return result;
}

void add_scaled(Gradient& to, const Gradient& from, double factor) {
  for (std::size_t b = 0; b < to.by_size.size(); ++b) {
    to.by_resistance[b] += factor * from.by_resistance[b];
    to.by_size[b] += factor * from.by_size[b];
  }
}

}  // namespace

Functional voltage_between(const SolverState& state, int red, int black) {
  Functional functional = nothing(state);
  functional.by_point[at(red)] += 1;
  functional.by_point[at(black)] -= 1;
  return functional;
}

Functional current_of(const SolverState& state, int branch) {
  Functional functional = nothing(state);
  const Structure& structure = *state.structure;
  if (structure.point.flows(at(branch))) {
    functional.by_current[at(branch)] = 1;
  } else if (structure.merged.fixes[at(branch)] && !structure.merged.ties[at(branch)] &&
             structure.point.island(at(branch)) >= 0) {
    const std::vector<double> weights = structure.merged_currents.weights(branch);
    for (std::size_t b = 0; b < functional.by_current.size(); ++b) {
      if (!structure.point.flows(b)) continue;
      const Branch& other = state.circuit.branches[b];
      functional.by_current[b] = weights[at(other.to)] - weights[at(other.from)];
    }
  }
  return functional;
}

Gradient gradient(SolverState& state, const Functional& functional) {
  state.factor_here();
  Gradient total = Adjoint(state, functional).gradient();
  const std::vector<Converter> converters = working_converters(state);
  if (converters.empty()) return total;
  const auto count = static_cast<Eigen::Index>(converters.size());
  std::vector<Gradient> demands;
  Eigen::MatrixXd follow(count, count);
  Eigen::VectorXd direct(count);
  for (Eigen::Index k = 0; k < count; ++k) {
    demands.push_back(gradient_of_demand(state, converters[static_cast<std::size_t>(k)]));
    direct[k] = total.by_size[at(converters[static_cast<std::size_t>(k)].input)];
    for (Eigen::Index j = 0; j < count; ++j) {
      follow(k, j) = demands.back().by_size[at(converters[static_cast<std::size_t>(j)].input)];
    }
  }
  const Eigen::MatrixXd system = Eigen::MatrixXd::Identity(count, count) - follow.transpose();
  const Eigen::VectorXd factor = system.partialPivLu().solve(direct);
  for (Eigen::Index k = 0; k < count; ++k) add_scaled(total, demands[static_cast<std::size_t>(k)], factor[k]);
  for (const Converter& converter : converters) total.by_size[at(converter.input)] = 0;
  return total;
}

}  // namespace ohmtrail::solve
