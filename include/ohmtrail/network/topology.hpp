#pragma once
#include <vector>

#include "ohmtrail/network/network.hpp"

namespace ohmtrail::network {

/// How the active elements of a network hang together.
struct Topology {
  int islands = 0;
  std::vector<int> island;   ///< per point, from 0 in file order of the island's first point
  std::vector<bool> bridge;  ///< per element: the only way between its two sides, so it carries no current
  int rings = 0;             ///< independent loops
};

/// Inactive elements join nothing and are no bridges.
[[nodiscard]] Topology topology_of(const Network& network);

}  // namespace ohmtrail::network
