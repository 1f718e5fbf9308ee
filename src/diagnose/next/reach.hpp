#pragma once
#include <string>
#include <vector>

#include "ohmtrail/netlist/system.hpp"
#include "ohmtrail/network/network.hpp"

namespace ohmtrail::diagnose::next {

/// How well a probe gets to a point. A barrel that the file says nothing of is as the stud it sits on.
[[nodiscard]] netlist::Reach reach_of(const netlist::System& system, const std::string& point);

/// Metres of wire between two points along the shortest way, from each of `from` to every point of the
/// network; infinite where nothing joins them.
[[nodiscard]] std::vector<std::vector<double>> leads_between(const netlist::System& system,
                                                             const network::Network& network,
                                                             const std::vector<int>& from);

}  // namespace ohmtrail::diagnose::next
