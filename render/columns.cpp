#include "render/columns.hpp"

#include <algorithm>
#include <limits>

#include "render/flow.hpp"
#include "units/index.hpp"

namespace ohmtrail::render {
namespace {

constexpr double side_step = 9;      // a pin that turns into the other half leaves its item sideways
constexpr double gap_to_loads = 24;  // between the last supply and the first load
constexpr double gap_to_bars = 14;

void turn(Lane& lane) {
  std::swap(lane.left, lane.right);
  turn(lane.pieces);
}

}  // namespace

Columns::Columns(Wiring& wiring, const Sizes& sizes) : wiring_(wiring), sizes_(sizes) {
  for (int i = 0; i < static_cast<int>(wiring.items.size()); ++i) {
    const ItemKind kind = wiring.items[at(i)].kind;
    (kind == ItemKind::supply || kind == ItemKind::charger ? left : right).push_back(i);
  }
  orient_feeds();
}

int Columns::node(int bar) const {
  const Bar& b = wiring_.bars[at(bar)];
  return b.item >= 0 ? b.item : static_cast<int>(wiring_.items.size()) + bar;
}

double Columns::offset(int bar) const {
  const Bar& b = wiring_.bars[at(bar)];
  if (b.item < 0) return 0;
  if (wiring_.items[at(b.item)].kind == ItemKind::converter) {
    const double side = sizes_.items[at(b.item)].outlet + (b.top == b.upper ? 0 : side_step);
    return b.outlet ? side : -side;
  }
  return b.top == b.upper ? 0 : -side_step;
}

/// 0: left items, 1: free bars and converters, 2: loads.
int Columns::rank(int bar) const {
  const Bar& b = wiring_.bars[at(bar)];
  if (b.item < 0) return 1;
  switch (wiring_.items[at(b.item)].kind) {
    case ItemKind::supply:
    case ItemKind::charger:
      return 0;
    case ItemKind::converter:
      return 1;
    case ItemKind::load:
      break;
  }
  return 2;
}

bool Columns::leads_to(int from, int to) const {
  std::vector<bool> seen(feeds_.size(), false);
  std::vector<int> open{from};
  while (!open.empty()) {
    const int n = open.back();
    open.pop_back();
    if (n == to) return true;
    if (seen[at(n)]) continue;
    seen[at(n)] = true;
    for (const Arrow& arrow : feeds_[at(n)]) open.push_back(arrow.to);
  }
  return false;
}

void Columns::orient(int number, const std::vector<int>& place) {
  Lane& lane = wiring_.lanes[at(number)];
  const auto wants_left = [&](int bar) {
    const Bar& b = wiring_.bars[at(bar)];
    return b.item >= 0 ? (b.outlet ? -1 : 1 << 30) : place[at(bar)];
  };
  if (wants_left(lane.right) < wants_left(lane.left)) turn(lane);
  if (leads_to(node(lane.right), node(lane.left))) turn(lane);
  feeds_[at(node(lane.left))].push_back({node(lane.right), 0});
}

void Columns::orient_feeds() {
  feeds_.assign(wiring_.items.size() + wiring_.bars.size(), {});
  const std::vector<int> place = flow_order(wiring_);
  // Lanes at converters first: theirs is the direction that matters most.
  for (const bool at_converter : {true, false})
    for (int l = 0; l < static_cast<int>(wiring_.lanes.size()); ++l) {
      const Lane& lane = wiring_.lanes[at(l)];
      if (rank(lane.left) != 1 || rank(lane.right) != 1) continue;
      const bool touches = wiring_.bars[at(lane.left)].item >= 0 || wiring_.bars[at(lane.right)].item >= 0;
      if (touches == at_converter) orient(l, place);
    }
  for (Lane& lane : wiring_.lanes) {
    if (rank(lane.left) > rank(lane.right)) turn(lane);
    if (rank(lane.left) == 1 && rank(lane.right) == 2)
      feeds_[at(node(lane.left))].push_back({node(lane.right), 0});
  }
}

void Columns::respect_feeds() {
  std::vector<int> wanted = right;
  right.clear();
  while (!wanted.empty()) {
    auto next = wanted.begin();
    for (; next + 1 != wanted.end(); ++next)
      if (std::none_of(wanted.begin(), wanted.end(), [&](int i) { return i != *next && leads_to(i, *next); }))
        break;
    right.push_back(*next);
    wanted.erase(next);
  }
}

void Columns::order_by_axis(int number, const std::vector<int>& position) {
  Lane& lane = wiring_.lanes[at(number)];
  const int r = rank(lane.left);
  if (r != rank(lane.right) || r == 1) return;
  const int a = wiring_.bars[at(lane.left)].item, b = wiring_.bars[at(lane.right)].item;
  if (position[at(a)] > position[at(b)]) turn(lane);
}

void Columns::add_axis_arrows() {
  const auto chain = [&](const std::vector<int>& items) {
    for (std::size_t k = 0; k + 1 < items.size(); ++k)
      arrows_[at(items[k])].push_back(
          {items[k + 1], sizes_.items[at(items[k])].right + sizes_.items[at(items[k + 1])].left});
  };
  chain(left);
  chain(right);
  if (left.empty()) return;
  const Sizes::OfItem& last = sizes_.items[at(left.back())];
  if (!right.empty())
    arrows_[at(left.back())].push_back(
        {right.front(), last.right + gap_to_loads + sizes_.items[at(right.front())].left});
  for (int b = 0; b < static_cast<int>(wiring_.bars.size()); ++b)
    if (wiring_.bars[at(b)].item < 0) arrows_[at(left.back())].push_back({node(b), last.right + gap_to_bars});
}

/// Where the first string of a bank stands, the others follow in their order.
void Columns::keep_banks_together() {
  std::vector<int> kept;
  for (const int item : left) {
    if (std::find(kept.begin(), kept.end(), item) != kept.end()) continue;
    const auto bank = std::find_if(wiring_.banks.begin(), wiring_.banks.end(), [&](const auto& members) {
      return std::find(members.begin(), members.end(), item) != members.end();
    });
    if (bank == wiring_.banks.end())
      kept.push_back(item);
    else
      kept.insert(kept.end(), bank->begin(), bank->end());
  }
  left = std::move(kept);
}

void Columns::relax() {
  std::vector<int> waiting(arrows_.size(), 0);
  for (const auto& from : arrows_)
    for (const Arrow& arrow : from) ++waiting[at(arrow.to)];
  std::vector<int> ready;
  for (int n = 0; n < static_cast<int>(arrows_.size()); ++n)
    if (waiting[at(n)] == 0) ready.push_back(n);
  x_ = shift_;
  for (std::size_t k = 0; k < ready.size(); ++k)
    for (const Arrow& arrow : arrows_[at(ready[k])]) {
      double& x = x_[at(arrow.to)];
      x = std::max(x, x_[at(ready[k])] + arrow.length + shift_[at(arrow.to)]);
      if (--waiting[at(arrow.to)] == 0) ready.push_back(arrow.to);
    }
}

/// A free bar that no lane pulls from the left stands close to what it leads to.
void Columns::draw_in_sources_of_nothing() {
  for (int b = 0; b < static_cast<int>(wiring_.bars.size()); ++b) {
    const Bar& bar = wiring_.bars[at(b)];
    if (bar.item >= 0 || bar.lanes.empty()) continue;
    double room = std::numeric_limits<double>::infinity();
    for (const int l : bar.lanes) {
      const Lane& lane = wiring_.lanes[at(l)];
      if (lane.right == b)
        room = 0;
      else
        room = std::min(room, bar_x[at(lane.right)] - bar_x[at(b)] - sizes_.lanes[at(l)].length);
    }
    if (room > 0) bar_x[at(b)] += room;
  }
}

void Columns::solve(const std::vector<double>& bar_shift) {
  keep_banks_together();
  const std::size_t items = wiring_.items.size();
  shift_.assign(items + wiring_.bars.size(), 0);
  for (std::size_t b = 0; b < wiring_.bars.size(); ++b)
    if (wiring_.bars[b].item < 0) shift_[items + b] = bar_shift[b];
  std::vector<int> position(items, 0);
  for (std::size_t k = 0; k < left.size(); ++k) position[at(left[k])] = static_cast<int>(k);
  for (std::size_t k = 0; k < right.size(); ++k) position[at(right[k])] = static_cast<int>(k);
  arrows_.assign(items + wiring_.bars.size(), {});
  add_axis_arrows();
  for (int l = 0; l < static_cast<int>(wiring_.lanes.size()); ++l) {
    order_by_axis(l, position);
    const Lane& lane = wiring_.lanes[at(l)];
    const double length = sizes_.lanes[at(l)].length + offset(lane.left) - offset(lane.right);
    arrows_[at(node(lane.left))].push_back({node(lane.right), length});
  }
  relax();
  item_x.assign(x_.begin(), x_.begin() + static_cast<std::ptrdiff_t>(items));
  bar_x.resize(wiring_.bars.size());
  for (int b = 0; b < static_cast<int>(bar_x.size()); ++b) bar_x[at(b)] = x_[at(node(b))] + offset(b);
  draw_in_sources_of_nothing();
}

Span Columns::range(int lane) const {
  const Lane& l = wiring_.lanes[at(lane)];
  return {bar_x[at(l.left)], bar_x[at(l.right)]};
}

}  // namespace ohmtrail::render
