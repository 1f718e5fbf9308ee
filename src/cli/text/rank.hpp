#pragma once
#include <vector>

#include "cli/json/rank.hpp"
#include "cli/text/sheet.hpp"
#include "ohmtrail/netlist/system.hpp"
#include "ohmtrail/solve/case_solution.hpp"

namespace ohmtrail::cli {

/// The verdict in a sentence, hot spots, where each sag goes, what was assumed, cautions. `all`: every hot
/// spot, even those that a person need not be told of; otherwise at most ten.
void show_ranking(Sheet& sheet, const netlist::System& system, const std::vector<solve::CaseSolution>& solved,
                  const Ranking& ranking, bool all);

/// What moves each load's voltage between two cases.
void show_swings(Sheet& sheet, const netlist::System& system, const std::vector<diagnose::Swing>& swings);

}  // namespace ohmtrail::cli
