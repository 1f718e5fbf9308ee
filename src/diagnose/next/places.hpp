#pragma once
#include <vector>

#include "diagnose/infer/posterior.hpp"
#include "ohmtrail/netlist/system.hpp"
#include "ohmtrail/network/network.hpp"
#include "ohmtrail/solve/solution.hpp"

namespace ohmtrail::diagnose::next {

/// The points and branches that are looked at in one case.
struct Places {
  std::vector<int> points, branches;
  std::size_t within_reach = 0;  ///< points that a probe reaches and that have a voltage
  bool coarse = false;           ///< not all of them are among `points`
};

/// Touchable points of a solved case, and one wire of every stretch without a branch for the clamp. Where
/// there are more than `most` points: the posts of sources and loads, and points that stand between equal
/// shares of the suspicion, in the order of the network. So any suspect lies within one such share of a
/// probe, however large the system.
[[nodiscard]] Places places_to_touch(const netlist::System& system, const Posterior& posterior,
                                     const network::Network& network, const solve::Solution& solution,
                                     std::size_t most);

/// At most `most` of some weights, ascending: those that weigh a step or more, and of the others those at
/// which their running sum passes another step. Each of those stands for one step.
struct EqualSteps {
  std::vector<std::size_t> at;
  double step = 0;
};
[[nodiscard]] EqualSteps at_equal_steps(const std::vector<double>& weights, std::size_t most);

}  // namespace ohmtrail::diagnose::next
