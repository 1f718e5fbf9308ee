#pragma once
#include <algorithm>

namespace ohmtrail::render {

/// A place on a drawing, in points (1/72 inch) from its top left corner, y downwards.
struct Point {
  double x = 0, y = 0;
  friend bool operator==(Point, Point) = default;
};

/// A rectangle with its sides along the axes.
struct Box {
  double x = 0, y = 0, width = 0, height = 0;

  [[nodiscard]] double right() const { return x + width; }
  [[nodiscard]] double bottom() const { return y + height; }
  [[nodiscard]] Point middle() const { return {x + width / 2, y + height / 2}; }

  /// Whether more than an edge is shared.
  [[nodiscard]] bool overlaps(const Box& other) const {
    return x < other.right() && other.x < right() && y < other.bottom() && other.y < bottom();
  }
  [[nodiscard]] bool holds(const Box& other) const {
    return x <= other.x && y <= other.y && other.right() <= right() && other.bottom() <= bottom();
  }
  [[nodiscard]] Box grown(double by) const { return {x - by, y - by, width + 2 * by, height + 2 * by}; }
};

/// The smallest box that holds both.
[[nodiscard]] inline Box joined(const Box& a, const Box& b) {
  const double x = std::min(a.x, b.x), y = std::min(a.y, b.y);
  return {x, y, std::max(a.right(), b.right()) - x, std::max(a.bottom(), b.bottom()) - y};
}

}  // namespace ohmtrail::render
