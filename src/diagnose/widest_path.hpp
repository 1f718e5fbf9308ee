#pragma once
#include <optional>
#include <vector>

#include "ohmtrail/solve/case_solution.hpp"

namespace ohmtrail::diagnose {

struct Hop {
  int element = -1;
  bool forward = true;  ///< passed from its `from` to its `to`
};

/// The path between two points whose least current is largest, along the flow; of equals the one with fewest
/// elements, then the first in the file. Where no flow joins the points, one against it. Loads and sources
/// are never passed. Empty: nothing joins them.
[[nodiscard]] std::optional<std::vector<Hop>> widest_path(const solve::CaseSolution& solved, int from,
                                                          int to);

/// The same, through sources where nothing else joins the points (a load on one battery of a string).
[[nodiscard]] std::optional<std::vector<Hop>> widest_path_across_sources(const solve::CaseSolution& solved,
                                                                         int from, int to);

}  // namespace ohmtrail::diagnose
