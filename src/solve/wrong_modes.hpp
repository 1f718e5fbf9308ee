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

/// `idle_at_rest`: a diode without current belongs among the blocked ones.
[[nodiscard]] WrongModes find_wrong_modes(const SolverState& state, bool idle_at_rest = false);

}  // namespace ohmtrail::solve
