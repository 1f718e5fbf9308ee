#include <algorithm>

#include "render/canvas.hpp"
#include "render/sheet.hpp"
#include "units/index.hpp"

namespace ohmtrail::render {
namespace {

constexpr double overhang = 3.5;  // a bus bar reaches beyond its outermost stud

bool is_bus(const Sheet& sheet, const Bar& bar) {
  if (bar.lanes.size() >= 4) return true;
  for (const int l : bar.lanes)
    for (const Piece& piece : sheet.wiring.lanes[at(l)].pieces) {
      const network::Element& e = sheet.teller.element(piece.elements.front());
      if (e.origin.section != network::Section::joints) continue;
      const trade::JointKind kind = sheet.teller.system().joints[e.origin.index].kind;
      if (kind == trade::JointKind::bus_bar || kind == trade::JointKind::terminal_strip) return true;
    }
  return false;
}

void draw_studs(const Sheet& sheet, const Bar& bar, double x, bool bus, int group) {
  if (bar.item >= 0 && bar.lanes.size() < 2) return;
  for (const int l : bar.lanes)
    draw_circle(sheet.scene, Kind::post, group, {x, sheet.arranged.lane_y[at(l)]}, bus ? 1.5 : 2,
                {palette::ink, bus ? 0 : 0.5, false}, bus ? palette::paper : palette::ink);
}

/// Each stretch of a line on its own; the box of a bent line is not the line.
bool is_clear(const Scene& scene, const Box& box) {
  for (const Shape& shape : scene.shapes) {
    const Line* line = std::get_if<Line>(&shape.what);
    if (!line || line->points.size() < 2) {
      if (bounds(shape).overlaps(box)) return false;
      continue;
    }
    for (std::size_t k = 1; k < line->points.size(); ++k) {
      const Point a = line->points[k - 1], c = line->points[k];
      if (joined({a.x, a.y, 0, 0}, {c.x, c.y, 0, 0}).grown(line->stroke.width / 2).overlaps(box))
        return false;
    }
  }
  return true;
}

/// Over the bar's end, or to one side of it where an upright stands in the way; left out (the bar's title has
/// it) where neither is free.
void draw_name(const Sheet& sheet, int b, double x, double outer, int group) {
  const std::string& name = sheet.cells.bar_names[at(b)];
  if (name.empty()) return;
  const double sign = sheet.wiring.bars[at(b)].upper ? -1 : 1;
  const double edge = sheet.arranged.label_y[at(b)];
  const double width = sheet.cells.sizes.bars[at(b)].label_width, y = edge + sign * lettering::line / 2;
  for (const double shift : {0.0, width / 2 + 2, -width / 2 - 2}) {
    const Box box{x + shift - width / 2, y - lettering::line / 2, width, lettering::line};
    if (!is_clear(sheet.scene, box)) continue;
    if (shift == 0 && sign * edge > sign * outer + 4)
      draw_line(sheet.scene, Kind::post, group, {{x, outer}, {x, edge}}, {palette::ink, 0.5, false});
    write(sheet.scene, Kind::label, group, {x + shift, y}, name, {lettering::name, true, palette::ink},
          Align::middle);
    return;
  }
}

/// From the pin sideways to the upright where the pin lies on the far side of its item.
void draw_side_step(const Sheet& sheet, const Bar& bar, double x, int group) {
  const auto& item = sheet.cells.sizes.items[at(bar.item)];
  double from = sheet.arranged.item_x[at(bar.item)];
  if (sheet.wiring.items[at(bar.item)].kind == ItemKind::converter)
    from += bar.outlet ? item.outlet : -item.outlet;
  const double y = bar.top ? -item.up : item.down;
  if (from != x) draw_line(sheet.scene, Kind::post, group, {{from, y}, {x, y}}, {palette::ink, 1.1, false});
}

}  // namespace

void draw_bars(const Sheet& sheet) {
  for (int b = 0; b < static_cast<int>(sheet.wiring.bars.size()); ++b) {
    const Bar& bar = sheet.wiring.bars[at(b)];
    if (bar.lanes.empty()) continue;
    const double x = sheet.arranged.bar_x[at(b)];
    const Span span = sheet.arranged.bar_span[at(b)];
    const bool bus = bar.item < 0 && is_bus(sheet, bar);
    const int group = add_group(sheet.scene, sheet.teller.name(bar), sheet.teller.title(bar));
    const double more = bus ? overhang : 0;
    draw_line(sheet.scene, Kind::post, group, {{x, span.low - more}, {x, span.high + more}},
              {palette::ink, bus ? 4.2 : 1.1, false});
    if (bar.item >= 0) draw_side_step(sheet, bar, x, group);
    draw_studs(sheet, bar, x, bus, group);
  }
}

void draw_bar_names(const Sheet& sheet) {
  for (int b = 0; b < static_cast<int>(sheet.wiring.bars.size()); ++b) {
    const Bar& bar = sheet.wiring.bars[at(b)];
    const Span span = sheet.arranged.bar_span[at(b)];
    const double more = bar.item < 0 && is_bus(sheet, bar) ? overhang : 0;
    if (sheet.cells.bar_names[at(b)].empty()) continue;
    const int group = add_group(sheet.scene, sheet.teller.name(bar), sheet.teller.title(bar));
    draw_name(sheet, b, sheet.arranged.bar_x[at(b)], bar.upper ? span.low - more : span.high + more, group);
  }
}

}  // namespace ohmtrail::render
