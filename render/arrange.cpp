#include "render/arrange.hpp"

#include <algorithm>
#include <cmath>

#include "render/columns.hpp"
#include "render/lane_order.hpp"
#include "render/stacking.hpp"

namespace ohmtrail::render {
namespace {

std::size_t at(int i) {
  return static_cast<std::size_t>(i);
}

constexpr double apart = 15;  // two uprights side by side
constexpr int most_rounds = 12;

/// Two uprights that would touch: the free one of the pair, and how far right it must move.
bool separate(const Wiring& wiring, const Arrangement& arranged, std::vector<double>& shift) {
  std::vector<int> bars;
  for (int b = 0; b < static_cast<int>(wiring.bars.size()); ++b)
    if (!wiring.bars[at(b)].lanes.empty()) bars.push_back(b);
  std::stable_sort(bars.begin(), bars.end(),
                   [&](int a, int b) { return arranged.bar_x[at(a)] < arranged.bar_x[at(b)]; });
  bool moved = false;
  for (std::size_t i = 0; i < bars.size(); ++i)
    for (std::size_t k = i + 1; k < bars.size(); ++k) {
      const double distance = arranged.bar_x[at(bars[k])] - arranged.bar_x[at(bars[i])];
      if (distance >= apart) break;
      const Span a = arranged.bar_span[at(bars[i])], b = arranged.bar_span[at(bars[k])];
      if (!Span{a.low - 10, a.high + 10}.overlaps(b)) continue;
      const int mover = wiring.bars[at(bars[k])].item < 0 ? bars[k] : bars[i];
      if (wiring.bars[at(mover)].item >= 0) continue;
      shift[at(mover)] += apart - (mover == bars[k] ? distance : -distance);
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
    if (!separate(wiring, arranged, shift)) break;
    columns.solve(shift);
  }
  arranged.crossings = count_crossings(wiring, columns, order);
  return arranged;
}

}  // namespace ohmtrail::render
