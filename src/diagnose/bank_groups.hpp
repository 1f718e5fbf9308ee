#pragma once
#include <vector>

#include "ohmtrail/diagnose/bank.hpp"

namespace ohmtrail::diagnose::bank {

/// One position of a series string: a battery, or several side by side. Indices into System::batteries.
using Step = std::vector<std::size_t>;

/// Steps from the minus end to the plus end.
struct String {
  std::vector<Step> steps;
  std::size_t plus = 0, minus = 0;  ///< joined points
};

/// How the batteries hang together through cables, joints, fuses and closed switches; isolators part them.
/// Every battery is in one string; strings in file order of their first battery.
[[nodiscard]] std::vector<String> strings_of(const netlist::System& system);

/// What is to be said of batteries that work together.
[[nodiscard]] std::vector<BatteryGroup> judge_groups(const netlist::System& system,
                                                     const std::vector<BatteryVerdict>& batteries);

}  // namespace ohmtrail::diagnose::bank
