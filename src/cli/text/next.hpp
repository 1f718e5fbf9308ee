#pragma once
#include "cli/text/sheet.hpp"
#include "ohmtrail/diagnose/next.hpp"

namespace ohmtrail::cli {

void show_next(Sheet& sheet, const netlist::System& system, const diagnose::NextResult& result);

}  // namespace ohmtrail::cli
