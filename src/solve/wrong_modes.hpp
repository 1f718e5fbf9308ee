#pragma once
#include <optional>
#include <utility>
#include <vector>

#include "ohmtrail/solve/solver.hpp"
#include "solve/modes.hpp"

namespace ohmtrail::solve {

struct SolverState;

/// What contradicts the modes that a state was solved with.
struct WrongModes {
  std::vector<std::pair<int, Mode>> changes;  ///< branch and the mode it belongs in, by branch
  std::vector<int> unfed;                     ///< loads that no current can reach in these modes
  std::optional<Failure> overloaded;
};

[[nodiscard]] WrongModes find_wrong_modes(const SolverState& state);

}  // namespace ohmtrail::solve
