#pragma once
#include <vector>

#include "cli/text/sheet.hpp"
#include "ohmtrail/diagnose/finding.hpp"
#include "ohmtrail/netlist/system.hpp"
#include "ohmtrail/plan/protection.hpp"

namespace ohmtrail::cli {

/// What the file holds, then the findings by urgency.
void show_check(Sheet& sheet, const netlist::System& system, plan::RuleSet rules,
                const std::vector<diagnose::Finding>& findings);

/// By urgency, each with its remedy and the rule it rests on.
void show_findings(Sheet& sheet, const std::vector<diagnose::Finding>& findings);

}  // namespace ohmtrail::cli
