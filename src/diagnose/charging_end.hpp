#pragma once
#include <optional>

#include "ohmtrail/netlist/system.hpp"
#include "ohmtrail/solve/case_solution.hpp"

namespace ohmtrail::diagnose {

/// The end of charging: every battery takes its tail current only, the loads of the case stay. Elements and
/// points are those of `solved`. Empty: no solution.
[[nodiscard]] std::optional<solve::CaseSolution> end_of_charging(const netlist::System& system,
                                                                 const solve::CaseSolution& solved);

}  // namespace ohmtrail::diagnose
