#pragma once
#include <string>
#include <vector>

#include "ohmtrail/diagnose/staircase.hpp"
#include "ohmtrail/netlist/system.hpp"

namespace ohmtrail::render {

/// One step of the staircase as it is drawn.
struct Stair {
  std::string name, element;
  network::Role role = network::Role::wire;
  double lost = 0, rated = 0;  ///< V; `rated`: with every part sound
};

/// From the supply to the load and back, the load itself among them. Sound ends of a run join its wire in one
/// stair; what is worse than sound keeps a stair of its own. A charger that loses nothing has none.
[[nodiscard]] std::vector<Stair> stairs_of(const netlist::System& system,
                                           const diagnose::Staircase& staircase);

}  // namespace ohmtrail::render
