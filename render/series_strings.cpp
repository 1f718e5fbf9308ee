#include "render/series_strings.hpp"

#include <boost/pending/disjoint_sets.hpp>
#include <optional>

#include "units/index.hpp"

namespace ohmtrail::render {
namespace {

/// The next battery of a string and the edges to it, from top to bottom.
struct Next {
  int item = -1;
  std::vector<int> edges;
};

class Stacker {
 public:
  explicit Stacker(WiringGraph& graph)
      : graph_(graph), next_(graph.items.size()), hangs_(graph.items.size(), false) {}

  void run() {
    boost::disjoint_sets_with_storage<> strings(graph_.items.size());
    for (const Pin& pin : graph_.pins) {
      if (pin.top || graph_.items[at(pin.item)].kind != ItemKind::supply) continue;
      auto below = battery_below(pin);
      // A ring of batteries has no top.
      if (!below || strings.find_set(at(below->item)) == strings.find_set(at(pin.item))) continue;
      strings.union_set(at(pin.item), at(below->item));
      hangs_[at(below->item)] = true;
      next_[at(pin.item)] = std::move(*below);
    }
    for (int top = 0; top < static_cast<int>(next_.size()); ++top)
      if (!hangs_[at(top)] && next_[at(top)].item >= 0) stack(top);
    drop_absorbed();
  }

 private:
  [[nodiscard]] std::size_t pins_at(int point) const { return graph_.pins_at[at(point)].size(); }
  [[nodiscard]] std::size_t edges_at(int point) const { return graph_.at_point[at(point)].size(); }

  /// The battery whose plus hangs, by a plain chain and nothing else, from the minus of another.
  [[nodiscard]] std::optional<Next> battery_below(const Pin& minus) const {
    Next next;
    int end = minus.point;
    if (pins_at(end) == 1 && edges_at(end) == 1) {
      Chain chain = graph_.chain(end, graph_.at_point[at(end)][0]);
      next.edges = std::move(chain.edges);
      end = chain.to;
      if (pins_at(end) != 1 || edges_at(end) != 1) return std::nullopt;
    } else if (pins_at(end) != 2 || edges_at(end) != 0) {
      return std::nullopt;
    }
    for (const int k : graph_.pins_at[at(end)]) {
      const Pin& pin = graph_.pins[at(k)];
      if (graph_.is_battery_pin(k) && pin.top && pin.item != minus.item) next.item = pin.item;
    }
    return next.item >= 0 ? std::optional(next) : std::nullopt;
  }

  void stack(int top) {
    Item& string = graph_.items[at(top)];
    for (int upper = top; next_[at(upper)].item >= 0; upper = next_[at(upper)].item) {
      const auto& [lower, edges] = next_[at(upper)];
      const int minus = graph_.element(graph_.items[at(upper)].elements.front()).to;
      for (const int edge : edges) graph_.used[at(edge)] = true;
      string.links.push_back(edges.empty() ? std::vector<Piece>{} : graph_.pieces({edges, minus, -1}));
      string.elements.push_back(graph_.items[at(lower)].elements[0]);
      move_pins(top, upper, lower);
    }
  }

  /// Pins between two batteries go (point −1); the lowest minus becomes the string's.
  void move_pins(int top, int upper, int lower) {
    for (Pin& pin : graph_.pins) {
      if (pin.item == upper && !pin.top && upper == top) pin.point = -1;
      if (pin.item != lower) continue;
      if (pin.top || next_[at(lower)].item >= 0)
        pin.point = -1;
      else
        pin.item = top;
    }
  }

  /// Batteries that became part of a string above are items no more.
  void drop_absorbed() {
    std::vector<int> renamed(hangs_.size(), -1);
    std::vector<Item> kept;
    for (std::size_t i = 0; i < hangs_.size(); ++i) {
      if (hangs_[i]) continue;
      renamed[i] = static_cast<int>(kept.size());
      kept.push_back(std::move(graph_.items[i]));
    }
    graph_.items = std::move(kept);
    std::erase_if(graph_.pins, [](const Pin& pin) { return pin.point < 0; });
    for (Pin& pin : graph_.pins) pin.item = renamed[at(pin.item)];
    graph_.index_pins();
    graph_.set_aside({});
  }

  WiringGraph& graph_;
  std::vector<Next> next_;
  std::vector<bool> hangs_;  ///< from the battery above it
};

}  // namespace

void stack_series_strings(WiringGraph& graph) {
  Stacker(graph).run();
}

}  // namespace ohmtrail::render
