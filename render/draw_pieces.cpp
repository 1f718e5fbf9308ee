#include <algorithm>
#include <cmath>

#include "render/canvas.hpp"
#include "render/sheet.hpp"
#include "render/symbols.hpp"
#include "render/text.hpp"

namespace ohmtrail::render {
namespace {

constexpr double dot_radius = 1.7;
constexpr double dot_inset = 3.2;

/// A line from `from` to `to`, told in distances along it.
struct Way {
  Point from, to;
  [[nodiscard]] bool upright() const { return from.x == to.x; }
  [[nodiscard]] double length() const { return upright() ? to.y - from.y : to.x - from.x; }
  [[nodiscard]] Point at(double s) const {
    return upright() ? Point{from.x, from.y + s} : Point{from.x + s, from.y};
  }
};

void draw_end_dots(const Sheet& sheet, const Piece& piece, const Way& way, int group) {
  const int main = sheet.teller.main_element(piece);
  const auto wire = std::find(piece.elements.begin(), piece.elements.end(), main);
  const double length = way.length();
  double left = dot_inset, right = length - dot_inset;
  const auto dot = [&](int element, double& s, double step) {
    if (const auto* hot = sheet.teller.hot_spot(element)) {
      s += step * (disc_radius - dot_inset / 2);
      draw_disc(sheet.scene, group, way.at(s), disc_radius, hot->rank, hot->likelihood);
      s += step * (disc_radius + 1);
      return;
    }
    draw_circle(sheet.scene, Kind::conductor, group, way.at(s), dot_radius, {palette::paper, 0.6, false},
                sheet.shade.colour(element));
    s += step * 4;
  };
  for (auto end = piece.elements.begin(); end != wire; ++end) dot(*end, left, 1);
  for (auto end = piece.elements.rbegin(); *end != main; ++end) dot(*end, right, -1);
}

/// Before the dots and discs of the right end.
double arrow_place(const Sheet& sheet, const Piece& piece, const Way& way) {
  double s = way.length() - 13;
  const int main = sheet.teller.main_element(piece);
  for (auto end = piece.elements.rbegin(); *end != main; ++end)
    if (sheet.teller.hot_spot(*end)) s -= 2 * disc_radius;
  return s;
}

void draw_arrow(const Sheet& sheet, const Piece& piece, const Way& way, int group) {
  if (sheet.teller.show() != Show::amps) return;
  const double s = arrow_place(sheet, piece, way);
  const double amps = sheet.teller.current(piece);
  if (!(std::fabs(amps) >= 1e-9)) return;
  const double size = 2.4 + sheet.teller.copper(piece) * 1e6 / 60, sign = amps > 0 ? 1 : -1;
  const Point tip = way.at(s + sign * size), tail = way.at(s - sign * size);
  const double dx = way.upright() ? size : 0, dy = way.upright() ? 0 : size;
  sheet.scene.shapes.push_back({Kind::arrow, group,
                                Line{{tip, {tail.x + dx, tail.y + dy}, {tail.x - dx, tail.y - dy}},
                                     {palette::paper, 0.5, false},
                                     palette::ink,
                                     true}});
}

void draw_run(const Sheet& sheet, const Piece& piece, const Way& way, double lettered, int group) {
  const int wire = sheet.teller.main_element(piece);
  const bool open = sheet.teller.open(piece);
  const double width = line_width(sheet.teller.copper(piece));
  draw_line(sheet.scene, Kind::conductor, group, {way.at(0), way.at(way.length())},
            {palette::paper, width + 2.4, false});
  draw_line(sheet.scene, Kind::conductor, group, {way.at(0), way.at(way.length())},
            {sheet.shade.colour(wire), width, open});
  draw_end_dots(sheet, piece, way, group);
  draw_arrow(sheet, piece, way, group);
  if (const auto* hot = sheet.teller.hot_spot(wire)) {
    const double s = std::max(way.length() / 2, lettered + disc_radius + 2);
    draw_disc(sheet.scene, group, way.at(s), disc_radius, hot->rank, hot->likelihood);
  }
}

void draw_device(const Sheet& sheet, const Piece& piece, const Way& way, int group) {
  const int i = piece.elements.front();
  const network::Element& e = sheet.teller.element(i);
  const netlist::System& system = sheet.teller.system();
  const bool switched_off = !e.active;
  const Colour colour = switched_off || sheet.shade.idle(i) ? palette::quiet : palette::ink;
  const Spot spot{way.at(way.length() / 2), way.upright(), piece.reversed, colour, group};
  draw_line(sheet.scene, Kind::conductor, group, {way.at(0), way.at(way.length() / 2 - symbol_length / 2)},
            {colour, 1.1, false});
  draw_line(sheet.scene, Kind::conductor, group,
            {way.at(way.length() / 2 + symbol_length / 2), way.at(way.length())}, {colour, 1.1, false});
  switch (e.origin.section) {
    case network::Section::fuses:
      draw_fuse(sheet.scene, spot);
      break;
    case network::Section::switches:
      draw_switch(sheet.scene, spot, system.switches[e.origin.index].kind, e.active);
      break;
    case network::Section::shunts:
      draw_shunt(sheet.scene, spot);
      break;
    case network::Section::isolators:
      draw_isolator(sheet.scene, spot);
      break;
    default:
      draw_joint(sheet.scene, spot, system.joints[e.origin.index].kind);
      break;
  }
  if (const auto* hot = sheet.teller.hot_spot(i)) {
    Point where = way.at(way.length() / 2 - symbol_length / 2 - disc_radius - 0.5);
    if (way.upright()) where = {way.from.x - symbol_half - disc_radius - 2, spot.middle.y};
    draw_disc(sheet.scene, group, where, disc_radius, hot->rank, hot->likelihood);
  }
}

}  // namespace

void draw_piece(const Sheet& sheet, const Piece& piece, Point from, Point to, double lettered, int group) {
  const Way way{from, to};
  if (piece.is_run)
    draw_run(sheet, piece, way, lettered, group);
  else
    draw_device(sheet, piece, way, group);
}

namespace {

/// Pieces in line between two uprights, with their names above and their numbers below.
class Row {
 public:
  Row(const Sheet& sheet, double y, Span x)
      : sheet_(sheet),
        y_(y),
        at_(x.low),
        end_(x.high),
        plain_(add_group(sheet.scene, "", std::string(text::plain_title))) {}

