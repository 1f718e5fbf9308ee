#include "render/staircase.hpp"

#include <algorithm>
#include <cmath>

#include "render/canvas.hpp"
#include "render/lettering.hpp"
#include "render/number.hpp"
#include "render/text.hpp"
#include "render/words.hpp"

namespace ohmtrail::render {
namespace {

constexpr double names = 206, bars = 330, values = 104, row_height = 15, foot = 34, margin = 16;
constexpr Lettering name_style{7.4, false, palette::ink};
constexpr Lettering value_style{7, false, palette::quiet};
constexpr Lettering axis_style{6.8, false, palette::quiet};

struct Stair {
  std::string name, element;
  network::Role role = network::Role::wire;
  double lost = 0, rated = 0;
};

std::string name_of(const netlist::System& system, const diagnose::Step& step) {
  if (step.role == network::Role::battery) return filled(text::stair_supply, step.element);
  if (step.role == network::Role::charger) return filled(text::stair_charger, step.element);
  return where(system, step.element);
}

/// "M" and whether it is the return, of "M/return-from"; empty for what is no part of a run.
std::pair<std::string, bool> run_of(const diagnose::Step& step) {
  const std::size_t slash = step.element.rfind('/');
  const bool converter = step.role == network::Role::load || step.role == network::Role::charger;
  if (slash == std::string::npos || converter) return {};
  return {step.element.substr(0, slash), step.element.compare(slash + 1, 6, "return") == 0};
}

bool worth_a_row(const diagnose::Step& step, double sag) {
  const double lost = std::fabs(step.lost);
  return lost > 0.01 * sag && lost > 1.5 * std::fabs(step.lost_as_rated);
}

/// Sound ends of a run join its wire in one stair; what is worse than sound keeps a stair of its own.
std::vector<Stair> stairs_of(const netlist::System& system, const diagnose::Staircase& staircase,
                             double sag) {
  std::vector<Stair> stairs;
  std::pair<std::string, bool> open;
  for (const diagnose::Step& step : staircase.steps) {
    // A charger that holds its set point loses nothing.
    if (step.role == network::Role::charger && std::fabs(step.lost) < 1e-9) continue;
    const auto run = run_of(step);
    const bool alone = run.first.empty() || worth_a_row(step, sag);
    const double lost = std::fabs(step.lost), rated = std::fabs(step.lost_as_rated);
    if (!alone && run == open) {
      stairs.back().lost += lost;
      stairs.back().rated += rated;
      continue;
    }
    open = alone ? std::pair<std::string, bool>{} : run;
    const std::string whole = run.first + (run.second ? "/return-wire" : "/wire");
    const std::string name = alone ? name_of(system, step) : where(system, whole);
    if (!run.first.empty() && !stairs.empty() && stairs.back().name == name) {
      // Sound ends before or after a wire that stands alone.
      stairs.back().lost += lost;
      stairs.back().rated += rated;
    } else {
      stairs.push_back({name, step.element, step.role, lost, rated});
    }
  }
  return stairs;
}

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
      : stairs_(stairs), titled_(titled) {
    if (!titled) head_ = 22;
    double found = 0, rated = 0;
    for (const diagnose::Step& s : stairs.steps) {
      if (s.role == network::Role::load) continue;
      found += std::fabs(s.lost);
      rated += std::fabs(s.lost_as_rated);
    }
    rows_ = stairs_of(system, stairs, found);
    supply_ = std::max(0.0, stairs.open_circuit - stairs.terminal);
    most_ = std::max({found, rated, 1e-6});
    if (stairs.limit) most_ = std::max(most_, std::min((supply_ + *stairs.limit) * 1.08, found * 3));
  }

  Scene draw() {
    scene_.title = filled(text::staircase_title, stairs_.load, stairs_.in_case);
    scene_.width = 2 * margin + names + bars + values;
    const double rows = static_cast<double>(rows_.size()) + 2;
    scene_.height = 2 * margin + head_ + rows * row_height + foot;
    limit_band(rows);
    axis(rows);
    double y = margin + head_ + row_height / 2;
    section(text::stair_way_there, y);
    for (const Stair& s : rows_) {
      y += row_height;
      if (s.role == network::Role::load) {
        load_row(s, y);
        y += row_height;
        section(text::stair_way_back, y);
      } else {
        row(s, y);
      }
    }
    write(scene_, Kind::label, -1, {margin + names + bars + 8, margin + head_ - 13},
          std::string(stairs_.as_rated_known ? text::stair_column_both : text::stair_column_found),
          axis_style);
    legend();
    return std::move(scene_);
  }

