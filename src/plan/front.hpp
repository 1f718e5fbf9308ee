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
  double sag = 0;  ///< W·V, least: Σ over constant-power loads of power · drop from the place to the load
  double lag = 0;  ///< A, most: Σ over resistive loads of drop from the place to the load / resistance
};

/// Labels none of which is beaten: rising in cost and in tolerance.
using Front = std::vector<Label>;

/// Sorts labels and leaves the unbeaten ones. Whatever a label that goes has better than the one that beats
/// it passes to the latter; of more than `most`, neighbours become one label with the best of each: the front
/// may promise too much, never too little.
void keep_unbeaten(Front& labels, std::size_t most);

/// The front with what is certain of the labels from each one on: the least sag, the most lag.
[[nodiscard]] Front certain(const Front& front);

/// All of these places at one point: their costs add up, the least tolerance counts. A place that tolerates
/// more than the least may as well hold a dearer label: its sag and lag are then those certain of these.
[[nodiscard]] Front sum_of(const std::vector<const Front*>& fronts);

/// Index of the cheapest label that tolerates a drop; −1: none.
[[nodiscard]] int cheapest(const Front& front, double drop);

}  // namespace ohmtrail::plan
