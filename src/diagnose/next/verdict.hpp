#pragma once
#include "ohmtrail/diagnose/next.hpp"

namespace ohmtrail::diagnose::next {

/// A reading that tells less is not offered once anything else can be said.
inline constexpr double worth_taking = 0.02;  // bits

/// What came of weighing the readings that are left.
struct Weighed {
  bool opening_done = true;  ///< nothing of it is missing
  bool confirming = false;   ///< one is offered that confirms what is sure
  double best_bits = 0;      ///< what the best of them would tell
};

/// Sets the verdict of `out` and why, by its repairs, options and fit. Where no option is worth taking, none
/// is left.
void judge(const Weighed& weighed, NextResult& out);

}  // namespace ohmtrail::diagnose::next
