#include "render/bank.hpp"

#include <algorithm>
#include <cmath>

#include "ohmtrail/trade/battery_charge.hpp"
#include "ohmtrail/trade/battery_limits.hpp"
#include "render/canvas.hpp"
#include "render/lettering.hpp"
#include "render/number.hpp"
#include "render/text.hpp"
#include "render/words.hpp"

namespace ohmtrail::render {
namespace {

constexpr double tile_gap = 10, least_tile = 112, head_height = 46, plot_height = 56, foot_height = 16;
constexpr Lettering small{6.6, false, palette::quiet};
constexpr Lettering title{8.6, true, palette::ink};
constexpr Lettering heading{10, true, palette::ink};
constexpr double least_page = 280;  // room for the legend
// From a cell without charge to the strongest acid in use.
constexpr double gravity_low = 1.10, gravity_high = 1.30;

bool tested(const netlist::Battery& battery) {
  const netlist::BatteryChecks& c = battery.checks;
  return c.rest || c.load_test || c.tester || !c.cells.empty() || c.top_leak;
}

double height_of(double gravity) {
  const double share = (gravity - gravity_low) / (gravity_high - gravity_low);
  return std::clamp(share, 0.02, 1.0) * plot_height;
}

enum class LoadTest { not_judged, passed, failed };

LoadTest load_test_of(const diagnose::Bank& judged, const std::string& id) {
  for (const diagnose::BatteryVerdict& verdict : judged.batteries) {
    if (verdict.id != id) continue;
    if (diagnose::has_finding(verdict, "load-test-failed")) return LoadTest::failed;
    if (diagnose::has_finding(verdict, "load-test-passed")) return LoadTest::passed;
  }
  return LoadTest::not_judged;
}

class Tile {
 public:
  Tile(Scene& scene, const netlist::Battery& battery, const diagnose::Bank& judged, const Box& box,
       bool row_has_cells)
      : scene_(scene),
        battery_(battery),
        test_(load_test_of(judged, battery.id)),
        box_(box),
        row_has_cells_(row_has_cells),
        group_(add_group(scene, battery.id, battery.id)) {}

  void draw() {
    const Colour edge = test_ == LoadTest::failed ? palette::alarm : palette::hair;
    fill_box(scene_, Kind::furniture, group_, box_, palette::paper, {edge, 0.8, false});
    const Box nominal = write(scene_, Kind::label, group_, {box_.right() - 8, box_.y + 11},
                              fmt::format("{:g}\u202FV", battery_.nominal.si()), small, Align::right);
    write(scene_, Kind::label, group_, {box_.x + 8, box_.y + 11},
          fitted(battery_.id, title.size, true, nominal.x - box_.x - 14), title);
    if (!tested(battery_))
      write(scene_, Kind::label, group_, {box_.x + 8, box_.y + 26}, std::string(text::bank_no_checks), small);
    draw_volts();
    draw_cells();
  }

 private:
  void told(double volts_, const std::string& when, double y, bool failed = false) {
    const Box amount = write(scene_, Kind::label, group_, {box_.x + 8, y}, standing_volts(volts_),
                             {8, true, failed ? palette::alarm : palette::ink});
    const Lettering style{small.size, failed, failed ? palette::alarm : small.colour};
    write(scene_, Kind::label, group_, {amount.right() + 4, y},
          fitted(when, style.size, style.bold, box_.right() - amount.right() - 10), style);
  }

  [[nodiscard]] std::string under_load(const netlist::LoadTest& test) const {
    const std::string amps = amperes(test.amps.si());
    switch (test_) {
      case LoadTest::failed:
        return filled(text::bank_failed, amps);
      case LoadTest::passed:
        return filled(text::bank_passed, amps);
      case LoadTest::not_judged:
        break;
    }
    return filled(text::bank_loaded, amps);
  }

  void draw_volts() {
    const netlist::BatteryChecks& c = battery_.checks;
    double y = box_.y + 25;
    if (c.rest) {
      std::string when(text::bank_at_rest);
      if (c.rest->temperature) when += ", " + celsius(c.rest->temperature->celsius());
      told(c.rest->volts.si(), when, y);
      y += 12;
    }
    if (c.load_test) told(c.load_test->volts.si(), under_load(*c.load_test), y, test_ == LoadTest::failed);
  }

