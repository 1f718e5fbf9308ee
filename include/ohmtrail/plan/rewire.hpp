#pragma once
#include "ohmtrail/netlist/write.hpp"
#include "ohmtrail/plan/size.hpp"

namespace ohmtrail::plan {

/// Puts what was chosen into the file it was chosen for: cable, its insulation and metal where the list names
/// them, ratings of fuses and breakers. What was found on renewed cable and its ends goes, and so do the
/// readings, which speak of the old one; order and notes stay. `original` is what the document holds.
void write_rewired(const netlist::System& original, const SizeResult& sized, netlist::Document& document);

}  // namespace ohmtrail::plan
