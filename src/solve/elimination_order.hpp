#pragma once
#include <utility>
#include <vector>

namespace ohmtrail::solve {

/// The order in which the unknowns of a symmetric matrix are eliminated with little fill: per vertex, its
/// place in that order. `edges` are the places of its entries off the diagonal, in any order; −1 at either
/// end is no vertex. What hangs on the rest as a tree goes first, from its leaves inward, which makes no fill
/// at all; what is left is ordered by approximate minimum degree (Amestoy, Davis, Duff 1996).
[[nodiscard]] std::vector<int> elimination_order(int vertices, const std::vector<std::pair<int, int>>& edges);

}  // namespace ohmtrail::solve
