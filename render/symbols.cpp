#include "render/symbols.hpp"

#include <cmath>
#include <numbers>

#include "render/lettering.hpp"

namespace ohmtrail::render {
namespace {

constexpr double pen = 1.1;
constexpr double half_length = symbol_length / 2;

/// Draws in the symbol's own frame: its line along x, `from` at −x.
class Pen {
 public:
  Pen(Scene& scene, const Spot& spot) : scene_(scene), spot_(spot) {}

  void line(std::vector<Point> points, double width = pen, bool closed = false,
            std::optional<Colour> fill = std::nullopt) {
    for (Point& p : points) p = map(p);
    add(Line{std::move(points), {spot_.colour, width, false}, fill, closed});
  }

  void circle(Point middle, double radius, std::optional<Colour> fill = palette::paper) {
    add(Circle{map(middle), radius, {spot_.colour, pen, false}, fill});
  }

  void arc(Point middle, double radius, double from, double to) {
    std::vector<Point> points;
    for (int k = 0; k <= 8; ++k) {
      const double angle = (from + (to - from) * k / 8) * std::numbers::pi / 180;
      points.push_back({middle.x + radius * std::cos(angle), middle.y + radius * std::sin(angle)});
    }
    line(std::move(points));
  }

  void rectangle(double half_x, double half_y, std::optional<Colour> fill = palette::paper) {
    line({{-half_x, -half_y}, {half_x, -half_y}, {half_x, half_y}, {-half_x, half_y}}, pen, true, fill);
  }

  /// The line itself from the symbol's edge to `x` and from `y` to the other edge.
  void leads(double x, double y) {
    line({{-half_length, 0}, {x, 0}});
    line({{y, 0}, {half_length, 0}});
  }

 private:
  Point map(Point p) const {
    if (spot_.backwards) p = {-p.x, p.y};
    if (spot_.upright) p = {p.y, p.x};
    return {spot_.middle.x + p.x, spot_.middle.y + p.y};
  }

  template <class What>
  void add(What what) {
    scene_.shapes.push_back({Kind::symbol, spot_.group, std::move(what)});
  }

