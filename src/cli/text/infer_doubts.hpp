#pragma once
#include "cli/text/sheet.hpp"
#include "ohmtrail/diagnose/infer.hpp"
#include "ohmtrail/netlist/system.hpp"

namespace ohmtrail::cli {

/// The readings that do not fit, what each would have to be and what may have happened; how many stand alone.
void show_doubts(Sheet& sheet, const netlist::System& system, const diagnose::InferResult& result);

}  // namespace ohmtrail::cli
