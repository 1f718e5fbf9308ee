#include "render/staircase.hpp"

#include <algorithm>
#include <cmath>

#include "render/canvas.hpp"
#include "render/lettering.hpp"
#include "render/number.hpp"
#include "render/stairs.hpp"
#include "render/text.hpp"
#include "render/words.hpp"

namespace ohmtrail::render {
namespace {

constexpr double foot = 34;

/// Where things stand: on a page of its own, or in a text under its heading.
struct Layout {
  double margin, names, bars, values, row, head;
  [[nodiscard]] double inner() const { return names + bars + values; }
};
constexpr Layout own_page{16, 206, 330, 104, 15, 40}, in_text{0, 162, 248, 90, 13.5, 22};
// Two long ones, before and after, go onto one page.
constexpr std::size_t many_rows = 20;
constexpr double close_row = 11;

constexpr Lettering name_style{7.4, false, palette::ink};
constexpr Lettering value_style{7, false, palette::quiet};
constexpr Lettering axis_style{6.8, false, palette::quiet};

/// A round step that gives four to eight ticks over `range`.
double tick_step(double range) {
  const double rough = range / 6, power = std::pow(10, std::floor(std::log10(rough)));
  for (const double round : {1.0, 2.0, 5.0})
    if (rough <= round * power) return round * power;
  return 10 * power;
}

class Stairs {
 public:
  Stairs(const netlist::System& system, const diagnose::Staircase& stairs, bool titled)
      : system_(system),
        stairs_(stairs),
        titled_(titled),
        at_(titled ? own_page : in_text),
        from_(words_of(source_of(system, stairs.supply)).word),
        rows_(stairs_of(system, stairs)) {
    if (!titled && rows_.size() > many_rows) at_.row = close_row;
    double found = 0, rated = 0;
    for (const diagnose::Step& s : stairs.steps) {
      if (s.role == network::Role::load) continue;
      found += std::fabs(s.lost);
      rated += std::fabs(s.lost_as_rated);
    }
    supply_ = std::max(0.0, stairs.open_circuit - stairs.terminal);
    most_ = std::max({found, rated, 1e-6});
    if (stairs.limit) most_ = std::max(most_, std::min((supply_ + *stairs.limit) * 1.08, found * 3));
  }

  Scene draw() {
    scene_.title = filled(text::staircase_title, where(system_, stairs_.load), stairs_.in_case);
    scene_.width = 2 * at_.margin + at_.inner();
    const double rows =
        static_cast<double>(rows_.size()) + (rows_.back().role == network::Role::load ? 1 : 2);
    scene_.height = 2 * at_.margin + at_.head + rows * at_.row + foot;
    limit_band(rows - 1);
    axis(rows - 1);
    double y = top() + at_.row / 2;
    section(filled(text::stair_way_there, from_), y);
    for (const Stair& s : rows_) {
      y += at_.row;
      if (s.role != network::Role::load)
        row(s, y);
      else if (&s != &rows_.back())
        turn(y);
    }
    if (rows_.back().role != network::Role::load) y += at_.row;
    what_is_left(y);
    column_title();
    legend();
    return std::move(scene_);
  }

 private:
  [[nodiscard]] double x(double lost) const { return at_.margin + at_.names + at_.bars * lost / most_; }
  /// Of the first row.
  [[nodiscard]] double top() const { return at_.margin + at_.head; }
  [[nodiscard]] double values_left() const { return at_.margin + at_.names + at_.bars + 8; }

  void section(std::string_view words, double y) {
    write(scene_, Kind::label, -1, {at_.margin, y}, std::string(words),
          {name_style.size, true, palette::accent});
  }

  void limit_band(double rows) {
    if (!stairs_.limit || supply_ + *stairs_.limit >= most_) return;
    const double from = x(supply_ + *stairs_.limit);
    fill_box(scene_, Kind::furniture, -1, {from, top() - 6, x(most_) - from, rows * at_.row + 10},
             {0.98, 0.93, 0.91});
    draw_line(scene_, Kind::furniture, -1, {{from, top() - 6}, {from, top() + rows * at_.row + 4}},
              {palette::alarm, 0.8, true});
  }

  void axis(double rows) {
    const double every = tick_step(most_);
    // Ticks at round volts, from the highest at or below the open-circuit voltage.
    const double first = stairs_.open_circuit - every * std::floor(stairs_.open_circuit / every + 1e-9);
    const auto ticks = static_cast<int>(std::floor((most_ * 0.97 - first) / every)) + 1;
    for (int tick = 0; tick < ticks; ++tick) {
      const double lost = first + every * tick;
      draw_line(scene_, Kind::furniture, -1, {{x(lost), top() - 6}, {x(lost), top() + rows * at_.row + 4}},
                {palette::hair, 0.5, false});
      write(scene_, Kind::label, -1, {x(lost), top() - 13}, volts_left(stairs_.open_circuit - lost, every),
            axis_style, Align::middle);
    }
    if (titled_)
      write(scene_, Kind::label, -1, {at_.margin, at_.margin + 5},
            fitted(scene_.title, 9.5, true, at_.inner()), {9.5, true, palette::ink});
  }

