#pragma once
#include "cli/text/sheet.hpp"
#include "ohmtrail/diagnose/infer.hpp"
#include "ohmtrail/netlist/system.hpp"
#include "ohmtrail/network/network.hpp"

namespace ohmtrail::cli {

/// What is more likely faulty than sound, likeliest first: elements and batteries; a cable as a whole where
/// its parts share the odds; a group that the readings know only together.
void show_verdicts(Sheet& sheet, const netlist::System& system, const network::Network& network,
                   const diagnose::InferResult& result);

}  // namespace ohmtrail::cli
