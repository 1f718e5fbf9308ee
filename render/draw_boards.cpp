#include "render/draw_boards.hpp"

#include <algorithm>

#include "render/canvas.hpp"
#include "render/lettering.hpp"
#include "render/sheet.hpp"
#include "render/symbols.hpp"
#include "render/text.hpp"
#include "render/words.hpp"
#include "units/index.hpp"

namespace ohmtrail::render {
namespace {

constexpr double margin = 6, name_room = 20, row_gap = 5, bar_width = 4.2, overhang = 3.5;
constexpr double widest_load = 108;

/// Some circuits of a board as a wiring of its own, so that the usual rooms and symbols serve: lane 2k feeds
/// item k, lane 2k + 1 leads back.
Wiring wiring_of(const Board& board, std::size_t first, std::size_t count) {
  Wiring wiring;
  wiring.bars.resize(2 + 2 * count);
  wiring.bars[0].point = board.plus;
  wiring.bars[1].point = board.circuits[first].minus;
  for (std::size_t k = 0; k < count; ++k) {
    const Circuit& circuit = board.circuits[first + k];
    const int top = static_cast<int>(2 + 2 * k);
    wiring.items.push_back(circuit.load);
    wiring.lanes.push_back({0, top, circuit.feed});
    wiring.lanes.push_back({top + 1, 1, circuit.back});
    for (const int bar : {top, top + 1}) {
      wiring.bars[at(bar)].item = static_cast<int>(k);
      wiring.bars[at(bar)].top = bar == top;
      wiring.bars[at(bar)].lanes = {static_cast<int>(2 * k + (bar == top ? 0 : 1))};
    }
  }
  return wiring;
}

class Rows {
 public:
  Rows(const Board& board, const Teller& teller, const Shade& shade, std::size_t first, std::size_t count)
      : board_(board),
        first_(first),
        teller_(teller),
        wiring_(wiring_of(board, first, count)),
        cells_(wiring_, teller),
        sheet_{wiring_, teller, shade, cells_, arranged_, placed_, scene_} {}

  Scene draw() {
    measure();
    scene_.width = minus_x_ + right_room_ + margin;
    double y = margin + name_room;
    for (std::size_t k = 0; k < count(); ++k) {
      const double above = room(k, &Sizes::OfLane::above), below = room(k, &Sizes::OfLane::below);
      if (k > 0 && circuit(k).minus != circuit(k - 1).minus) y += name_room;
      y_.push_back(y += above);
      y += below + row_gap;
    }
    scene_.height = y + margin;
    draw_bars();
    for (std::size_t k = 0; k < count(); ++k) draw_circuit(k);
    return std::move(scene_);
  }

 private:
  [[nodiscard]] std::size_t count() const { return wiring_.items.size(); }
  [[nodiscard]] const Circuit& circuit(std::size_t k) const { return board_.circuits[first_ + k]; }

  /// The load has a name above and a number below like everything else in the row.
  [[nodiscard]] double room(std::size_t k, double Sizes::OfLane::*side) const {
    const double load = symbol_half + 2.5 + lettering::line;
    return std::max({load, cells_.sizes.lanes[2 * k].*side, cells_.sizes.lanes[2 * k + 1].*side});
  }

  void measure() {
    double feed = 0, load = symbol_length, back = 0;
    for (std::size_t k = 0; k < count(); ++k) {
      feed = std::max(feed, cells_.sizes.lanes[2 * k].length);
      back = std::max(back, cells_.sizes.lanes[2 * k + 1].length);
      load = std::max({load, measure_name(k), measure_value(k)});
    }
    const std::string plus = bar_name(0);
    plus_x_ = margin + std::max(bar_width, render::measure(plus, lettering::name, true).width / 2);
    load_x_ = plus_x_ + feed;
    back_x_ = load_x_ + load + 8;
    minus_x_ = back_x_ + back;
    for (std::size_t k = 0; k < count(); ++k)
      right_room_ =
          std::max(right_room_, render::measure(minus_name(k), lettering::name, true).width / 2 + bar_width);
  }

  [[nodiscard]] std::string load_name(std::size_t k) const {
    return fitted(teller_.name(wiring_.items[k], 0), lettering::name, true, widest_load);
  }
  [[nodiscard]] std::string load_value(std::size_t k) const {
    std::string all;
    for (const std::string& value : teller_.values(wiring_.items[k], 0))
      all += (all.empty() ? "" : " · ") + value;
    return fitted(all, lettering::value, false, widest_load);
  }
  [[nodiscard]] double measure_name(std::size_t k) const {
    return render::measure(load_name(k), lettering::name, true).width;
  }
  [[nodiscard]] double measure_value(std::size_t k) const {
    return render::measure(load_value(k), lettering::value).width;
  }

