#pragma once
#include "cli/text/sheet.hpp"
#include "ohmtrail/diagnose/infer.hpp"
#include "ohmtrail/netlist/system.hpp"
#include "ohmtrail/network/network.hpp"

namespace ohmtrail::cli {

/// The verdict first, then the table, then what cannot be told, then the readings in doubt.
void show_inference(Sheet& sheet, const netlist::System& system, const network::Network& network,
                    const diagnose::InferResult& result);

}  // namespace ohmtrail::cli