  void draw(const std::vector<Piece>& pieces, const std::vector<Cell>& cells,
            const std::vector<PlacedCell>& placed) {
    for (std::size_t k = 0; k < pieces.size(); ++k) draw(pieces[k], cells[k], placed[k]);
    plain_to(end_);
  }

 private:
  void plain_to(double x) {
    if (x > at_ + 0.01)
      draw_line(sheet_.scene, Kind::post, plain_, {{at_, y_}, {x, y_}}, {palette::ink, 1.1, false});
  }

  void draw(const Piece& piece, const Cell& cell, const PlacedCell& place) {
    const int group = add_group(sheet_.scene, sheet_.teller.name(piece), sheet_.teller.title(piece));
    plain_to(place.left);
    const double lettered = place.text - place.left + std::max(cell.name_width, cell.value_width);
    draw_piece(sheet_, piece, {place.left, y_}, {place.right, y_}, lettered, group);
    at_ = place.right;
    if (place.lettered) letter(piece, cell, place.text, group);
  }

  void letter(const Piece& piece, const Cell& cell, double x, int group) {
    const double reach = piece.is_run ? 2.5 : symbol_half + 0.5;
    const double thick = piece.is_run ? line_width(sheet_.teller.copper(piece)) / 2 : 0;
    const Align align = piece.is_run ? Align::left : Align::middle;
    const bool idle = sheet_.shade.idle(sheet_.teller.main_element(piece));
    write(sheet_.scene, Kind::label, group, {x, y_ - reach - thick - 4}, cell.name,
          {lettering::name, false, idle ? palette::quiet : palette::ink}, align);
    write(sheet_.scene, Kind::label, group, {x, y_ + reach + thick + 4}, cell.value,
          {lettering::value, false, palette::quiet}, align);
  }

  const Sheet& sheet_;
  double y_, at_, end_;
  int plain_;
};

}  // namespace

void draw_row(const Sheet& sheet, double y, Span x, const std::vector<Piece>& pieces,
              const std::vector<Cell>& cells, const std::vector<PlacedCell>& placed) {
  Row(sheet, y, x).draw(pieces, cells, placed);
}

void draw_lanes(const Sheet& sheet) {
  for (std::size_t l = 0; l < sheet.wiring.lanes.size(); ++l) {
    const Lane& lane = sheet.wiring.lanes[l];
    const auto x_of = [&](int bar) { return sheet.arranged.bar_x[static_cast<std::size_t>(bar)]; };
    Row(sheet, sheet.arranged.lane_y[l], {x_of(lane.left), x_of(lane.right)})
        .draw(lane.pieces, sheet.cells.lanes[l], sheet.placed[l]);
  }
}

void draw_ties(const Sheet& sheet) {
  for (std::size_t t = 0; t < sheet.wiring.ties.size(); ++t) {
    const Tie& tie = sheet.wiring.ties[t];
    const auto x_of = [&](int item) { return sheet.arranged.item_x[static_cast<std::size_t>(item)]; };
    const Span x{x_of(tie.left), x_of(tie.right)};
    const double y = sheet.cells.tie_y(tie);
    Row(sheet, y, x)
        .draw(tie.pieces, sheet.cells.ties[t], sheet.cells.lay_tie(sheet.wiring, static_cast<int>(t), x));
    const int group = add_group(sheet.scene, "", std::string(text::plain_title));
    for (const double end : {x.low, x.high})
      draw_circle(sheet.scene, Kind::post, group, {end, y}, 2, {palette::ink, 0.5, false}, palette::ink);
  }
}

}  // namespace ohmtrail::render
