#pragma once
#include <vector>

#include "cli/text/sheet.hpp"
#include "ohmtrail/netlist/system.hpp"
#include "ohmtrail/solve/case_solution.hpp"

namespace ohmtrail::cli {

/// Case by case: the loads, the elements that lose most, and the proof.
void show_solved(Sheet& sheet, const netlist::System& system, const std::vector<solve::CaseSolution>& solved);

}  // namespace ohmtrail::cli
