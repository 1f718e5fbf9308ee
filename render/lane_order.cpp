#include "render/lane_order.hpp"

#include <algorithm>
#include <numeric>

#include "units/index.hpp"

namespace ohmtrail::render {
namespace {

constexpr double crossing_weight = 10;
constexpr double upright_weight = 0.05;  // per lane that an upright passes or serves

struct Cost {
  int crossings = 0;
  double total = 0;
};

/// Cost of one half for a given order of its lanes.
class Half {
 public:
  Half(const Wiring& wiring, const Columns& columns, bool upper)
      : wiring_(wiring), place_(wiring.lanes.size(), -1) {
    for (int b = 0; b < static_cast<int>(wiring.bars.size()); ++b)
      if (wiring.bars[at(b)].upper == upper && !wiring.bars[at(b)].lanes.empty()) bars_.push_back(b);
    x_ = columns.bar_x;
    for (int l = 0; l < static_cast<int>(wiring.lanes.size()); ++l) ranges_.push_back(columns.range(l));
  }

  Cost cost(const std::vector<int>& order) {
    for (std::size_t k = 0; k < order.size(); ++k) place_[at(order[k])] = static_cast<int>(k);
    Cost sum;
    for (const int b : bars_) add(b, order, sum);
    sum.total += crossing_weight * sum.crossings;
    return sum;
  }

 private:
  void add(int b, const std::vector<int>& order, Cost& sum) const {
    const Bar& bar = wiring_.bars[at(b)];
    int low = bar.item >= 0 ? -1 : static_cast<int>(order.size()), high = -1;
    for (const int l : bar.lanes) low = std::min(low, place_[at(l)]), high = std::max(high, place_[at(l)]);
    sum.total += upright_weight * (high - low);
    for (int k = low + 1; k < high; ++k)
      if (ranges_[at(order[at(k)])].holds(x_[at(b)]) && !ends_at(order[at(k)], b)) ++sum.crossings;
  }

  bool ends_at(int lane, int b) const {
    return wiring_.lanes[at(lane)].left == b || wiring_.lanes[at(lane)].right == b;
  }

  const Wiring& wiring_;
  std::vector<int> bars_, place_;
  std::vector<double> x_;
  std::vector<Span> ranges_;
};

class Search {
 public:
  Search(const Wiring& wiring, Columns& columns, const std::vector<double>& shift)
      : wiring_(wiring), columns_(columns), shift_(shift) {
    // Enough trials for small drawings to settle; large ones get fewer, each costs about lanes × bars.
    const double size = static_cast<double>(wiring.lanes.size() * wiring.bars.size() + 1);
    trials_ = static_cast<int>(std::clamp(8e6 / size, 60.0, 2000.0));
  }

  LaneOrder run() {
    start();
    improve_axis();
    improve_lanes(best_.upper, true);
    improve_lanes(best_.lower, false);
    return best_;
  }

 private:
  /// Loads in the order in which a walk from the supplies meets them, shallow branches first: what ends early
  /// lies inside.
  void start() {
    std::vector<int> met;
    depth_.assign(wiring_.bars.size(), -1);
    std::vector<bool> seen(wiring_.bars.size(), false);
    for (const bool upper : {true, false})
      for (auto item = columns_.left.rbegin(); item != columns_.left.rend(); ++item)
        for (int b = 0; b < static_cast<int>(wiring_.bars.size()); ++b)
          if (wiring_.bars[at(b)].item == *item && wiring_.bars[at(b)].upper == upper) walk(b, seen, met);
    for (const int item : columns_.right)
      if (std::find(met.begin(), met.end(), item) == met.end()) met.push_back(item);
    columns_.right = met;
    columns_.respect_feeds();
    columns_.solve(shift_);
    best_ = lanes_for_axis();
    best_cost_ = cost(best_);
  }

  int depth(int b) {
    if (depth_[at(b)] >= 0) return depth_[at(b)];
    depth_[at(b)] = 0;
    int deepest = 0;
    for (const int l : wiring_.bars[at(b)].lanes)
      if (wiring_.lanes[at(l)].left == b) deepest = std::max(deepest, depth(wiring_.lanes[at(l)].right) + 1);
    return depth_[at(b)] = deepest;
  }

  void walk(int b, std::vector<bool>& seen, std::vector<int>& met) {
    if (seen[at(b)]) return;
    seen[at(b)] = true;
    const Bar& bar = wiring_.bars[at(b)];
    if (bar.item >= 0 &&
        std::find(columns_.right.begin(), columns_.right.end(), bar.item) != columns_.right.end() &&
        std::find(met.begin(), met.end(), bar.item) == met.end())
      met.push_back(bar.item);
    std::vector<int> onwards;
    for (const int l : bar.lanes)
      if (wiring_.lanes[at(l)].left == b) onwards.push_back(wiring_.lanes[at(l)].right);
    std::stable_sort(onwards.begin(), onwards.end(), [&](int p, int q) { return depth(p) < depth(q); });
    for (const int next : onwards) walk(next, seen, met);
  }

