#pragma once
#include <vector>

#include "ohmtrail/solve/solver.hpp"
#include "solve/solver_state.hpp"

/// Scalars that are linear in voltages and branch currents, and their derivatives by every value of the
/// circuit.
namespace ohmtrail::solve {

/// Σ by_point · V + Σ by_current · i over the branches that pass a current by their law.
struct Functional {
  std::vector<double> by_point, by_current;
};

[[nodiscard]] Functional voltage_between(const SolverState& state, int red, int black);
[[nodiscard]] Functional current_of(const SolverState& state, int branch);

/// Its total derivative: converters' inputs follow their outputs.
[[nodiscard]] Gradient gradient(SolverState& state, const Functional& functional);

}  // namespace ohmtrail::solve
