#pragma once
#include <vector>

#include "render/wiring.hpp"

/// Where everything of a wiring stands. The axis is y = 0; the upper half has negative y.
namespace ohmtrail::render {

/// The room that things need, in points.
struct Sizes {
  struct OfLane {
    double length = 10;  ///< between its bars, at least
    double above = 4, below = 4;
  };
  struct OfItem {
    double left = 12, right = 12;  ///< from its middle
    double up = 20, down = 20;     ///< from the axis
    double outlet = 0;  ///< converters: from the middle to their right pins; the left ones mirror it
  };
  struct OfBar {
    double label_width = 0, label_height = 0;  ///< of the name at its outer end; 0: none
  };
  std::vector<OfLane> lanes;
  std::vector<OfItem> items;
  std::vector<OfBar> bars;
};

struct Span {
  double low = 0, high = 0;
  [[nodiscard]] bool holds(double v) const { return low < v && v < high; }
  [[nodiscard]] bool overlaps(Span other) const { return low < other.high && other.low < high; }
};

struct Arrangement {
  std::vector<double> bar_x, item_x, lane_y;
  std::vector<double> label_y;  ///< per bar: the inner edge of its name's room
  std::vector<Span> bar_span;   ///< y of its lanes, and of the pin where it has one
  int crossings = 0;            ///< of a bar's upright with a lane that does not end there
};

/// Orients `wiring`'s lanes from left to right and gives every part its place: items along the axis (supplies
/// left, loads right, nested so that an inner lane ends at an inner item), bars by the longest way, lanes in
/// the order with fewest crossings found.
[[nodiscard]] Arrangement arrange(Wiring& wiring, const Sizes& sizes);

}  // namespace ohmtrail::render