 private:
  [[nodiscard]] double x(double lost) const { return margin + names + bars * lost / most_; }

  void section(std::string_view words, double y) {
    write(scene_, Kind::label, -1, {margin, y}, std::string(words), {7.4, true, palette::accent});
  }

  void limit_band(double rows) {
    if (!stairs_.limit || supply_ + *stairs_.limit >= most_) return;
    const double from = x(supply_ + *stairs_.limit);
    fill_box(scene_, Kind::furniture, -1, {from, margin + head_ - 6, x(most_) - from, rows * row_height + 10},
             {0.98, 0.93, 0.91});
    draw_line(scene_, Kind::furniture, -1,
              {{from, margin + head_ - 6}, {from, margin + head_ + rows * row_height + 4}},
              {palette::alarm, 0.8, true});
  }

  void axis(double rows) {
    const double every = tick_step(most_);
    // Ticks at round volts, from the highest at or below the open-circuit voltage.
    const double first = stairs_.open_circuit - every * std::floor(stairs_.open_circuit / every + 1e-9);
    const auto ticks = static_cast<int>(std::floor((most_ * 0.97 - first) / every)) + 1;
    for (int tick = 0; tick < ticks; ++tick) {
      const double lost = first + every * tick;
      draw_line(scene_, Kind::furniture, -1,
                {{x(lost), margin + head_ - 6}, {x(lost), margin + head_ + rows * row_height + 4}},
                {palette::hair, 0.5, false});
      write(scene_, Kind::label, -1, {x(lost), margin + head_ - 13},
            volts_left(stairs_.open_circuit - lost, every), axis_style, Align::middle);
    }
    if (titled_)
      write(scene_, Kind::label, -1, {margin, margin + 5},
            fitted(scene_.title, 9.5, true, names + bars + values), {9.5, true, palette::ink});
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
    write(scene_, Kind::label, group, {margin, y}, fitted(what, name_style.size, false, names - 12),
          name_style);
    const double allowed = stairs_.limit.value_or(most_);
    const double width = std::max(0.6, x(found_ + lost) - x(found_));
    fill_box(scene_, Kind::symbol, group, {x(found_), y - 4.4, width, 5.6}, loss_colour(lost / allowed));
    if (stairs_.as_rated_known)
      fill_box(scene_, Kind::symbol, group,
               {x(rated_), y + 2.2, std::max(0.6, x(rated_ + rated) - x(rated_)), 2.4}, palette::quiet);
    write(scene_, Kind::label, group, {margin + names + bars + 8, y}, told(lost, rated), value_style);
    found_ += lost;
    rated_ += rated;
    draw_line(scene_, Kind::furniture, group, {{x(found_), y - 4.4}, {x(found_), y + row_height - 4.4}},
              {palette::ink, 0.7, false});
  }

  std::string told(double lost, double rated) const {
    return stairs_.as_rated_known ? volts(lost) + " / " + volts(rated) : volts(lost);
  }

  void load_row(const Stair& s, double y) {
    const int group =
        add_group(scene_, s.element, filled(text::stair_load, standing_volts(s.lost), s.element));
    fill_box(scene_, Kind::furniture, group,
             {margin, y - row_height / 2 + 1, names + bars + values, row_height - 2}, palette::wash);
    const std::string words =
        fitted(filled(text::stair_load, standing_volts(s.lost), s.element), 7.4, true, names + bars);
    write(scene_, Kind::label, group, {margin + 4, y}, words, {7.4, true, palette::ink});
    draw_line(scene_, Kind::furniture, group, {{x(found_), y - 4.4}, {x(found_), y + 2 * row_height - 4.4}},
              {palette::ink, 0.7, false});
  }

  void legend() {
    const double y = scene_.height - margin - 8;
    double at = margin;
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
    if (stairs_.limit && supply_ + *stairs_.limit < most_) key({0.96, 0.85, 0.82}, 8, text::stair_limit);
  }

  const diagnose::Staircase& stairs_;
  bool titled_;
  std::vector<Stair> rows_;
  Scene scene_;
  double head_ = 40, most_ = 1, supply_ = 0, found_ = 0, rated_ = 0;
};

}  // namespace

Scene staircase_picture(const netlist::System& system, const diagnose::Staircase& staircase, bool titled) {
  return Stairs(system, staircase, titled).draw();
}

}  // namespace ohmtrail::render