  Scene& scene_;
  const Spot& spot_;
};

void letter(Scene& scene, const Spot& spot, Point middle, const std::string& what, double size) {
  const Extent room = measure(what, size, true);
  Text text{{middle.x - room.width / 2, middle.y - room.height / 2, room.width, room.height},
            middle.y - room.height / 2 + room.ascent,
            what,
            size,
            true,
            spot.colour};
  scene.shapes.push_back({Kind::symbol, spot.group, std::move(text)});
}

/// The sign of direct current: a line over three dashes (IEC 60617 02-02-03).
void direct_current(Pen& pen_, Point at, double half) {
  pen_.line({{at.x - half, at.y - 1.2}, {at.x + half, at.y - 1.2}}, 0.8);
  for (int k = -1; k <= 1; ++k)
    pen_.line({{at.x + k * half * 0.75 - half * 0.22, at.y + 1.2},
               {at.x + k * half * 0.75 + half * 0.22, at.y + 1.2}},
              0.8);
}

}  // namespace

// 07-21-01
void draw_fuse(Scene& scene, const Spot& spot) {
  Pen p(scene, spot);
  p.rectangle(7, 3.2);
  p.line({{-half_length, 0}, {half_length, 0}});
}

// 07-02-01 with the qualifying marks 07-01-01 (contactor), 07-01-02 (breaker), 07-01-04 (switch-disconnector)
void draw_switch(Scene& scene, const Spot& spot, trade::SwitchKind kind, bool closed) {
  Pen p(scene, spot);
  constexpr double fixed = -6, moving = 6;
  p.leads(fixed, moving);
  if (closed)
    p.line({{moving, 0}, {fixed, -0.2}}, 1.5);
  else
    p.line({{moving, 0}, {-4.2, -6.2}}, 1.5);
  p.circle({moving, 0}, 1.3, spot.colour);
  switch (kind) {
    case trade::SwitchKind::breaker:
      p.line({{fixed - 2, -2}, {fixed + 2, 2}});
      p.line({{fixed - 2, 2}, {fixed + 2, -2}});
      break;
    case trade::SwitchKind::contactor:
      p.arc({fixed - 2, 0}, 2, 0, 180);
      break;
    case trade::SwitchKind::battery_switch:
      p.circle({fixed, 0}, 1.6);
      p.line({{fixed - 1.8, -3}, {fixed - 1.8, 3}});
      break;
    case trade::SwitchKind::toggle:
      p.circle({fixed, 0}, 1.3);
      break;
  }
}

// 04-01-11
void draw_shunt(Scene& scene, const Spot& spot) {
  Pen p(scene, spot);
  p.leads(-7, 7);
  p.rectangle(7, 2.6);
  p.line({{-4.5, 2.6}, {-4.5, 6}});
  p.line({{4.5, 2.6}, {4.5, 6}});
}

// 05-03-01
void draw_isolator(Scene& scene, const Spot& spot) {
  Pen p(scene, spot);
  p.leads(-5, 5);
  p.line({{-5, -5}, {5, 0}, {-5, 5}}, pen, true, palette::paper);
  p.line({{5, -5}, {5, 5}}, 1.4);
}

// 03-02-01 and after
void draw_joint(Scene& scene, const Spot& spot, trade::JointKind kind) {
  Pen p(scene, spot);
  switch (kind) {
    case trade::JointKind::splice:
      p.leads(0, 0);
      p.circle({0, 0}, 1.9, spot.colour);
      return;
    case trade::JointKind::plug:
      p.leads(-3, 3);
      p.line({{-3, -1.4}, {2, -1.4}, {2, 1.4}, {-3, 1.4}}, pen, true, spot.colour);
      p.arc({0.5, 0}, 3.6, -80, 80);
      return;
    case trade::JointKind::terminal_strip:
      p.leads(-2.4, 2.4);
      p.circle({0, 0}, 2.4);
      p.line({{-3.2, 3.2}, {3.2, -3.2}}, 0.9);
      return;
    case trade::JointKind::fuse_clip:
      p.leads(-4, 4);
      p.arc({-1, 0}, 3, 90, 270);
      p.arc({1, 0}, 3, -90, 90);
      return;
    case trade::JointKind::bus_bar:
      p.line({{-half_length, 0}, {half_length, 0}}, 3.4);
      return;
    case trade::JointKind::chassis:
      p.line({{-half_length, 0}, {half_length, 0}});
      p.line({{-5, 3.4}, {5, 3.4}}, 1.3);
      p.line({{0, 0}, {0, 3.4}});
      for (const double x : {-5.0, 0.0, 5.0}) p.line({{x, 3.4}, {x - 2.4, 6.4}}, 0.9);
      return;
    case trade::JointKind::post_clamp:
    case trade::JointKind::stud:
      break;
  }
  p.leads(-2.6, 2.6);
  p.circle({0, 0}, 2.6);
  if (kind == trade::JointKind::post_clamp) p.circle({0, 0}, 1, spot.colour);
}

// 06-15-02
void draw_battery(Scene& scene, const Spot& spot) {
  Spot turned = spot;
  turned.upright = true;
  Pen p(scene, turned);
  p.leads(-5.4, 5.4);
  for (const double x : {-5.4, 2.2}) {
    p.line({{x, -8}, {x, 8}}, 1.1);
    p.line({{x + 3.2, -4}, {x + 3.2, 4}}, 2.4);
  }
  p.line({{-2.2, 0}, {2.2, 0}}, 0.9);
  const Point plus{-half_length + 0.6, -5};
  p.line({{plus.x - 2, plus.y}, {plus.x + 2, plus.y}}, 0.9);
  p.line({{plus.x, plus.y - 2}, {plus.x, plus.y + 2}}, 0.9);
}

// 04-01-01, the general symbol of what takes power
void draw_load(Scene& scene, const Spot& spot, double half) {
  Pen p(scene, spot);
  p.line({{-half, 0}, {-8, 0}});
  p.line({{8, 0}, {half, 0}});
  p.rectangle(8, 3.6);
}

// 06-16-01, with the sign of direct current
void draw_charger(Scene& scene, const Spot& spot, double half) {
  Spot turned = spot;
  turned.upright = true;
  Pen(scene, turned).line({{-half, 0}, {half, 0}});
  Pen p(scene, spot);
  p.rectangle(8.5, 8.5);
  letter(scene, spot, {spot.middle.x, spot.middle.y - 2.2}, "G", 7.5);
  direct_current(p, {0, 5}, 3.6);
}

// 06-14-02
void draw_converter(Scene& scene, const Spot& spot, double half_width, double half) {
  Pen p(scene, spot);
  for (const double x : {-half_width + 5, half_width - 5}) p.line({{x, -half}, {x, half}});
  p.rectangle(half_width, 9.5);
  p.line({{-half_width, 9.5}, {half_width, -9.5}}, 0.9);
  direct_current(p, {-half_width * 0.5, -4}, 3.4);
  direct_current(p, {half_width * 0.5, 4.2}, 3.4);
}

}  // namespace ohmtrail::render
