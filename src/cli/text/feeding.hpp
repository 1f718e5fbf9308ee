#pragma once
#include "cli/text/sheet.hpp"
#include "ohmtrail/solve/case_solution.hpp"

namespace ohmtrail::cli {

/// Which source feeds what, where more than one gives or a battery is charged; else nothing.
void show_feeding(Sheet& sheet, const solve::CaseSolution& solved);

}  // namespace ohmtrail::cli
