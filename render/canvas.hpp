#pragma once
#include <string>

#include "render/scene.hpp"

/// Short ways to put shapes into a scene.
namespace ohmtrail::render {

enum class Align { left, middle, right };

struct Lettering {
  double size = 7;
  bool bold = false;
  Colour colour = palette::ink;
};

/// One line of text whose middle height is at `y`. Returns the room it takes.
Box write(Scene& scene, Kind kind, int group, Point at, std::string text, const Lettering& style,
          Align align = Align::left);

void draw_line(Scene& scene, Kind kind, int group, std::vector<Point> points, Stroke stroke);
void fill_box(Scene& scene, Kind kind, int group, const Box& box, Colour fill,
              Stroke stroke = {palette::ink, 0, false});
void draw_circle(Scene& scene, Kind kind, int group, Point middle, double radius, Stroke stroke,
                 std::optional<Colour> fill);
int add_group(Scene& scene, const std::string& id, const std::string& title);

/// A numbered hot spot; with a likelihood, a ring round it is closed as far as it is likely.
void draw_disc(Scene& scene, int group, Point middle, double radius, int number,
               std::optional<double> likelihood);

}  // namespace ohmtrail::render
