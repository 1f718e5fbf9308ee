#pragma once
#include <vector>

#include "plan/radial.hpp"

/// What strings in parallel can give, as intervals.
namespace ohmtrail::plan {

/// V = (Σ E_s / R_s − I) / Σ 1 / R_s across the points from which the loads are fed, I_s = (E_s − V) / R_s,
/// with R_s of batteries and own arms together. Both rise or fall with each R_s and with I as long as the
/// others stay, so that their extremes stand at the corners of the intervals.
struct BankState {
  Interval volts;                 ///< V, across the points from which the loads are fed
  std::vector<Interval> amperes;  ///< A, per string
  /// The string that may deliver most power, from whose posts drops are counted: over all that may.
  Interval posts;  ///< V
  Interval own;    ///< V lost in its own arms
};

/// `total`: A, of all loads. `own_ohms`: Ω, per string, of its own arms.
[[nodiscard]] BankState bank_state(const std::vector<BankString>& strings, const Interval& total,
                                   const std::vector<Interval>& own_ohms);

}  // namespace ohmtrail::plan
