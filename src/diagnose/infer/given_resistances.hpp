#pragma once
#include "diagnose/infer/build.hpp"

namespace ohmtrail::diagnose::inference {

/// Resistances that the file gives outright, as observations: `resistance` of elements, and what tests found
/// of batteries.
void add_given_resistances(const netlist::System& system, Survey& survey);

}  // namespace ohmtrail::diagnose::inference
