#pragma once
#include "diagnose/infer/build.hpp"

namespace ohmtrail::diagnose::inference {

/// Adds the system's readings, the resistances given with elements and tested batteries to the survey, and
/// with them the unknowns of the meters: one gain a meter and quantity, one zero a clamp, the drift of each
/// battery.
void add_observations(const netlist::System& system, Survey& survey);

}  // namespace ohmtrail::diagnose::inference