  /// Mean place along the axis of the loads that lie beyond a bar, and how many they are.
  struct Beyond {
    double sum = 0;
    int count = 0;
    bool known = false;
  };

  const Beyond& beyond(int b, std::vector<Beyond>& memo, const std::vector<int>& position) const {
    Beyond& result = memo[at(b)];
    if (result.known) return result;
    result.known = true;
    double sum = 0;
    int count = 0;
    const int item = wiring_.bars[at(b)].item;
    if (item >= 0 && position[at(item)] >= 0) sum += position[at(item)], ++count;
    for (const int l : wiring_.bars[at(b)].lanes) {
      if (wiring_.lanes[at(l)].left != b) continue;
      const Beyond& next = beyond(wiring_.lanes[at(l)].right, memo, position);
      sum += next.sum;
      count += next.count;
    }
    result.sum = sum;
    result.count = count;
    return result;
  }

  LaneOrder lanes_for_axis() const {
    std::vector<int> position(wiring_.items.size(), -1);
    for (std::size_t k = 0; k < columns_.right.size(); ++k)
      position[at(columns_.right[k])] = static_cast<int>(k);
    std::vector<Beyond> memo(wiring_.bars.size());
    std::vector<double> key(wiring_.lanes.size(), 0);
    for (std::size_t l = 0; l < key.size(); ++l) {
      const Beyond& far = beyond(wiring_.lanes[l].right, memo, position);
      key[l] = far.count > 0 ? far.sum / far.count : -1;
    }
    LaneOrder order;
    for (int l = 0; l < static_cast<int>(key.size()); ++l)
      (wiring_.bars[at(wiring_.lanes[at(l)].left)].upper ? order.upper : order.lower).push_back(l);
    const auto inner = [&](int a, int b) { return key[at(a)] < key[at(b)]; };
    std::stable_sort(order.upper.begin(), order.upper.end(), inner);
    std::stable_sort(order.lower.begin(), order.lower.end(), inner);
    return order;
  }

  double cost(const LaneOrder& order) const {
    return Half(wiring_, columns_, true).cost(order.upper).total +
           Half(wiring_, columns_, false).cost(order.lower).total;
  }

  bool spend() { return trials_-- > 0; }

  /// Keeps `columns_` as it stands now if the lanes that follow from it cost less.
  bool keep_if_better(const std::vector<int>& left, const std::vector<int>& right) {
    columns_.respect_feeds();
    columns_.solve(shift_);
    const LaneOrder lanes = lanes_for_axis();
    const double now = cost(lanes);
    if (now < best_cost_ - 1e-9) {
      best_cost_ = now;
      best_ = lanes;
      return true;
    }
    columns_.left = left;
    columns_.right = right;
    return false;
  }

  void improve_axis() {
    const int budget = trials_ / 2;
    bool better = true;
    while (better && trials_ > budget) {
      better = improve(columns_.left, budget);
      if (improve(columns_.right, budget)) better = true;
    }
    columns_.solve(shift_);
  }

  /// Moves each item of `items` (one of the columns' own) to other places.
  bool improve(std::vector<int>& items, int budget) {
    bool better = false;
    for (std::size_t from = 0; from < items.size(); ++from)
      for (std::size_t to = 0; to < items.size() && trials_ > budget; ++to) {
        if (to == from || !spend()) continue;
        const std::vector<int> left = columns_.left, right = columns_.right;
        const int item = items[from];
        items.erase(items.begin() + static_cast<std::ptrdiff_t>(from));
        items.insert(items.begin() + static_cast<std::ptrdiff_t>(to), item);
        better |= keep_if_better(left, right);
      }
    return better;
  }

  void improve_lanes(std::vector<int>& order, bool upper) {
    Half half(wiring_, columns_, upper);
    double best = half.cost(order).total;
    int budget = trials_ > 0 ? trials_ / 2 + 30 : 30;
    for (bool better = true; better && budget > 0;) {
      better = false;
      for (std::size_t from = 0; from < order.size(); ++from)
        for (std::size_t to = 0; to < order.size() && budget > 0; ++to) {
          if (to == from) continue;
          --budget;
          std::vector<int> tried = order;
          tried.erase(tried.begin() + static_cast<std::ptrdiff_t>(from));
          tried.insert(tried.begin() + static_cast<std::ptrdiff_t>(to), order[from]);
          const double now = half.cost(tried).total;
          if (now >= best - 1e-9) continue;
          best = now;
          order = std::move(tried);
          better = true;
        }
    }
  }

  const Wiring& wiring_;
  Columns& columns_;
  const std::vector<double>& shift_;
  std::vector<int> depth_;
  LaneOrder best_;
  double best_cost_ = 0;
  int trials_ = 0;
};

}  // namespace

int count_crossings(const Wiring& wiring, const Columns& columns, const LaneOrder& order) {
  return Half(wiring, columns, true).cost(order.upper).crossings +
         Half(wiring, columns, false).cost(order.lower).crossings;
}

LaneOrder find_order(const Wiring& wiring, Columns& columns, const std::vector<double>& bar_shift) {
  columns.solve(bar_shift);
  return Search(wiring, columns, bar_shift).run();
}

}  // namespace ohmtrail::render
