#pragma once
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "render/colour.hpp"
#include "render/geometry.hpp"

/// A drawing before it is painted: what stands where. Tests ask it about overlaps; painters turn it into
/// bytes.
namespace ohmtrail::render {

struct Stroke {
  Colour colour = palette::ink;
  double width = 1;  ///< pt; 0: no line
  bool dashed = false;
};

/// A line through its points; with `fill` its inside is filled first.
struct Line {
  std::vector<Point> points;
  Stroke stroke;
  std::optional<Colour> fill;
  bool closed = false;
};

struct Circle {
  Point middle;
  double radius = 1;
  Stroke stroke;
  std::optional<Colour> fill;
};

/// One line of text; `bounds` is the room it takes, the text begins at its left edge.
struct Text {
  Box bounds;
  double baseline = 0;  ///< y
  std::string text;     ///< without control characters
  double size = 7;      ///< pt
  bool bold = false;
  Colour colour = palette::ink;
};

/// What a shape stands for.
enum class Kind {
  conductor,  ///< the line of a run, or the plain metal between two things
  post,       ///< a bus bar, stud or terminal, and the line from it to its device
  symbol,     ///< of a device
  label,
  disc,      ///< a numbered hot spot
  arrow,     ///< direction of the current
  furniture  ///< frame, legend, title block
};

struct Shape {
  Kind kind = Kind::furniture;
  int group = -1;  ///< index into Scene::groups; −1: none
  std::variant<Line, Circle, Text> what;
};

/// What belongs together and what it is, in a sentence that a pointer resting on it shows.
struct Group {
  std::string id, title;
};

struct Scene {
  double width = 0, height = 0;  ///< pt
  std::string title;
  std::vector<Group> groups;
  std::vector<Shape> shapes;  ///< painted in this order
};

/// The room that a shape takes, half its line included.
[[nodiscard]] Box bounds(const Shape& shape);

/// Adds all of `part` to `scene`, moved and scaled.
void place(Scene& scene, const Scene& part, Point at, double scale = 1);

}  // namespace ohmtrail::render
