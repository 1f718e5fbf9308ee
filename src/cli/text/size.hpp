#pragma once
#include "cli/text/sheet.hpp"
#include "ohmtrail/netlist/system.hpp"
#include "ohmtrail/plan/size.hpp"

namespace ohmtrail::cli {

/// The verdict, what changes and why, what every load gets before and after, the fuses.
void show_sizing(Sheet& sheet, const netlist::System& system, const plan::SizeResult& sized);

}  // namespace ohmtrail::cli
