#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "render/canvas.hpp"
#include "render/lettering.hpp"
#include "render/number.hpp"
#include "render/sheet.hpp"
#include "render/text.hpp"
#include "render/words.hpp"

namespace ohmtrail::render {
namespace {

constexpr double least_height = 96;
constexpr double row = 11;
constexpr double block_width = 236, legend_width = 210, gap = 26, list_width = 236;
constexpr std::size_t most_listed = 30, most_rows = 15;
constexpr Lettering small{6.6, false, palette::quiet};
constexpr Lettering heading{6.8, true, palette::ink};

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
    draw_line(scene, Kind::furniture, -1, {{x, corner.y + 12}, {x + 18, corner.y + 12}},
              {palette::ink, line_width(area * 1e-6), false});
    const Box told =
        write(scene, Kind::furniture, -1, {x + 22, corner.y + 12}, fmt::format("{:g}\u202Fmm²", area), small);
    x = told.right() + 12;
  }
}

void draw_signs(Scene& scene, Point corner) {
  double x = corner.x;
  const auto word = [&](std::string_view what) {
    x = write(scene, Kind::furniture, -1, {x, corner.y}, std::string(what), small).right() + 12;
  };
  draw_line(scene, Kind::furniture, -1, {{x, corner.y}, {x + 12, corner.y}}, {loss_colour(0), 2.8, false});
  draw_circle(scene, Kind::furniture, -1, {x + 3.5, corner.y}, 1.9, {palette::paper, 0.6, false},
              loss_colour(0.8));
  x += 16;
  word(text::legend_end);
  draw_disc(scene, add_group(scene, "", std::string(text::legend_disc)), {x + 5, corner.y}, 4.6, 1,
            std::nullopt);
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

void draw_listed(Scene& scene, const Teller& teller, const diagnose::HotSpot& spot, Point left) {
  const int group =
      add_group(scene, "", filled(text::hot_spot_title, spot.rank, where(teller.system(), spot.id)));
  draw_disc(scene, group, {left.x + 5, left.y}, 4.6, spot.rank, spot.likelihood);
  const std::string lost = volts(diagnose::lost_volts(spot));
  std::string told = filled(text::lost_only, lost);
  // Less than half a millivolt is nothing that anybody gets back.
  if (spot.recoverable && spot.recoverable->volts >= 0.5e-3)
    told = filled(text::lost_and_back, lost, volts(spot.recoverable->volts));
  const Box right =
      write(scene, Kind::furniture, -1, {left.x + list_width, left.y}, std::move(told), small, Align::right);
  write(scene, Kind::furniture, -1, {left.x + 14, left.y},
        where_fitting(teller.system(), spot.id, small.size, right.x - left.x - 14 - 8),
        {small.size, false, palette::ink});
}

/// Worst first, in as many columns as there is room for.
class HotList {
 public:
  HotList(const std::vector<diagnose::HotSpot>& spots, double width) : spots_(spots) {
    columns_ = static_cast<std::size_t>(std::max(0.0, std::floor((width + gap) / (list_width + gap))));
    const std::size_t listed = std::min(spots.size(), most_listed);
    rows_ = columns_ == 0 ? 0 : std::clamp<std::size_t>((listed + columns_ - 1) / columns_, 7, most_rows);
    listed_ = std::min(listed, rows_ * columns_);
    // The last line then says how many are left out.
    if (listed_ > 0 && listed_ < spots.size() && listed_ == rows_ * columns_) --listed_;
  }

  [[nodiscard]] double height() const { return row * static_cast<double>(rows_ + 1) + 8; }

  void draw(Scene& scene, const Teller& teller, double left) const {
    if (columns_ == 0 || spots_.empty()) return;
    write(scene, Kind::furniture, -1, {left, 6}, std::string(text::hot_list), heading);
    for (std::size_t k = 0; k < listed_; ++k) draw_listed(scene, teller, spots_[k], place(k, left));
    if (listed_ < spots_.size()) {
      const Point at = place(listed_, left);
      write(scene, Kind::furniture, -1, {at.x + 14, at.y}, filled(text::hot_more, spots_.size() - listed_),
            small);
    }
  }

 private:
  [[nodiscard]] Point place(std::size_t k, double left) const {
    const std::size_t column = k / rows_;
    return {left + static_cast<double>(column) * (list_width + gap),
            6 + row * static_cast<double>(k % rows_ + 1) + 1};
  }

  const std::vector<diagnose::HotSpot>& spots_;
  std::size_t columns_ = 0, rows_ = 0, listed_ = 0;
};

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
  const double left = legend_width + gap, right = width - block_width - gap;
  const HotList list(hot_spots, right - left);
  Scene scene{width, std::max(least_height, list.height()), {}, {}, {}};
  draw_scale(scene, shade, {0, 6}, legend_width);
  draw_widths(scene, {0, 46});
  draw_signs(scene, {0, 80});
  list.draw(scene, teller, left);
  draw_title_block(scene, teller, {width - block_width, 0, block_width, least_height});
  return scene;
}

}  // namespace ohmtrail::render
