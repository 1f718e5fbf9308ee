#pragma once
#include <cstddef>
#include <utility>
#include <vector>

#include "ohmtrail/solve/circuit.hpp"

namespace ohmtrail::solve {

/// So many steps of a pass take about as long as a fetch.
inline constexpr std::size_t ahead = 16;

/// Has what is kept of the points of a branch fetched from memory, for one that stands a few behind `branch`.
/// In a circuit larger than the caches these points lie anywhere, and the wait for them was most of the cost
/// of a pass.
template <class... PerPoint>
void expect_points(const std::vector<Branch>& branches, std::size_t branch, const PerPoint&... per_point) {
  if (branch + ahead >= branches.size()) return;
  const Branch& coming = branches[branch + ahead];
  (__builtin_prefetch(&per_point[static_cast<std::size_t>(coming.from)]), ...);
  (__builtin_prefetch(&per_point[static_cast<std::size_t>(coming.to)]), ...);
}

/// The same for edges between vertices; a vertex below 0 is none.
template <class PerVertex>
void expect_ends(const std::vector<std::pair<int, int>>& edges, std::size_t edge,
                 const PerVertex& per_vertex) {
  if (edge + ahead >= edges.size()) return;
  const auto [one, other] = edges[edge + ahead];
  if (one >= 0) __builtin_prefetch(&per_vertex[static_cast<std::size_t>(one)]);
  if (other >= 0) __builtin_prefetch(&per_vertex[static_cast<std::size_t>(other)]);
}

/// The same for a pass over `count` points or clusters, to what is kept of their unknowns.
template <class UnknownOf, class... PerUnknown>
void expect_unknown(std::size_t one, std::size_t count, UnknownOf unknown_of,
                    const PerUnknown&... per_unknown) {
  if (one + ahead >= count) return;
  const int coming = unknown_of(static_cast<int>(one + ahead));
  if (coming >= 0) (__builtin_prefetch(&per_unknown[coming]), ...);
}

}  // namespace ohmtrail::solve
