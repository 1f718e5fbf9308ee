#include "render/stacking.hpp"

#include <algorithm>
#include <cmath>

#include "units/index.hpp"

namespace ohmtrail::render {
namespace {

constexpr double gap = 3;       // between what belongs to two lanes
constexpr double item_gap = 5;  // between an item and the innermost lane over it
constexpr double name_gap = 4;  // between a bar's outermost lane and its name

/// Works outwards from the axis: u is the distance from it.
class Stack {
 public:
  Stack(const Wiring& wiring, const Sizes& sizes, bool upper, Arrangement& arranged)
      : wiring_(wiring), sizes_(sizes), upper_(upper), arranged_(arranged), u_(wiring.lanes.size(), 0) {
    for (std::size_t i = 0; i < sizes.items.size(); ++i) {
      const Sizes::OfItem& item = sizes.items[i];
      const double x = arranged.item_x[i];
      rooms_.push_back({{x - item.left, x + item.right}, 0, (upper ? item.up : item.down) + item_gap});
    }
  }

  void run(const std::vector<int>& order) {
    std::vector<int> left_to_place(wiring_.bars.size(), 0);
    for (const int l : order)
      for (const int b : ends(l)) ++left_to_place[at(b)];
    for (const int l : order) {
      place_lane(l);
      for (const int b : ends(l))
        if (--left_to_place[at(b)] == 0) place_name(b);
    }
    for (int pass = 0; pass < 2; ++pass)
      for (const int l : order) straighten(l);
    for (const int l : order) arranged_.lane_y[at(l)] = upper_ ? -u_[at(l)] : u_[at(l)];
  }

 private:
  struct Room {
    Span x;
    double inner = 0, outer = 0;  ///< u
    int lane = -1, bar = -1;
  };

  std::vector<int> ends(int l) const { return {wiring_.lanes[at(l)].left, wiring_.lanes[at(l)].right}; }
  double outwards(int l) const { return upper_ ? sizes_.lanes[at(l)].above : sizes_.lanes[at(l)].below; }
  double inwards(int l) const { return upper_ ? sizes_.lanes[at(l)].below : sizes_.lanes[at(l)].above; }

  Span reach(int l) const {
    const auto& lane = wiring_.lanes[at(l)];
    return {arranged_.bar_x[at(lane.left)], arranged_.bar_x[at(lane.right)]};
  }

  double free_from(Span x) const {
    double u = 0;
    for (const Room& room : rooms_)
      if (room.x.overlaps(x)) u = std::max(u, room.outer);
    return u;
  }

  void place_lane(int l) {
    const Span x = reach(l);
    u_[at(l)] = std::ceil(free_from(x) + gap + inwards(l));
    rooms_.push_back({x, u_[at(l)] - inwards(l), u_[at(l)] + outwards(l), l, -1});
  }

  void place_name(int b) {
    const Sizes::OfBar& name = sizes_.bars[at(b)];
    if (name.label_width <= 0) return;
    const double x = arranged_.bar_x[at(b)];
    const Span reach{x - name.label_width / 2, x + name.label_width / 2};
    const double u = free_from(reach) + name_gap;
    arranged_.label_y[at(b)] = upper_ ? -u : u;
    rooms_.push_back({reach, u, u + name.label_height, -1, b});
  }

  /// Level with a lane on the other side of a bar, if nothing stands in the way between here and there.
  void straighten(int l) {
    const auto& lane = wiring_.lanes[at(l)];
    if (is_level(l)) return;
    double best = u_[at(l)], best_distance = 1e9;
    for (const int b : ends(l))
      for (const int other : wiring_.bars[at(b)].lanes) {
        const bool opposite = (wiring_.lanes[at(other)].left == b) != (lane.left == b);
        const double distance = std::fabs(u_[at(other)] - u_[at(l)]);
        if (!opposite || distance >= best_distance || !can_move(l, u_[at(other)])) continue;
        best = u_[at(other)];
        best_distance = distance;
      }
    move(l, best);
  }

  bool is_level(int l) const {
    for (const int b : ends(l))
      for (const int other : wiring_.bars[at(b)].lanes)
        if (other != l && u_[at(other)] == u_[at(l)]) return true;
    return false;
  }

  bool can_move(int l, double to) const {
    const double from = u_[at(l)];
    const Span x = reach(l);
    const double inner = std::min(from, to) - inwards(l) - gap,
                 outer = std::max(from, to) + outwards(l) + gap;
    for (const Room& room : rooms_) {
      if (room.lane == l || !room.x.overlaps(x)) continue;
      if (room.bar >= 0 &&
          (room.bar == wiring_.lanes[at(l)].left || room.bar == wiring_.lanes[at(l)].right) && to < from)
        continue;
      if (room.inner < outer && inner < room.outer) return false;
    }
    return inside_bars(l, to);
  }

  /// Moving outwards must not lengthen a bar beyond where its name was put.
  bool inside_bars(int l, double to) const {
    for (const int b : ends(l)) {
      double outermost = 0;
      for (const int other : wiring_.bars[at(b)].lanes) outermost = std::max(outermost, u_[at(other)]);
      if (to > outermost) return false;
    }
    return true;
  }

  void move(int l, double to) {
    u_[at(l)] = to;
    for (Room& room : rooms_)
      if (room.lane == l) room.inner = to - inwards(l), room.outer = to + outwards(l);
  }

  const Wiring& wiring_;
  const Sizes& sizes_;
  bool upper_;
  Arrangement& arranged_;
  std::vector<double> u_;
  std::vector<Room> rooms_;
};

void find_spans(const Wiring& wiring, const Sizes& sizes, Arrangement& arranged) {
  arranged.bar_span.assign(wiring.bars.size(), {});
  for (std::size_t b = 0; b < wiring.bars.size(); ++b) {
    const Bar& bar = wiring.bars[b];
    if (bar.lanes.empty()) continue;
    Span span{1e9, -1e9};
    for (const int l : bar.lanes) {
      span.low = std::min(span.low, arranged.lane_y[at(l)]);
      span.high = std::max(span.high, arranged.lane_y[at(l)]);
    }
    if (bar.item >= 0) {
      const Sizes::OfItem& item = sizes.items[at(bar.item)];
      const double pin = bar.top ? -item.up : item.down;
      span = {std::min(span.low, pin), std::max(span.high, pin)};
    }
    arranged.bar_span[b] = span;
  }
}

}  // namespace

void stack_lanes(const Wiring& wiring, const Sizes& sizes, const LaneOrder& order, Arrangement& arranged) {
  arranged.lane_y.assign(wiring.lanes.size(), 0);
  arranged.label_y.assign(wiring.bars.size(), 0);
  Stack(wiring, sizes, true, arranged).run(order.upper);
  Stack(wiring, sizes, false, arranged).run(order.lower);
  find_spans(wiring, sizes, arranged);
}

}  // namespace ohmtrail::render