  [[nodiscard]] std::string named(const Bar& bar) const {
    const std::string value = teller_.value(bar);
    return fitted(teller_.name(bar), lettering::name, true, widest_load) +
           (value.empty() ? "" : " · " + value);
  }
  [[nodiscard]] std::string bar_name(std::size_t bar) const { return named(wiring_.bars[bar]); }
  [[nodiscard]] std::string minus_name(std::size_t k) const {
    Bar bar;
    bar.point = circuit(k).minus;
    return named(bar);
  }

  void draw_bar(double x, std::size_t from, std::size_t to, const std::string& name) {
    const int group = add_group(scene_, name, name);
    draw_line(scene_, Kind::post, group, {{x, y_[from] - overhang}, {x, y_[to] + overhang}},
              {palette::ink, bar_width, false});
    for (std::size_t k = from; k <= to; ++k)
      draw_circle(scene_, Kind::post, group, {x, y_[k]}, 1.5, {palette::ink, 0, false}, palette::paper);
    const double top = y_[from] - room(from, &Sizes::OfLane::above) - 6;
    draw_line(scene_, Kind::post, group, {{x, y_[from] - overhang}, {x, top + 5}},
              {palette::ink, 0.5, false});
    write(scene_, Kind::label, group, {x, top}, name, {lettering::name, true, palette::ink}, Align::middle);
  }

  void draw_bars() {
    draw_bar(plus_x_, 0, count() - 1, bar_name(0));
    for (std::size_t from = 0; from < count();) {
      std::size_t to = from;
      while (to + 1 < count() && circuit(to + 1).minus == circuit(from).minus) ++to;
      draw_bar(minus_x_, from, to, minus_name(from));
      from = to + 1;
    }
  }

  void draw_lane(std::size_t lane, double y, Span x) {
    if (const auto placed = cells_.lay(wiring_, static_cast<int>(lane), x, {}))
      draw_row(sheet_, y, x, wiring_.lanes[lane].pieces, cells_.lanes[lane], *placed);
  }

  void draw_circuit(std::size_t k) {
    const double y = y_[k];
    const Item& item = wiring_.items[k];
    const int element = item.elements.front();
    draw_lane(2 * k, y, {plus_x_, load_x_});
    draw_lane(2 * k + 1, y, {back_x_, minus_x_});
    const int group = add_group(scene_, teller_.name(item, 0), teller_.title(item, 0));
    const bool idle = sheet_.shade.idle(element);
    const Point middle{(load_x_ + back_x_) / 2, y};
    draw_load(scene_, {middle, false, false, idle ? palette::idle : palette::ink, group},
              (back_x_ - load_x_) / 2);
    write(scene_, Kind::label, group, {middle.x, y - symbol_half - 4.5}, load_name(k),
          {lettering::name, true, idle ? palette::quiet : palette::ink}, Align::middle);
    write(scene_, Kind::label, group, {middle.x, y + symbol_half + 4.5}, load_value(k),
          {lettering::value, false, palette::quiet}, Align::middle);
  }

  const Board& board_;
  std::size_t first_;
  const Teller& teller_;
  Wiring wiring_;
  Cells cells_;
  Arrangement arranged_;
  std::vector<std::vector<PlacedCell>> placed_;
  Scene scene_;
  Sheet sheet_;
  double plus_x_ = 0, load_x_ = 0, back_x_ = 0, minus_x_ = 0, right_room_ = 0;
  std::vector<double> y_;
};

std::string title_of(const Board& board, const std::string& bar, bool begins) {
  if (!begins) return filled(text::board_goes_on, board.sign, bar);
  if (board.circuits.size() == 1) return filled(text::board_title_one, board.sign, bar);
  return filled(text::board_title, board.sign, board.circuits.size(), bar);
}

}  // namespace

std::vector<Scene> draw_board(const Board& board, const Teller& teller, const Shade& shade,
                              std::size_t rows) {
  std::vector<Scene> scenes;
  Bar plus;
  plus.point = board.plus;
  for (std::size_t first = 0; first < board.circuits.size(); first += rows) {
    Scene scene = Rows(board, teller, shade, first, std::min(rows, board.circuits.size() - first)).draw();
    scene.title = title_of(board, teller.name(plus), first == 0);
    scenes.push_back(std::move(scene));
  }
  return scenes;
}

}  // namespace ohmtrail::render
