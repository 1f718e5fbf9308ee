#pragma once
#include <cstddef>
#include <vector>

/// What the cable beyond a place costs, against the drop that the place may already have.
namespace ohmtrail::plan {

/// One way to choose everything beyond a place.
struct Label {
  double tolerance = 0;  ///< V of drop that the place may have
  double cost = 0;
  int candidate = -1;  ///< of the arm just passed; −1: none
  int beyond = -1;     ///< index of the label beyond that arm
};

/// Labels none of which is beaten: rising in cost and in tolerance.
using Front = std::vector<Label>;

/// Sorts labels and leaves the unbeaten ones. Of more than `most`, neighbours become one label with the cost
/// of the cheaper and the tolerance of the other: the front may promise too much, never too little.
void keep_unbeaten(Front& labels, std::size_t most);

/// All of these places at one point: their costs add up, the least tolerance counts.
[[nodiscard]] Front sum_of(const std::vector<const Front*>& fronts);

/// Index of the cheapest label that tolerates a drop; −1: none.
[[nodiscard]] int cheapest(const Front& front, double drop);

}  // namespace ohmtrail::plan
