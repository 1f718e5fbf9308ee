#pragma once
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "ohmtrail/diagnose/hot_spot.hpp"
#include "ohmtrail/netlist/system.hpp"
#include "ohmtrail/solve/case_solution.hpp"

/// From solved cases to hot spots, worst first.
namespace ohmtrail::diagnose {

enum class RankBy {
  volts,       ///< recoverable volts, then heat
  heat,        ///< heat, then recoverable volts
  temperature  ///< temperature where one is known, then heat
};

struct RankOptions {
  RankBy by = RankBy::volts;
  std::optional<std::size_t> top;  ///< at most so many rows; cut after ordering
  std::string only_case;           ///< empty: every case
  /// Probability that an element is faulty, by id; empty: readings were not inferred, likelihoods are null.
  std::map<std::string, double> fault_probability;
  std::map<std::string, Unparted> unparted;  ///< by element id, as the same readings leave it
  int jobs = 1;                              ///< cases worked on at a time; the result is the same
};

/// Hot spots over all cases of `system` in `solved` (which were built from that system), each element at most
/// once, for the case in which it recovers most. Every element above its sound resistance is among them
/// before `top` cuts. Ties keep file order. Recoverable volts are found by solving again; in a case where
/// faults times elements exceed 2 000 000 that holds for the 100 that are first by a first-order estimate,
/// and the estimate stands for the others.
[[nodiscard]] std::vector<HotSpot> rank(const netlist::System& system,
                                        const std::vector<solve::CaseSolution>& solved,
                                        const RankOptions& options = {});

}  // namespace ohmtrail::diagnose
