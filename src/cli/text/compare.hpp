#pragma once
#include "cli/text/sheet.hpp"
#include "ohmtrail/diagnose/compare.hpp"
#include "ohmtrail/netlist/system.hpp"
#include "ohmtrail/network/network.hpp"

namespace ohmtrail::cli {

/// What was cured, what is left, what is new, and the volts gained.
void show_comparison(Sheet& sheet, const netlist::System& system, const network::Network& network,
                     const diagnose::Comparison& comparison);

}  // namespace ohmtrail::cli
