#include "render/clip.hpp"

#include <array>

namespace ohmtrail::render {
namespace {

/// One side of a window: inside is where a·x + b·y ≥ c.
struct Side {
  double a, b, c;
  [[nodiscard]] double depth(Point p) const { return a * p.x + b * p.y - c; }
};

std::array<Side, 4> sides_of(const Box& window) {
  return {Side{1, 0, window.x}, Side{-1, 0, -window.right()}, Side{0, 1, window.y},
          Side{0, -1, -window.bottom()}};
}

Point between(Point p, Point q, double share) {
  return {p.x + share * (q.x - p.x), p.y + share * (q.y - p.y)};
}

/// Liang and Barsky 1984: the stretch of the segment that is inside all sides; false: none.
bool cut_segment(Point& p, Point& q, const Box& window) {
  double enters = 0, leaves = 1;
  for (const Side& side : sides_of(window)) {
    const double at_p = side.depth(p), at_q = side.depth(q);
    if (at_p < 0 && at_q < 0) return false;
    if (at_p < 0) enters = std::max(enters, at_p / (at_p - at_q));
    if (at_q < 0) leaves = std::min(leaves, at_p / (at_p - at_q));
  }
  if (enters > leaves) return false;
  const Point start = between(p, q, enters);
  q = between(p, q, leaves);
  p = start;
  return true;
}

/// Sutherland and Hodgman 1974: cuts a polygon by one side after the other.
std::vector<Point> cut_polygon(std::vector<Point> points, const Box& window) {
  for (const Side& side : sides_of(window)) {
    std::vector<Point> kept;
    for (std::size_t k = 0; k < points.size(); ++k) {
      const Point p = points[k], q = points[(k + 1) % points.size()];
      const double at_p = side.depth(p), at_q = side.depth(q);
      if (at_p >= 0) kept.push_back(p);
      if ((at_p < 0) != (at_q < 0)) kept.push_back(between(p, q, at_p / (at_p - at_q)));
    }
    points = std::move(kept);
  }
  return points;
}

class Clip {
 public:
  Clip(const Shape& shape, const Box& window) : shape_(shape), window_(window) {}

  std::vector<Shape> operator()(const Line& line) {
    if (line.closed || line.fill) {
      Line kept = line;
      kept.points = cut_polygon(line.points, inside(line));
      if (kept.points.size() > 2) add(std::move(kept));
      return std::move(out_);
    }
    cut_open(line);
    return std::move(out_);
  }
  std::vector<Shape> operator()(const Circle&) { return whole(); }
  std::vector<Shape> operator()(const Text&) { return whole(); }

 private:
  /// Half a line's width less, so that the pen stays inside too.
  [[nodiscard]] Box inside(const Line& line) const { return window_.grown(-line.stroke.width / 2); }

  std::vector<Shape> whole() {
    return window_.holds(bounds(shape_)) ? std::vector<Shape>{shape_} : std::vector<Shape>{};
  }

  void add(Line line) { out_.push_back({shape_.kind, shape_.group, std::move(line)}); }

  void cut_open(const Line& line) {
    Line piece{{}, line.stroke, std::nullopt, false};
    for (std::size_t k = 1; k < line.points.size(); ++k) {
      Point p = line.points[k - 1], q = line.points[k];
      if (!cut_segment(p, q, inside(line))) continue;
      if (piece.points.empty() || !(piece.points.back() == p)) {
        if (piece.points.size() > 1) add(piece);
        piece.points = {p};
      }
      piece.points.push_back(q);
    }
    if (piece.points.size() > 1) add(std::move(piece));
  }

  const Shape& shape_;
  Box window_;
  std::vector<Shape> out_;
};

}  // namespace

std::vector<Shape> clipped(const Shape& shape, const Box& window) {
  return std::visit(Clip(shape, window), shape.what);
}

}  // namespace ohmtrail::render
