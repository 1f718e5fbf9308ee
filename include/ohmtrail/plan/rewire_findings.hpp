#pragma once
#include <vector>

#include "ohmtrail/plan/protection.hpp"
#include "ohmtrail/plan/size.hpp"

namespace ohmtrail::plan {

/// What `check_protection` says of the rewired system and not of the system as it is: the cheapest cable that
/// keeps every limit may still be unlike its neighbours. Nothing where nothing was chosen.
[[nodiscard]] std::vector<diagnose::Finding> raised_by_rewire(const netlist::System& system,
                                                              const SizeResult& sized, RuleSet rules);

}  // namespace ohmtrail::plan
