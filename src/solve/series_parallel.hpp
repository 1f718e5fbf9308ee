#pragma once
#include <optional>
#include <vector>

/// Networks that series and parallel steps reduce to nothing: every radial system, loads and returns
/// included.
namespace ohmtrail::solve {

/// A linear two-terminal element. Vertices are numbered from 0; −1 is the ground.
struct LinearEdge {
  int from = -1, to = -1;
  double conductance = 0;  ///< S; 0 for a load that takes a constant current
  int load = -1;           ///< its number among the loads; −1: no load
};

/// Volts across one load.
struct Response {
  double volts = 0;
  int load = -1;  ///< −1: there is none
};

struct Extremes {
  Response most, least;
};

/// Of both; where volts are equal but for rounding the load with the lower number stands.
[[nodiscard]] Extremes merged(const Extremes& a, const Extremes& b);

/// What the network shows at the ends of one edge.
struct EdgeView {
  double resistance = 0;  ///< Ω between them, the edge included
  Extremes loads;  ///< largest and smallest response of other loads to 1 A driven in at `from` and out at
                   ///< `to`; of equals the one with the lower number
};

/// Per edge; empty where a ring remains that no such step undoes. In one pass up and one down, without a
/// single back-substitution. Every vertex must have a conductance to the ground somewhere along its edges.
[[nodiscard]] std::optional<std::vector<EdgeView>> view_edges(int vertices,
                                                              const std::vector<LinearEdge>& edges);

}  // namespace ohmtrail::solve
