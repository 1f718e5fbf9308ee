#pragma once
#include <vector>

#include "ohmtrail/netlist/system.hpp"
#include "ohmtrail/network/network.hpp"

/// Which side of the wiring is grounded, where a fuse has no place.
namespace ohmtrail::plan {

/// Neither a source nor a load.
[[nodiscard]] bool is_passive(const network::Element& element);

/// Each island has one ground: the file's reference, where that lies in it; else the minus end of the string
/// that its first battery is part of; else its first charger's minus.
struct Ground {
  int point = -1;            ///< of the first island that has one; −1: there is no source
  std::vector<bool> points;  ///< per point: joined to its island's ground by passive elements
};

/// Positions of switches do not matter: an open one may be closed tomorrow.
[[nodiscard]] Ground find_ground(const netlist::System& system, const network::Network& network);

}  // namespace ohmtrail::plan