  static std::string volts_left(double volts_, double every) {
    return every < 0.01  ? fmt::format("{:.3f}\u202FV", volts_)
           : every < 0.1 ? fmt::format("{:.2f}\u202FV", volts_)
                         : fmt::format("{:.1f}\u202FV", volts_);
  }

  void row(const Stair& s, double y) {
    const std::string& what = s.name;
    const double lost = s.lost, rated = s.rated;
    const int group = add_group(scene_, s.element, what + ": " + volts(lost));
    write(scene_, Kind::label, group, {at_.margin, y}, fitted_name(s), name_style);
    const double allowed = stairs_.limit.value_or(most_);
    const double width = std::max(0.6, x(found_ + lost) - x(found_));
    fill_box(scene_, Kind::symbol, group, {x(found_), y - 4.4, width, 5.6}, loss_colour(lost / allowed));
    if (stairs_.as_rated_known)
      fill_box(scene_, Kind::symbol, group,
               {x(rated_), y + 2.2, std::max(0.6, x(rated_ + rated) - x(rated_)), 2.4}, palette::quiet);
    write(scene_, Kind::label, group, {values_left(), y}, told(lost, rated), value_style);
    found_ += lost;
    rated_ += rated;
    upright(found_, y - 4.4, y + at_.row - 4.4, {palette::ink, 0.7, false});
    if (stairs_.as_rated_known && &s != &rows_.back())
      upright(rated_, y + 2.2, y + at_.row + 2.2, {palette::quiet, 0.4, false});
  }

  /// The name of an element without its places where they are too long.
  std::string fitted_name(const Stair& s) const {
    const double width = at_.names - 12;
    if (s.name == where(system_, s.element)) return where_fitting(system_, s.element, name_style.size, width);
    return fitted(s.name, name_style.size, false, width);
  }

  std::string told(double lost, double rated) const {
    return stairs_.as_rated_known ? volts(lost) + " / " + volts(rated) : volts(lost);
  }

  /// The way back begins.
  void turn(double y) {
    section(filled(text::stair_way_back, from_), y);
    upright(found_, y - 4.4, y + at_.row - 4.4, {palette::ink, 0.7, false});
    if (stairs_.as_rated_known) upright(rated_, y, y + at_.row + 2.2, {palette::quiet, 0.4, false});
  }

  void upright(double lost, double from, double to, Stroke stroke) {
    draw_line(scene_, Kind::furniture, -1, {{x(lost), from}, {x(lost), to}}, stroke);
  }

  void what_is_left(double y) {
    const auto load = std::find_if(rows_.begin(), rows_.end(),
                                   [](const Stair& s) { return s.role == network::Role::load; });
    if (load == rows_.end()) return;
    const std::string words = filled(text::stair_load, standing_volts(load->lost), load->name);
    const int group = add_group(scene_, load->element, words);
    fill_box(scene_, Kind::furniture, group, {at_.margin, y - at_.row / 2 + 1, at_.inner(), at_.row - 2},
             palette::wash);
    write(scene_, Kind::label, group, {at_.margin + 4, y},
          fitted(words, name_style.size, true, at_.inner() - 8), {name_style.size, true, palette::ink});
  }

  void column_title() {
    write(scene_, Kind::label, -1, {values_left(), top() - 13},
          std::string(stairs_.as_rated_known ? text::stair_column_both : text::stair_column_found),
          axis_style);
  }

  void legend() {
    const double y = scene_.height - at_.margin - 8;
    double at = at_.margin;
    const auto key = [&](Colour colour, double height, std::string_view words) {
      fill_box(scene_, Kind::furniture, -1, {at, y - height / 2, 14, height}, colour);
      at = write(scene_, Kind::label, -1, {at + 19, y}, std::string(words), value_style).right() + 18;
    };
    for (const double share : {0.05, 0.4, 0.9}) {
      fill_box(scene_, Kind::furniture, -1, {at, y - 2.8, 8, 5.6}, loss_colour(share));
      at += 8;
    }
    at =
        write(scene_, Kind::label, -1, {at + 5, y}, std::string(text::stair_found), value_style).right() + 18;
    if (stairs_.as_rated_known) key(palette::quiet, 2.4, text::stair_rated);
    if (stairs_.limit && supply_ + *stairs_.limit < most_)
      key({0.96, 0.85, 0.82}, 8, filled(text::stair_limit, from_));
  }

  const netlist::System& system_;
  const diagnose::Staircase& stairs_;
  bool titled_;
  Layout at_;
  std::string_view from_;  ///< battery, charger or converter
  std::vector<Stair> rows_;
  Scene scene_;
  double most_ = 1, supply_ = 0, found_ = 0, rated_ = 0;
};

}  // namespace

Scene staircase_picture(const netlist::System& system, const diagnose::Staircase& staircase, bool titled) {
  return Stairs(system, staircase, titled).draw();
}

}  // namespace ohmtrail::render
