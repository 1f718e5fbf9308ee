#pragma once
#include <optional>
#include <vector>

#include "plan/radial.hpp"

/// The arms of a radial case as a tree of the loads that they feed.
namespace ohmtrail::plan {

/// Arms that feed the same loads, and below them those that feed a part of these.
struct TreeNode {
  int parent = -1;
  std::vector<int> children;
  std::vector<int> arms;   ///< in series, all with this node's current
  std::vector<int> loads;  ///< that no child feeds
  std::vector<int> fed;    ///< all loads beyond, rising
};

/// A parent stands before its children; the first is the root, which feeds every load and may have no arms.
using LoadTree = std::vector<TreeNode>;

/// Empty where two arms share loads and neither feeds all that the other does: plus and minus conductors
/// that branch differently.
[[nodiscard]] std::optional<LoadTree> load_tree(const RadialCase& in_case);

}  // namespace ohmtrail::plan
