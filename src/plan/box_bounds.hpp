#pragma once
#include <vector>

#include "plan/bank_state.hpp"
#include "plan/radial.hpp"

/// What can be said of every design in a box, without solving each.
///
/// Unknowns are the voltage of each load and the terminal voltage of the supply, as intervals:
///   current of a load    constant current: its size; constant power: size / V; resistance: V / size
///   current of an arm    Σ over the loads it feeds (no rings: Kirchhoff's current law alone), or its
///   string's drop of a load       Σ over its path of r(candidate, I) · I terminal voltage     E − R_battery
///   · ΣI; of several strings see `bank_state` voltage of a load    terminal − drop
/// A design that keeps its limits has V ≥ terminal − limit; that may be assumed, and the box is refused when
/// the assumption contradicts itself. On a single design the intervals close on the solution.
namespace ohmtrail::plan {

/// Candidates allowed for each run in scope.
using Box = std::vector<std::vector<bool>>;

/// Curves below and above those of an arm's candidates in the box.
struct Hull {
  Curve low, high;
};

struct Bounds {
  bool possible = true;  ///< false: no design in the box keeps every limit
  bool certain = true;   ///< every design in the box keeps every limit
  int broken_load = -1;  ///< the load that proves that none is possible
  int broken_run = -1;   ///< or the run whose ampacity or fuse proves it
  bool by_fuse = false;
  std::vector<Interval> load_volts;    ///< V, per load
  std::vector<Interval> load_amperes;  ///< A, per load
  std::vector<Interval> arm_volts;     ///< V of drop, per arm
  std::vector<Interval> arm_amperes;   ///< A, per arm, whichever way
  std::vector<Hull> arm_curves;        ///< per arm
  Interval terminal;                   ///< V, of the posts from which drops are counted
  Interval lead_volts;                 ///< V lost between these posts and the tree of loads
};

[[nodiscard]] Bounds bounds(const RadialCase& in_case, const DesignSpace& space, const Box& box);

[[nodiscard]] Box full_box(const DesignSpace& space);
[[nodiscard]] Box point_box(const DesignSpace& space, const Design& design);

}  // namespace ohmtrail::plan
