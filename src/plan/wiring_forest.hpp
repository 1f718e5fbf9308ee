#pragma once
#include <vector>

#include "ohmtrail/network/network.hpp"

namespace ohmtrail::plan {

/// Wires, joints and switchgear that conduct, as a graph: its trees, where it has no rings.
class WiringForest {
 public:
  explicit WiringForest(const network::Network& network);

  [[nodiscard]] bool has_ring() const { return ring_; }
  /// The same number for points that wiring joins.
  [[nodiscard]] int tree(int point) const { return tree_[static_cast<std::size_t>(point)]; }
  /// Elements between two points of one tree.
  [[nodiscard]] std::vector<int> path(int from, int to) const;
  /// Per point of the tree, from a root outwards: the element that leads to it (−1: the root).
  struct Step {
    int point, by, before;  ///< `before`: the point at the other end of `by`
  };
  [[nodiscard]] std::vector<Step> outwards(int root) const;

 private:
  [[nodiscard]] int other(int element, int point) const;

  const network::Network& network_;
  std::vector<std::vector<int>> edges_;  ///< per point
  std::vector<int> tree_;
  bool ring_ = false;
};

}  // namespace ohmtrail::plan
