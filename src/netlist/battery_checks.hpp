#pragma once
#include "netlist/sections.hpp"

namespace ohmtrail::netlist {

/// Doubts about a battery whose values do not fit each other: EMF and resistance against its nominal voltage,
/// the number of its cells, its tests against each other.
void check_battery(Reader& reader, Value value, const Battery& battery);

}  // namespace ohmtrail::netlist
