#pragma once
#include <utility>
#include <vector>

namespace ohmtrail::solve {

struct Elimination {
  std::vector<int> place;  ///< per vertex, in the order of elimination
  int leaves = 0;          ///< the first so many have one later neighbour at most, and one edge to it
};

/// The order in which the unknowns of a symmetric matrix are eliminated with little fill. `edges` are the
/// places of its entries off the diagonal, in any order; −1 at either end is no vertex. What hangs on the
/// rest as a tree goes first, from its leaves inward, which makes no fill at all; what is left is ordered by
/// approximate minimum degree (Amestoy, Davis, Duff 1996).
[[nodiscard]] Elimination elimination_order(int vertices, const std::vector<std::pair<int, int>>& edges);

}  // namespace ohmtrail::solve
