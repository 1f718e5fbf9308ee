#include "render/wiring.hpp"

#include <algorithm>
#include <map>
#include <numeric>
#include <set>

namespace ohmtrail::render {
namespace {

using network::Element;
using network::Part;
using network::Role;
using network::Section;

/// A run or a device in line, between two points of the netlist.
struct Edge {
  int from, to;
  bool is_run;
  std::vector<int> elements;
};

/// Where an item touches a point.
struct Pin {
  int item, point;
  bool top, outlet;
};

bool is_return(Part part) {
  return part == Part::return_from || part == Part::return_from_crimp || part == Part::return_wire ||
         part == Part::return_to_crimp || part == Part::return_to;
}

bool is_item(Role role) {
  return role == Role::battery || role == Role::charger || role == Role::load;
}

class UnionFind {
 public:
  explicit UnionFind(std::size_t size) : parent_(size) { std::iota(parent_.begin(), parent_.end(), 0); }
  int find(int a) {
    while (parent_[index(a)] != a) a = parent_[index(a)] = parent_[index(parent_[index(a)])];
    return a;
  }
  void join(int a, int b) { parent_[index(find(b))] = find(a); }

 private:
  static std::size_t index(int i) { return static_cast<std::size_t>(i); }
  std::vector<int> parent_;
};

class Builder {
 public:
  explicit Builder(const network::Network& network)
      : network_(network), at_point_(network.points.size()), pins_at_(network.points.size()) {}

  Wiring build() {
    collect_edges();
    collect_items();
    index_points();
    stack_series_strings();
    choose_bars();
    trace_lanes();
    hang_pins();
    choose_halves();
    return std::move(wiring_);
  }

 private:
  static std::size_t at(int i) { return static_cast<std::size_t>(i); }
  const Element& element(int i) const { return network_.elements[at(i)]; }

  void collect_edges() {
    std::map<std::pair<std::size_t, bool>, std::size_t> runs;
    for (int i = 0; i < static_cast<int>(network_.elements.size()); ++i) {
      const Element& e = element(i);
      if (is_item(e.role)) continue;
      if (e.origin.section != Section::runs) {
        edges_.push_back({e.from, e.to, false, {i}});
        continue;
      }
      const auto [place, fresh] = runs.try_emplace({e.origin.index, is_return(e.origin.part)}, edges_.size());
      if (fresh) edges_.push_back({e.from, e.to, true, {}});
      edges_[place->second].elements.push_back(i);
      edges_[place->second].to = e.to;
    }
  }

  void collect_items() {
    for (int i = 0; i < static_cast<int>(network_.elements.size()); ++i) {
      const Element& e = element(i);
      if (!is_item(e.role)) continue;
      const bool outlet = e.origin.part == Part::converter_out;
      if (outlet && !wiring_.items.empty() && wiring_.items.back().kind == ItemKind::converter)
        wiring_.items.back().elements.push_back(i);
      else
        wiring_.items.push_back({kind_of(e), {i}, {}});
      const int item = static_cast<int>(wiring_.items.size()) - 1;
      pins_.push_back({item, e.from, true, outlet});
      pins_.push_back({item, e.to, false, outlet});
    }
  }

  static ItemKind kind_of(const Element& e) {
    if (e.origin.section == Section::converters) return ItemKind::converter;
    if (e.role == Role::battery) return ItemKind::supply;
    return e.role == Role::charger ? ItemKind::charger : ItemKind::load;
  }

  void index_points() {
    for (std::size_t k = 0; k < edges_.size(); ++k) {
      at_point_[at(edges_[k].from)].push_back(static_cast<int>(k));
      at_point_[at(edges_[k].to)].push_back(static_cast<int>(k));
    }
    for (std::size_t k = 0; k < pins_.size(); ++k)
      pins_at_[at(pins_[k].point)].push_back(static_cast<int>(k));
    used_.assign(edges_.size(), false);
  }

  int far_end(int edge, int point) const {
    const Edge& e = edges_[at(edge)];
    return e.from == point ? e.to : e.from;
  }

  Piece piece(int edge, int start) const {
    const Edge& e = edges_[at(edge)];
    Piece p{e.is_run, e.elements, e.from != start};
    if (p.reversed) std::reverse(p.elements.begin(), p.elements.end());
    return p;
  }

