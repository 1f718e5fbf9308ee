#include "render/split_bar.hpp"

#include <algorithm>
#include <cmath>

#include "render/canvas.hpp"
#include "render/lettering.hpp"
#include "render/number.hpp"
#include "render/text.hpp"

namespace ohmtrail::render {
namespace {

constexpr double bar_height = 17;
constexpr double key_row = 13;
constexpr double key_size = 8;  // of its letters
constexpr double key_mark = 14;
constexpr double key_gap = 5;

/// Each darker than the one before, so that neighbours differ in a grey print too.
Colour part_colour(std::size_t k) {
  return loss_colour(1 - 0.2 * static_cast<double>(std::min<std::size_t>(k, 5)));
}

/// How many keys stand side by side: as many as the widest leaves room for, three at most.
std::size_t keys_across(const std::vector<NamedPart>& named, double width) {
  double widest = 0;
  for (const NamedPart& part : named) {
    if (!(part.volts > 0)) continue;
    const double letters =
        measure(volts(part.volts), key_size, true).width + measure(part.name, key_size).width;
    widest = std::max(widest, key_mark + letters + 2 * key_gap);
  }
  return std::clamp<std::size_t>(static_cast<std::size_t>(width / widest), 1, 3);
}

}  // namespace

std::vector<NamedPart> named_parts(const diagnose::Parts& parts, Source from) {
  std::vector<NamedPart> named{
      {words_of(from).part, parts.battery},          {text::part_wires, parts.wires},
      {text::part_terminations, parts.terminations}, {text::part_joints, parts.joints},
      {text::part_switchgear, parts.switchgear},     {text::part_isolators, parts.isolators}};
  std::stable_sort(named.begin(), named.end(),
                   [](const auto& a, const auto& b) { return a.volts > b.volts; });
  return named;
}

Scene split_bar(const diagnose::Parts& parts, double width, Source from) {
  const auto named = named_parts(parts, from);
  double all = 0;
  for (const NamedPart& part : named) all += std::max(part.volts, 0.0);
  if (!(all > 0)) return {width, bar_height + 8, {}, {}, {}};
  const std::size_t across = keys_across(named, width);
  const std::size_t rows = (named.size() + across - 1) / across;
  Scene scene{width, bar_height + 8 + static_cast<double>(rows) * key_row, {}, {}, {}};
  double x = 0;
  std::size_t shown = 0;
  for (const NamedPart& part : named) {
    if (!(part.volts > 0)) continue;
    const double share = part.volts / all * width;
    const int group =
        add_group(scene, std::string(part.name), std::string(part.name) + ": " + volts(part.volts));
    fill_box(scene, Kind::symbol, group, {x, 0, share, bar_height}, part_colour(shown),
             {palette::paper, 1, false});
    const std::size_t key_line = shown / across;
    const Point key{width / static_cast<double>(across) * static_cast<double>(shown % across),
                    bar_height + 14 + key_row * static_cast<double>(key_line)};
    fill_box(scene, Kind::symbol, group, {key.x, key.y - 3.5, 9, 7}, part_colour(shown));
    const Box amount = write(scene, Kind::label, group, {key.x + key_mark, key.y}, volts(part.volts),
                             {key_size, true, palette::ink});
    write(scene, Kind::label, group, {amount.right() + key_gap, key.y}, std::string(part.name),
          {key_size, false, palette::ink});
    x += share;
    ++shown;
  }
  return scene;
}

}  // namespace ohmtrail::render
