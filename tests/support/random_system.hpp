#pragma once
#include "ohmtrail/netlist/system.hpp"

namespace ohmtrail::test {

struct DrawnSystem {
  int elements = 30;   ///< about so many sections' entries, runs counted once
  bool rings = false;  ///< cross ties between distribution bars
  bool odd = false;    ///< converters, second supplies, bypassed and dead-end things
  bool long_names = false;
};

/// A system of some kind of vessel: one or two banks in series and parallel, switches, fuses, distribution
/// bars in levels, loads with their returns. The same seed gives the same system.
[[nodiscard]] netlist::System random_system(unsigned seed, const DrawnSystem& wanted);

}  // namespace ohmtrail::test