  /// The plain chain that leaves `point` by `edge`, up to the next point that is not a mere joint of two.
  std::pair<std::vector<int>, int> chain(int point, int edge) const {
    std::vector<int> edges{edge};
    int end = far_end(edge, point);
    while (passes(end) && end != point && edges.size() <= edges_.size()) {
      const auto& two = at_point_[at(end)];
      const int next = two[0] == edges.back() ? two[1] : two[0];
      edges.push_back(next);
      end = far_end(next, end);
    }
    return {edges, end};
  }

  bool passes(int point) const {
    return at_point_[at(point)].size() == 2 && pins_at_[at(point)].empty() && !forced_.contains(point);
  }

  bool is_battery_pin(int pin) const {
    return wiring_.items[at(pins_[at(pin)].item)].kind == ItemKind::supply;
  }

  /// The battery whose plus hangs, by a plain chain and nothing else, from the minus of the one with pin
  /// `minus`. −1: none. `edges` receives the chain from top to bottom.
  int below(const Pin& minus, std::vector<int>& edges) const {
    int end = minus.point;
    if (pins_at_[at(end)].size() == 1 && at_point_[at(end)].size() == 1)
      std::tie(edges, end) = chain(end, at_point_[at(end)][0]);
    else if (pins_at_[at(end)].size() != 2 || !at_point_[at(end)].empty())
      return -1;
    const std::size_t pins_wanted = end == minus.point ? 2 : 1;
    if (pins_at_[at(end)].size() != pins_wanted || at_point_[at(end)].size() != (edges.empty() ? 0u : 1u))
      return -1;
    for (const int k : pins_at_[at(end)])
      if (is_battery_pin(k) && pins_[at(k)].top && pins_[at(k)].item != minus.item) return pins_[at(k)].item;
    return -1;
  }

  void stack_series_strings() {
    std::vector<int> next(wiring_.items.size(), -1);
    std::vector<bool> hangs(wiring_.items.size(), false);
    std::vector<std::vector<int>> links(wiring_.items.size());
    UnionFind strings(wiring_.items.size());
    for (const Pin& pin : pins_) {
      if (pin.top || wiring_.items[at(pin.item)].kind != ItemKind::supply) continue;
      std::vector<int> edges;
      const int lower = below(pin, edges);
      if (lower < 0 || strings.find(lower) == strings.find(pin.item)) continue;
      strings.join(pin.item, lower);
      next[at(pin.item)] = lower;
      hangs[at(lower)] = true;
      links[at(pin.item)] = edges;
    }
    for (int top = 0; top < static_cast<int>(next.size()); ++top)
      if (!hangs[at(top)] && next[at(top)] >= 0) stack(top, next, links);
    drop_absorbed(hangs);
  }

  void stack(int top, const std::vector<int>& next, const std::vector<std::vector<int>>& links) {
    Item& string = wiring_.items[at(top)];
    for (int upper = top; next[at(upper)] >= 0; upper = next[at(upper)]) {
      const int lower = next[at(upper)];
      std::vector<Piece> link;
      int point = element(wiring_.items[at(upper)].elements.back()).to;
      if (upper == top) point = element(string.elements[0]).to;
      for (const int edge : links[at(upper)]) {
        used_[at(edge)] = true;
        link.push_back(piece(edge, point));
        point = far_end(edge, point);
      }
      string.links.push_back(std::move(link));
      string.elements.push_back(wiring_.items[at(lower)].elements[0]);
      for (Pin& pin : pins_) {
        if (pin.item == upper && !pin.top && upper == top) pin.point = -1;
        if (pin.item != lower) continue;
        if (pin.top || next[at(lower)] >= 0)
          pin.point = -1;
        else
          pin.item = top;
      }
    }
  }

  /// Batteries that became part of a string above are items no more; pins with point −1 went with their
  /// links.
  void drop_absorbed(const std::vector<bool>& hangs) {
    std::vector<int> renamed(hangs.size(), -1);
    std::vector<Item> kept;
    for (std::size_t i = 0; i < hangs.size(); ++i) {
      if (hangs[i]) continue;
      renamed[i] = static_cast<int>(kept.size());
      kept.push_back(std::move(wiring_.items[i]));
    }
    wiring_.items = std::move(kept);
    std::erase_if(pins_, [](const Pin& pin) { return pin.point < 0; });
    for (auto& pins : pins_at_) pins.clear();
    for (std::size_t k = 0; k < pins_.size(); ++k) {
      pins_[k].item = renamed[at(pins_[k].item)];
      pins_at_[at(pins_[k].point)].push_back(static_cast<int>(k));
    }
    for (auto& edges : at_point_) std::erase_if(edges, [&](int e) { return used_[at(e)]; });
  }

