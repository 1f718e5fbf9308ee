#pragma once
#include <vector>

#include "cli/text/sheet.hpp"
#include "ohmtrail/diagnose/finding.hpp"
#include "ohmtrail/netlist/system.hpp"
#include "ohmtrail/plan/size.hpp"

namespace ohmtrail::cli {

/// The verdict, what changes and why, what every load gets before and after, the fuses, what
/// `raised_by_rewire` found.
void show_sizing(Sheet& sheet, const netlist::System& system, const plan::SizeResult& sized,
                 const std::vector<diagnose::Finding>& raised);

}  // namespace ohmtrail::cli
