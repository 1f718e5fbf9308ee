#include "render/scene.hpp"

namespace ohmtrail::render {
namespace {

Box around(const Line& line) {
  if (line.points.empty()) return {};
  Box box{line.points.front().x, line.points.front().y, 0, 0};
  for (const Point& p : line.points) box = joined(box, {p.x, p.y, 0, 0});
  return box.grown(line.stroke.width / 2);
}

Box around(const Circle& circle) {
  return Box{circle.middle.x, circle.middle.y, 0, 0}.grown(circle.radius + circle.stroke.width / 2);
}

Box around(const Text& text) {
  return text.bounds;
}

struct Move {
  Point at;
  double scale;

  Point operator()(Point p) const { return {at.x + p.x * scale, at.y + p.y * scale}; }

  void operator()(Line& line) const {
    for (Point& p : line.points) p = (*this)(p);
    line.stroke.width *= scale;
  }
  void operator()(Circle& circle) const {
    circle.middle = (*this)(circle.middle);
    circle.radius *= scale;
    circle.stroke.width *= scale;
  }
  void operator()(Text& text) const {
    const Point corner = (*this)(Point{text.bounds.x, text.bounds.y});
    text.bounds = {corner.x, corner.y, text.bounds.width * scale, text.bounds.height * scale};
    text.baseline = at.y + text.baseline * scale;
    text.size *= scale;
  }
};

}  // namespace

Box bounds(const Shape& shape) {
  return std::visit([](const auto& what) { return around(what); }, shape.what);
}

void place(Scene& scene, const Scene& part, Point at, double scale) {
  const int first = static_cast<int>(scene.groups.size());
  scene.groups.insert(scene.groups.end(), part.groups.begin(), part.groups.end());
  for (Shape shape : part.shapes) {
    if (shape.group >= 0) shape.group += first;
    std::visit(Move{at, scale}, shape.what);
    scene.shapes.push_back(std::move(shape));
  }
}

}  // namespace ohmtrail::render
