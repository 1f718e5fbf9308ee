#pragma once
#include "ohmtrail/netlist/system.hpp"

namespace ohmtrail::diagnose::inference {

/// By how much what eye and hand found multiplies the odds that a thing is faulty (common practice: our own
/// weights, in the order in which a technician would take them seriously). The strongest finding counts in
/// full, each further one by its square root, since they are not independent.
[[nodiscard]] double seen_odds(const netlist::Seen& seen);

}  // namespace ohmtrail::diagnose::inference
