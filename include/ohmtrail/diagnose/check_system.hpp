#pragma once
#include <vector>

#include "ohmtrail/diagnose/finding.hpp"
#include "ohmtrail/netlist/system.hpp"
#include "ohmtrail/solve/case_solution.hpp"

namespace ohmtrail::diagnose {

/// Findings of `check` that need no more than the system and its solved cases: islands without a source,
/// stubs, loads outside their limits or dropped out, collapse, wires above ampacity or too hot, hot
/// connections. Worst first; within a severity by rule, then file order. One finding a subject and rule: the
/// worst case's.
[[nodiscard]] std::vector<Finding> check_system(const netlist::System& system,
                                                const std::vector<solve::CaseSolution>& solved);

}  // namespace ohmtrail::diagnose