  int bar_at(int point) {
    if (const auto found = bar_of_.find(point); found != bar_of_.end()) return found->second;
    const int bar = static_cast<int>(wiring_.bars.size());
    wiring_.bars.push_back({});
    wiring_.bars.back().point = point;
    return bar_of_[point] = bar;
  }

  void choose_bars() {
    for (int p = 0; p < static_cast<int>(network_.points.size()); ++p)
      if (!passes(p) && (!at_point_[at(p)].empty() || !pins_at_[at(p)].empty())) bar_at(p);
    break_loops();
  }

  /// A chain that comes back to its own bar, or rings without any bar, gets one more bar on its way.
  void break_loops() {
    for (int p = 0; p < static_cast<int>(network_.points.size()); ++p) {
      if (passes(p)) continue;
      for (const int edge : at_point_[at(p)]) {
        const auto [edges, end] = chain(p, edge);
        if (end == p && edges.size() > 1) force_bar(far_end(edge, p));
      }
    }
    std::vector<bool> reached(network_.points.size(), false);
    for (const auto& [point, bar] : std::map<int, int>(bar_of_.begin(), bar_of_.end())) mark(point, reached);
    for (int p = 0; p < static_cast<int>(network_.points.size()); ++p) {
      if (reached[at(p)] || at_point_[at(p)].empty()) continue;
      force_bar(p);
      force_bar(far_end(at_point_[at(p)][0], p));
      mark(p, reached);
    }
  }

  void force_bar(int point) {
    forced_.insert(point);
    bar_at(point);
  }

  void mark(int start, std::vector<bool>& reached) const {
    std::vector<int> open{start};
    while (!open.empty()) {
      const int p = open.back();
      open.pop_back();
      if (reached[at(p)]) continue;
      reached[at(p)] = true;
      for (const int edge : at_point_[at(p)]) open.push_back(far_end(edge, p));
    }
  }

  void add_lane(Lane lane) {
    const int number = static_cast<int>(wiring_.lanes.size());
    wiring_.bars[at(lane.left)].lanes.push_back(number);
    wiring_.bars[at(lane.right)].lanes.push_back(number);
    wiring_.lanes.push_back(std::move(lane));
  }

  void trace_lanes() {
    for (int first = 0; first < static_cast<int>(edges_.size()); ++first) {
      if (used_[at(first)]) continue;
      // Walk back to the bar where the chain of this edge begins, then forward over all of it.
      const int start = chain(edges_[at(first)].to, first).second;
      const int leaving = chain(edges_[at(first)].to, first).first.back();
      const auto [edges, end] = chain(start, leaving);
      Lane lane{bar_at(start), bar_at(end), {}};
      int point = start;
      for (const int edge : edges) {
        used_[at(edge)] = true;
        lane.pieces.push_back(piece(edge, point));
        point = far_end(edge, point);
      }
      add_lane(std::move(lane));
    }
  }

  /// A pin's own upright line is the bar of its point where that is a battery's post or serves little else;
  /// otherwise the bar stands free and the pin is bolted to it.
  bool may_anchor(const Pin& pin) const {
    const auto& others = pins_at_[at(pin.point)];
    if (wiring_.items[at(pin.item)].kind == ItemKind::supply) {
      const auto first = std::find_if(others.begin(), others.end(), [&](int k) { return is_battery_pin(k); });
      return &pins_[at(*first)] == &pin;
    }
    return others.size() == 1 && at_point_[at(pin.point)].size() <= 2;
  }

  void hang_pins() {
    for (const Pin& pin : pins_) {
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
    UnionFind metal(wiring_.bars.size());
    for (const Lane& lane : wiring_.lanes) metal.join(lane.left, lane.right);
    std::vector<int> balance(wiring_.bars.size(), 0);
    for (int b = 0; b < static_cast<int>(wiring_.bars.size()); ++b) {
      const Bar& bar = wiring_.bars[at(b)];
      if (bar.item >= 0) balance[at(metal.find(b))] += bar.top ? 1 : -1;
    }
    for (int b = 0; b < static_cast<int>(wiring_.bars.size()); ++b)
      wiring_.bars[at(b)].upper = balance[at(metal.find(b))] >= 0;
  }

  const network::Network& network_;
  Wiring wiring_;
  std::vector<Edge> edges_;
  std::vector<Pin> pins_;
  std::vector<std::vector<int>> at_point_, pins_at_;
  std::vector<bool> used_;
  std::map<int, int> bar_of_;
  std::set<int> forced_;
};

}  // namespace

Wiring make_wiring(const network::Network& network) {
  return Builder(network).build();
}

}  // namespace ohmtrail::render
