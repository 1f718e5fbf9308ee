#include "render/canvas.hpp"

#include <cmath>
#include <numbers>

#include "render/clean.hpp"
#include "render/lettering.hpp"

namespace ohmtrail::render {

Box write(Scene& scene, Kind kind, int group, Point at, std::string text, const Lettering& style,
          Align align) {
  text = clean(text);
  if (text.empty()) return {at.x, at.y, 0, 0};
  const Extent room = measure(text, style.size, style.bold);
  const double left = align == Align::left     ? at.x
                      : align == Align::middle ? at.x - room.width / 2
                                               : at.x - room.width;
  // The room is that of the letters, not of the line with its leading.
  const double height = style.size * 1.05;
  const double baseline = at.y + style.size * 0.36;
  const Box bounds{left, at.y - height / 2, room.width, height};
  scene.shapes.push_back(
      {kind, group, Text{bounds, baseline, std::move(text), style.size, style.bold, style.colour}});
  return bounds;
}

void draw_line(Scene& scene, Kind kind, int group, std::vector<Point> points, Stroke stroke) {
  scene.shapes.push_back({kind, group, Line{std::move(points), stroke, std::nullopt, false}});
}

void fill_box(Scene& scene, Kind kind, int group, const Box& box, Colour fill, Stroke stroke) {
  scene.shapes.push_back(
      {kind, group,
       Line{{{box.x, box.y}, {box.right(), box.y}, {box.right(), box.bottom()}, {box.x, box.bottom()}},
            stroke,
            fill,
            true}});
}

void draw_circle(Scene& scene, Kind kind, int group, Point middle, double radius, Stroke stroke,
                 std::optional<Colour> fill) {
  scene.shapes.push_back({kind, group, Circle{middle, radius, stroke, fill}});
}

int add_group(Scene& scene, const std::string& id, const std::string& title) {
  scene.groups.push_back({clean(id), clean(title)});
  return static_cast<int>(scene.groups.size()) - 1;
}

void draw_disc(Scene& scene, int group, Point middle, double radius, int number,
               std::optional<double> likelihood) {
  draw_circle(scene, Kind::disc, group, middle, radius, {palette::paper, 1, false}, palette::ink);
  if (likelihood) {
    std::vector<Point> ring;
    const double share = std::clamp(*likelihood, 0.0, 1.0);
    for (int k = 0; k <= 24; ++k) {
      const double angle = (-0.25 + share * k / 24) * 2 * std::numbers::pi;
      ring.push_back(
          {middle.x + (radius - 0.9) * std::cos(angle), middle.y + (radius - 0.9) * std::sin(angle)});
    }
    draw_line(scene, Kind::disc, group, std::move(ring), {loss_colour(0.5), 1.1, false});
  }
  const double size = radius * (number < 10 ? 1.35 : number < 100 ? 1.15 : 0.85);
  write(scene, Kind::disc, group, middle, std::to_string(number), {size, true, palette::paper},
        Align::middle);
}

}  // namespace ohmtrail::render
