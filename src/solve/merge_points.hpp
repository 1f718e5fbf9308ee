#pragma once
#include <tl/expected.hpp>
#include <vector>

#include "ohmtrail/solve/solver.hpp"
#include "solve/islands.hpp"
#include "solve/modes.hpp"
#include "solve/partition.hpp"
#include "solve/precise.hpp"

/// Unknown reduction: branches that fix a voltage join their points into one cluster. A point's voltage is
/// its cluster's base plus a known offset.
namespace ohmtrail::solve {

struct Merged {
  std::vector<int> cluster;     ///< per point; −1 in an island without a source
  std::vector<Precise> offset;  ///< per point, V(point) − base of its cluster; empty where all are 0
  std::vector<char> fixes;      ///< per branch: fixes its voltage (or ties, below) and has no law of its own
  /// Idle branches (or loads that nothing can feed) that hold a part of the circuit which hangs on them
  /// alone: they keep it at 0 V drop, as the leakage of the real thing would. Their current must come out as
  /// 0.
  std::vector<char> ties;
  std::vector<int> looped;  ///< branches that closed a loop of merged points: currents there are shared out
  std::vector<int> base_point;  ///< per cluster, the point whose offset is 0
  std::vector<char> grounded;   ///< per cluster: holds its island's reference, so its base is known
  std::vector<int> island;      ///< per cluster
  Partition conducting{0};      ///< points that branches join which conduct at present, ties left out
};

/// Modes of regulators and diodes that fixed voltages already decide are changed in `modes`.
/// `fed`: see `fed_parts`.
[[nodiscard]] tl::expected<Merged, Failure> merge_points(const Circuit& circuit, const Islands& islands,
                                                         const Partition& fed, Modes& modes);

}  // namespace ohmtrail::solve
