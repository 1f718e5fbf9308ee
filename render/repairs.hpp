#pragma once
#include <string>
#include <vector>

#include "ohmtrail/diagnose/hot_spot.hpp"
#include "ohmtrail/netlist/system.hpp"

namespace ohmtrail::render {

/// Hot spots that one job cures: what is done to them is the same, word for word (both conductors of a run).
struct Repair {
  std::vector<const diagnose::HotSpot*> parts;  ///< by rank; never empty
  [[nodiscard]] const diagnose::HotSpot& first() const { return *parts.front(); }
};

/// In the order of their worst parts. Points into `spots`.
[[nodiscard]] std::vector<Repair> repairs(const std::vector<diagnose::HotSpot>& spots);

[[nodiscard]] std::string where(const netlist::System& system, const Repair& repair);

/// "1, 2"
[[nodiscard]] std::string ranks(const Repair& repair);

}  // namespace ohmtrail::render
