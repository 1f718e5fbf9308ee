#pragma once
#include <vector>

#include "ohmtrail/solve/case_solution.hpp"
#include "plan/box_bounds.hpp"

/// What every design that keeps its limits must satisfy in one case, whatever cable it chooses.
namespace ohmtrail::plan {

struct CurrentRanges {
  std::vector<Interval> load_volts;  ///< V, per element; loads that run alone
  std::vector<Interval> amperes;     ///< A, per element, along from → to
  std::vector<bool> known;           ///< per element: the range follows from the loads beyond it
  std::vector<Interval> terminal;    ///< V, per supply of the probe: what its posts can show
  double most_volts = 0;             ///< V, between any two points
  double most_amperes = 0;           ///< A, through any element
};

/// A load that keeps its limit has at least the lowest open-circuit voltage of its island, less what the
/// whole load current loses in a battery, less its limit; and at most the highest. An element whose removal
/// parts the network carries what loads and chargers draw on one side. `probe`: the case solved with any
/// design, for its supplies and islands alone.
[[nodiscard]] CurrentRanges current_ranges(const network::Network& network, const solve::CaseSolution& probe);

}  // namespace ohmtrail::plan
