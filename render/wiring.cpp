#include "render/wiring.hpp"

#include <algorithm>
#include <boost/pending/disjoint_sets.hpp>
#include <map>
#include <optional>

#include "render/banks.hpp"
#include "render/series_strings.hpp"
#include "units/index.hpp"

namespace ohmtrail::render {
namespace {

/// Bars and lanes of a graph whose strings are stacked.
class Builder {
 public:
  explicit Builder(WiringGraph& graph) : graph_(graph) {}

  Wiring build() {
    choose_bars();
    trace_lanes();
    hang_pins();
    choose_halves();
    wiring_.items = std::move(graph_.items);
    return std::move(wiring_);
  }

 private:
  int bar_at(int point) {
    if (const auto found = bar_of_.find(point); found != bar_of_.end()) return found->second;
    const int bar = static_cast<int>(wiring_.bars.size());
    wiring_.bars.push_back({});
    wiring_.bars.back().point = point;
    return bar_of_[point] = bar;
  }

  void choose_bars() {
    for (int p = 0; p < static_cast<int>(graph_.network().points.size()); ++p)
      if (!graph_.passes(p) && (!graph_.at_point[at(p)].empty() || !graph_.pins_at[at(p)].empty())) bar_at(p);
    break_loops();
  }

  /// A chain that comes back to its own bar, or rings without any bar, gets one more bar on its way.
  void break_loops() {
    for (int p = 0; p < static_cast<int>(graph_.network().points.size()); ++p) {
      if (graph_.passes(p)) continue;
      for (const int edge : graph_.at_point[at(p)]) {
        const Chain one = graph_.chain(p, edge);
        if (one.to == p && one.edges.size() > 1) force_bar(graph_.far_end(edge, p));
      }
    }
    std::vector<bool> reached(graph_.network().points.size(), false);
    for (const auto& [point, bar] : std::map<int, int>(bar_of_.begin(), bar_of_.end())) mark(point, reached);
    for (int p = 0; p < static_cast<int>(graph_.network().points.size()); ++p) {
      if (reached[at(p)] || graph_.at_point[at(p)].empty()) continue;
      force_bar(p);
      force_bar(graph_.far_end(graph_.at_point[at(p)][0], p));
      mark(p, reached);
    }
  }

  void force_bar(int point) {
    graph_.forced.insert(point);
    bar_at(point);
  }

  void mark(int start, std::vector<bool>& reached) const {
    std::vector<int> open{start};
    while (!open.empty()) {
      const int p = open.back();
      open.pop_back();
      if (reached[at(p)]) continue;
      reached[at(p)] = true;
      for (const int edge : graph_.at_point[at(p)]) open.push_back(graph_.far_end(edge, p));
    }
  }

  void add_lane(Lane lane) {
    const int number = static_cast<int>(wiring_.lanes.size());
    wiring_.bars[at(lane.left)].lanes.push_back(number);
    wiring_.bars[at(lane.right)].lanes.push_back(number);
    wiring_.lanes.push_back(std::move(lane));
  }

  void trace_lanes() {
    for (int first = 0; first < static_cast<int>(graph_.edges.size()); ++first) {
      if (graph_.used[at(first)]) continue;
      // Walk back to the bar where the chain of this edge begins, then forward over all of it.
      const Chain back = graph_.chain(graph_.edges[at(first)].to, first);
      const Chain whole = graph_.chain(back.to, back.edges.back());
      Lane lane{bar_at(whole.from), bar_at(whole.to), graph_.pieces(whole)};
      for (const int edge : whole.edges) graph_.used[at(edge)] = true;
      add_lane(std::move(lane));
    }
  }

  /// A pin's own upright line is the bar of its point where that is a battery's post or serves little else;
  /// otherwise the bar stands free and the pin is bolted to it.
  bool may_anchor(const Pin& pin) const {
    const auto& others = graph_.pins_at[at(pin.point)];
    if (graph_.items[at(pin.item)].kind == ItemKind::supply) {
      const auto first =
          std::find_if(others.begin(), others.end(), [&](int k) { return graph_.is_battery_pin(k); });
      return &graph_.pins[at(*first)] == &pin;
    }
    return others.size() == 1 && graph_.at_point[at(pin.point)].size() <= 2;
  }

  void hang_pins() {
    for (const Pin& pin : graph_.pins) {
      int bar = bar_at(pin.point);
      if (!may_anchor(pin)) {
        const int free = bar;
        bar = static_cast<int>(wiring_.bars.size());
        wiring_.bars.push_back({});
        wiring_.bars.back().point = pin.point;
        add_lane({free, bar, {}});
      }
      Bar& anchored = wiring_.bars[at(bar)];
      anchored.item = pin.item;
      anchored.top = pin.top;
      anchored.outlet = pin.outlet;
    }
  }

  /// What is joined by metal lies in one half: the upper, unless more bottom pins than top pins hang on it.
  void choose_halves() {
    boost::disjoint_sets_with_storage<> metal(wiring_.bars.size());
    for (const Lane& lane : wiring_.lanes) metal.union_set(at(lane.left), at(lane.right));
    std::vector<int> balance(wiring_.bars.size(), 0);
    for (int b = 0; b < static_cast<int>(wiring_.bars.size()); ++b) {
      const Bar& bar = wiring_.bars[at(b)];
      if (bar.item >= 0) balance[metal.find_set(at(b))] += bar.top ? 1 : -1;
    }
    for (int b = 0; b < static_cast<int>(wiring_.bars.size()); ++b)
      wiring_.bars[at(b)].upper = balance[metal.find_set(at(b))] >= 0;
  }

  WiringGraph& graph_;
  Wiring wiring_;
  std::map<int, int> bar_of_;
};

/// Strings whose middles are tied stand as one bank. Empty where they do not make one.
std::optional<Wiring> with_ties(const network::Network& network) {
  WiringGraph graph(network);
  const std::vector<Chain> chains = set_ties_aside(graph);
  if (chains.empty()) return std::nullopt;
  stack_series_strings(graph);
  std::vector<Tie> ties;
  if (!attach_ties(graph, chains, ties)) return std::nullopt;
  Wiring wiring = Builder(graph).build();
  wiring.ties = std::move(ties);
  if (!order_banks(wiring)) return std::nullopt;
  return wiring;
}

}  // namespace

void turn(std::vector<Piece>& pieces) {
  std::reverse(pieces.begin(), pieces.end());
  for (Piece& piece : pieces) {
    std::reverse(piece.elements.begin(), piece.elements.end());
    piece.reversed = !piece.reversed;
  }
}

Wiring make_wiring(const network::Network& network) {
  if (auto wiring = with_ties(network)) return std::move(*wiring);
  WiringGraph graph(network);
  stack_series_strings(graph);
  return Builder(graph).build();
}

}  // namespace ohmtrail::render
