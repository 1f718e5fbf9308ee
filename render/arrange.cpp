#include "render/arrange.hpp"

#include <algorithm>
#include <cmath>

#include "render/columns.hpp"
#include "render/lane_order.hpp"
#include "render/stacking.hpp"
#include "units/index.hpp"

namespace ohmtrail::render {
namespace {

constexpr double apart = 15;         // two uprights side by side
constexpr double widest_name = 110;  // half of the widest name of a bar, and some
constexpr int most_rounds = 12;

/// The y that a bar's name takes.
Span name_span(const Wiring& wiring, const Sizes& sizes, const Arrangement& arranged, int b) {
  const double edge = arranged.label_y[at(b)], height = sizes.bars[at(b)].label_height;
  return wiring.bars[at(b)].upper ? Span{edge - height, edge} : Span{edge, edge + height};
}

/// How far apart two bars must stand: uprights that overlap must not touch, and none goes through the other's
/// name.
double wanted_distance(const Wiring& wiring, const Sizes& sizes, const Arrangement& arranged, int p, int q) {
  const Span a = arranged.bar_span[at(p)], b = arranged.bar_span[at(q)];
  double wanted = Span{a.low - 10, a.high + 10}.overlaps(b) ? apart : 0;
  for (const auto& [named, other] : {std::pair{p, b}, std::pair{q, a}})
    if (sizes.bars[at(named)].label_width > 0 &&
        name_span(wiring, sizes, arranged, named).overlaps({other.low - 5, other.high + 5}))
      wanted = std::max(wanted, sizes.bars[at(named)].label_width / 2 + 4);
  return wanted;
}

/// Moves free bars right that stand too close to another. Whether any had to move.
bool separate(const Wiring& wiring, const Sizes& sizes, const Arrangement& arranged,
              std::vector<double>& shift) {
  std::vector<int> bars;
  for (int b = 0; b < static_cast<int>(wiring.bars.size()); ++b)
    if (!wiring.bars[at(b)].lanes.empty()) bars.push_back(b);
  std::stable_sort(bars.begin(), bars.end(),
                   [&](int a, int b) { return arranged.bar_x[at(a)] < arranged.bar_x[at(b)]; });
  bool moved = false;
  for (std::size_t i = 0; i < bars.size(); ++i)
    for (std::size_t k = i + 1; k < bars.size(); ++k) {
      const double distance = arranged.bar_x[at(bars[k])] - arranged.bar_x[at(bars[i])];
      if (distance >= widest_name) break;
      const double wanted = wanted_distance(wiring, sizes, arranged, bars[i], bars[k]);
      if (distance >= wanted - 1e-6) continue;
      const int mover = wiring.bars[at(bars[k])].item < 0 ? bars[k] : bars[i];
      if (wiring.bars[at(mover)].item >= 0) continue;
      shift[at(mover)] += wanted - (mover == bars[k] ? distance : -distance);
      moved = true;
      break;
    }
  return moved;
}

}  // namespace

Arrangement arrange(Wiring& wiring, const Sizes& sizes) {
  Columns columns(wiring, sizes);
  std::vector<double> shift(wiring.bars.size(), 0);
  LaneOrder order = find_order(wiring, columns, shift);
  Arrangement arranged;
  for (int round = 0; round < most_rounds; ++round) {
    arranged.bar_x = columns.bar_x;
    arranged.item_x = columns.item_x;
    stack_lanes(wiring, sizes, order, arranged);
    if (!separate(wiring, sizes, arranged, shift)) break;
    columns.solve(shift);
  }
  arranged.crossings = count_crossings(wiring, columns, order);
  return arranged;
}

}  // namespace ohmtrail::render
