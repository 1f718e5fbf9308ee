#pragma once
#include <cstddef>
#include <vector>

#include "diagnose/bank_group_findings.hpp"

/// What batteries must have in common to work together, in a string or side by side.
namespace ohmtrail::diagnose::bank {

/// Into System::batteries.
using Indices = std::vector<std::size_t>;

void judge_chemistry(BatteryGroup& group, const Members& members, const Indices& batteries);
/// Capacities that differ by more than a tenth; `remedy` says what that does here.
void judge_capacity(BatteryGroup& group, const Members& members, const Indices& batteries, Severity severity,
                    const char* remedy);
void judge_age(BatteryGroup& group, const Members& members, const Indices& batteries);

}  // namespace ohmtrail::diagnose::bank