  void draw_cells() {
    const auto& cells = battery_.checks.cells;
    if (cells.empty()) {
      if (row_has_cells_ && battery_.chemistry == trade::Chemistry::flooded)
        write(scene_, Kind::label, group_, {box_.x + 8, box_.bottom() - 12},
              fitted(text::bank_no_cells, small.size, false, box_.width - 16), small);
      return;
    }
    const double left = box_.x + 8, right = box_.right() - 8, base = box_.y + head_height + plot_height;
    // Healthy: charged enough to be worth a load test, up to a full cell.
    const double low = base - height_of(trade::least_gravity_before_load_test);
    const double high = base - height_of(trade::gravity_at_charge(units::Fraction{1}) + 0.015);
    fill_box(scene_, Kind::furniture, group_, {left, high, right - left, low - high}, {0.90, 0.95, 0.93});
    draw_line(scene_, Kind::furniture, group_, {{left, base}, {right, base}}, {palette::quiet, 0.7, false});
    const double pitch = (right - left) / static_cast<double>(cells.size());
    for (std::size_t k = 0; k < cells.size(); ++k)
      draw_cell(cells[k], left + pitch * (static_cast<double>(k) + 0.5), std::min(18.0, pitch * 0.62), base);
  }

  void draw_cell(const netlist::CellCheck& cell, double x, double width, double base) {
    if (!cell.specific_gravity) return;
    const double gravity = cell.temperature
                               ? trade::gravity_at_reference(*cell.specific_gravity, *cell.temperature)
                               : *cell.specific_gravity;
    const bool healthy = gravity >= trade::least_gravity_before_load_test;
    const double height = height_of(gravity);
    fill_box(scene_, Kind::symbol, group_, {x - width / 2, base - height, width, height},
             healthy ? palette::sound : palette::alarm);
    write(scene_, Kind::label, group_, {x, base + 6}, fmt::format("{:.3f}", gravity),
          {6, false, palette::ink}, Align::middle);
  }

  Scene& scene_;
  const netlist::Battery& battery_;
  LoadTest test_;
  Box box_;
  bool row_has_cells_;
  int group_;
};

}  // namespace

bool has_checks(const netlist::System& system) {
  return std::any_of(system.batteries.begin(), system.batteries.end(), tested);
}

Scene bank_picture(const netlist::System& system, const diagnose::Bank& judged, double width) {
  Scene scene;
  scene.title = std::string(text::bank_title) + ": " + system.info.name;
  scene.width = width;
  const auto across =
      std::max<std::size_t>(1, static_cast<std::size_t>((width + tile_gap) / (least_tile + tile_gap)));
  const double tile = (width - tile_gap * static_cast<double>(across - 1)) / static_cast<double>(across);
  bool any_cells = false;
  double y = 0;
  for (std::size_t first = 0; first < system.batteries.size(); first += across) {
    const std::size_t end = std::min(first + across, system.batteries.size());
    const auto has_cells = [&](std::size_t k) { return !system.batteries[k].checks.cells.empty(); };
    bool row_has_cells = false;
    for (std::size_t k = first; k < end; ++k) row_has_cells |= has_cells(k);
    any_cells |= row_has_cells;
    const double height = head_height + (row_has_cells ? plot_height + foot_height : 0);
    for (std::size_t k = first; k < end; ++k)
      Tile(scene, system.batteries[k], judged,
           {static_cast<double>(k - first) * (tile + tile_gap), y, tile, height}, row_has_cells)
          .draw();
    y += height + tile_gap;
  }
  y -= tile_gap;
  scene.height = y + 4;
  if (!any_cells) return scene;
  y += 10;
  fill_box(scene, Kind::furniture, -1, {0, y - 4, 14, 8}, {0.90, 0.95, 0.93});
  const Box band = write(scene, Kind::label, -1, {19, y}, std::string(text::bank_band), small);
  write(scene, Kind::label, -1, {band.right() + 16, y}, std::string(text::bank_cells), small);
  scene.height = y + 8;
  return scene;
}

Scene bank_page(const netlist::System& system, const diagnose::Bank& judged) {
  constexpr double margin = 16, most_across = 6, head = 26;
  const double across = std::min(most_across, static_cast<double>(system.batteries.size()));
  const Scene tiles =
      bank_picture(system, judged, std::max(least_page, across * (least_tile + tile_gap) - tile_gap));
  Scene page;
  page.title = tiles.title;
  page.width = tiles.width + 2 * margin;
  page.height = tiles.height + head + 2 * margin;
  write(page, Kind::label, -1, {margin, margin + heading.size / 2},
        fitted(page.title, heading.size, true, tiles.width), heading);
  place(page, tiles, {margin, margin + head});
  return page;
}

}  // namespace ohmtrail::render
