#include <fmt/format.h>

#include <algorithm>

#include "render/canvas.hpp"
#include "render/lettering.hpp"
#include "render/number.hpp"
#include "render/sheet.hpp"
#include "render/symbols.hpp"
#include "render/text.hpp"

namespace ohmtrail::render {
namespace {

constexpr double height = 96;
constexpr double row = 10.5;
constexpr Lettering small{6.6, false, palette::quiet};
constexpr Lettering heading{6.6, true, palette::ink};

template <class... Args>
std::string filled(std::string_view pattern, const Args&... args) {
  return fmt::format(fmt::runtime(pattern), args...);
}

void draw_scale(Scene& scene, const Shade& shade, Point corner, double width) {
  constexpr int steps = 40;
  write(scene, Kind::furniture, -1, {corner.x, corner.y}, std::string(text::legend_loss), heading);
  for (int k = 0; k < steps; ++k)
    fill_box(scene, Kind::furniture, -1, {corner.x + width * k / steps, corner.y + 7, width / steps + 0.3, 7},
             loss_colour((k + 0.5) / steps));
  const auto tick = [&](double share, const std::string& words, Align align) {
    write(scene, Kind::furniture, -1, {corner.x + share * width, corner.y + 20}, words, small, align);
  };
  const double least = shade.least_allowed(), most = shade.most_allowed();
  const auto amount = [&](double share) {
    const std::string percents = fmt::format("{:.0f}\u202F%", share * 100);
    return most > least * 1.001 ? percents : fmt::format("{} = {}", percents, volts(share * most));
  };
  tick(0, "0", Align::left);
  tick(0.5, amount(0.5), Align::middle);
  tick(1, amount(1) + " +", Align::right);
}

void draw_widths(Scene& scene, Point corner) {
  write(scene, Kind::furniture, -1, corner, std::string(text::legend_width), heading);
  double x = corner.x;
  for (const double area : {2.5, 16.0, 70.0}) {
    draw_line(scene, Kind::furniture, -1, {{x, corner.y + 11}, {x + 18, corner.y + 11}},
              {palette::ink, line_width(area * 1e-6), false});
    const Box told =
        write(scene, Kind::furniture, -1, {x + 22, corner.y + 11}, fmt::format("{:g}\u202Fmm²", area), small);
    x = told.right() + 12;
  }
}

void draw_signs(Scene& scene, Point corner) {
  double x = corner.x;
  const auto word = [&](std::string_view what) {
    x = write(scene, Kind::furniture, -1, {x, corner.y}, std::string(what), small).right() + 12;
  };
  draw_line(scene, Kind::furniture, -1, {{x, corner.y}, {x + 12, corner.y}}, {loss_colour(0.2), 2.4, false});
  draw_circle(scene, Kind::furniture, -1, {x + 3, corner.y}, 1.7, {palette::paper, 0.6, false},
              loss_colour(0.2));
  x += 16;
  word(text::legend_end);
  draw_disc(scene, -1, {x + 5, corner.y}, 4.6, 1, std::nullopt);
  x += 13;
  word(text::legend_disc);
  draw_line(scene, Kind::furniture, -1, {{x, corner.y}, {x + 14, corner.y}}, {palette::idle, 2.4, false});
  x += 18;
  word(text::legend_idle);
}

std::string_view shown(Show show) {
  switch (show) {
    case Show::volts:
      return text::shows_volts;
    case Show::amps:
      return text::shows_amps;
    case Show::heat:
      return text::shows_heat;
    case Show::gauge:
      break;
  }
  return text::shows_gauge;
}

void draw_hot_list(Scene& scene, const Teller& teller, const std::vector<diagnose::HotSpot>& spots,
                   const Box& box) {
  if (spots.empty()) return;
  write(scene, Kind::furniture, -1, {box.x, box.y}, std::string(text::hot_list), heading);
  double y = box.y + row + 1;
  for (std::size_t k = 0; k < spots.size() && y < box.bottom(); ++k, y += row) {
    const diagnose::HotSpot& spot = spots[k];
    draw_disc(scene, -1, {box.x + 5, y}, 4.6, spot.rank, spot.likelihood);
    std::string told = volts(std::abs(spot.drop));
    if (spot.recoverable) told = filled(text::lost_and_back, told, volts(spot.recoverable->volts));
    const Box right = write(scene, Kind::furniture, -1, {box.right(), y}, told, small, Align::right);
    write(scene, Kind::furniture, -1, {box.x + 14, y},
          fitted(spot.id, small.size, false, right.x - box.x - 14 - 8), {small.size, false, palette::ink});
  }
  static_cast<void>(teller);
}

void draw_title_block(Scene& scene, const Teller& teller, const Box& box) {
  fill_box(scene, Kind::furniture, -1, box, palette::paper, {palette::hair, 0.8, false});
  const netlist::SystemInfo& info = teller.system().info;
  write(scene, Kind::furniture, -1, {box.x + 8, box.y + 11}, fitted(info.name, 9, true, box.width - 16),
        {9, true, palette::ink});
  const std::pair<std::string_view, std::string> rows[] = {
      {text::block_case, teller.solved().network.case_name},
      {text::block_customer, info.job.customer},
      {text::block_technician, info.job.technician},
      {text::block_date, info.job.date},
      {text::block_reference, info.job.reference}};
  double y = box.y + 25;
  for (const auto& [what, value] : rows) {
    if (value.empty()) continue;
    write(scene, Kind::furniture, -1, {box.x + 8, y}, std::string(what), small);
    write(scene, Kind::furniture, -1, {box.x + 62, y}, fitted(value, 7, false, box.width - 70),
          {7, false, palette::ink});
    y += row;
  }
  write(scene, Kind::furniture, -1, {box.x + 8, box.bottom() - 7},
        fitted(shown(teller.show()), 6, false, box.width - 16), {6, false, palette::quiet});
}

}  // namespace

Scene footer(const Teller& teller, const Shade& shade, const std::vector<diagnose::HotSpot>& hot_spots,
             double width) {
  Scene scene{width, height, {}, {}, {}};
  constexpr double block = 236, legend = 210, gap = 24;
  draw_scale(scene, shade, {0, 6}, legend);
  draw_widths(scene, {0, 44});
  draw_signs(scene, {0, 76});
  draw_title_block(scene, teller, {width - block, 0, block, height});
  const double left = legend + gap, right = width - block - gap;
  const double column = std::min(240.0, right - left);
  if (column >= 150) {
    std::vector<diagnose::HotSpot> rest = hot_spots;
    for (double x = left; x + column <= right + 0.5 && !rest.empty(); x += column + gap) {
      draw_hot_list(scene, teller, rest, {x, 6, column, height - 12});
      constexpr std::size_t rows = 8;
      rest.erase(rest.begin(), rest.begin() + static_cast<std::ptrdiff_t>(std::min(rest.size(), rows)));
    }
  }
  return scene;
}

}  // namespace ohmtrail::render
