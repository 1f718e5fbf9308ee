#pragma once
#include <vector>

#include "fault.hpp"

namespace ohmtrail::diagnose {

/// Wires at their table value that are too thin: a load's drop limit is broken as found and would still be
/// with every element sound, and a larger gauge of the cable list cures it: of that run alone or, where no
/// single run is enough, of every thinner run on the load's path together.
[[nodiscard]] std::vector<Fault> undersized(const netlist::System& system, const solve::CaseSolution& solved);

}  // namespace ohmtrail::diagnose
