#pragma once
#include <vector>

#include "cli/text/sheet.hpp"
#include "ohmtrail/solve/case_solution.hpp"

namespace ohmtrail::cli {

/// What was assumed, in a few lines: what rests on the built-in tables is only counted.
void show_assumptions(Sheet& sheet, const std::vector<network::Assumption>& all);
void show_assumptions(Sheet& sheet, const std::vector<solve::CaseSolution>& solved);

/// That the file has readings which this command does not use, and which one does.
void show_unused_readings(Sheet& sheet, const netlist::System& system);

/// What can burn, gas or shock, and who decides.
void show_cautions(Sheet& sheet);

}  // namespace ohmtrail::cli
