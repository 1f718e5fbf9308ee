#pragma once
#include <cstddef>
#include <vector>

#include "diagnose/bank_currents.hpp"
#include "ohmtrail/diagnose/bank.hpp"

namespace ohmtrail::diagnose::bank {

struct Members {
  const netlist::System& system;
  const std::vector<BatteryVerdict>& verdicts;  ///< one a battery, file order
  BankCurrents currents;                        ///< found only where batteries stand side by side
};

/// What batteries in one string must share, and which of them gives out first. Sets `weakest`.
void judge_series(BatteryGroup& group, const Members& members, const std::vector<std::size_t>& batteries);

/// What strings side by side must share, what flows between them at rest, and how they share a load.
void judge_parallel(BatteryGroup& group, const Members& members,
                    const std::vector<std::vector<std::size_t>>& strings);

}  // namespace ohmtrail::diagnose::bank
