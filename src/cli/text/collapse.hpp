#pragma once
#include "cli/text/sheet.hpp"
#include "ohmtrail/solve/case_solution.hpp"

namespace ohmtrail::cli {

/// Says that a case has no solution, and how much of its load could be carried; nothing where it has one.
void show_collapse(Sheet& sheet, const solve::CaseSolution& solved);

}  // namespace ohmtrail::cli
