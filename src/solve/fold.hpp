#pragma once
#include <optional>

#include "solve/solver_state.hpp"

namespace ohmtrail::solve {

/// From a state a little below the fold of `island`, with modes as they stand: moves the operating point onto
/// the fold and returns its share. Empty where the way there does not converge.
[[nodiscard]] std::optional<double> walk_to_fold(SolverState& state, int island);

}  // namespace ohmtrail::solve
