#pragma once
#include "cli/text/sheet.hpp"
#include "ohmtrail/diagnose/bank.hpp"

namespace ohmtrail::cli {

/// The batteries side by side, then what each check says, then how they suit each other.
void show_bank(Sheet& sheet, const netlist::System& system, const diagnose::Bank& bank);

}  // namespace ohmtrail::cli
