#pragma once
#include <vector>

#include "ohmtrail/solve/circuit.hpp"

namespace ohmtrail::solve {

/// Has what is kept of the points of a branch fetched from memory, for one that stands a few behind `branch`.
/// In a circuit larger than the caches these points lie anywhere, and the wait for them was most of the cost
/// of a pass.
template <class PerPoint>
void expect_points(const std::vector<Branch>& branches, std::size_t branch, const PerPoint& per_point) {
  constexpr std::size_t ahead = 16;
  if (branch + ahead >= branches.size()) return;
  const Branch& coming = branches[branch + ahead];
  __builtin_prefetch(&per_point[static_cast<std::size_t>(coming.from)]);
  __builtin_prefetch(&per_point[static_cast<std::size_t>(coming.to)]);
}

}  // namespace ohmtrail::solve
