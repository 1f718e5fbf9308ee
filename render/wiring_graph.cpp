#include "render/wiring_graph.hpp"

#include <algorithm>
#include <map>

namespace ohmtrail::render {
namespace {

using network::Element;
using network::Part;
using network::Role;
using network::Section;

bool is_return(Part part) {
  return part == Part::return_from || part == Part::return_from_crimp || part == Part::return_wire ||
         part == Part::return_to_crimp || part == Part::return_to;
}

bool is_item(Role role) {
  return role == Role::battery || role == Role::charger || role == Role::load;
}

ItemKind kind_of(const Element& e) {
  if (e.origin.section == Section::converters) return ItemKind::converter;
  if (e.role == Role::battery) return ItemKind::supply;
  return e.role == Role::charger ? ItemKind::charger : ItemKind::load;
}

}  // namespace

WiringGraph::WiringGraph(const network::Network& network)
    : at_point(network.points.size()), pins_at(network.points.size()), network_(network) {
  collect_edges();
  collect_items();
  for (std::size_t k = 0; k < edges.size(); ++k) {
    at_point[at(edges[k].from)].push_back(static_cast<int>(k));
    at_point[at(edges[k].to)].push_back(static_cast<int>(k));
  }
  index_pins();
  used.assign(edges.size(), false);
}

void WiringGraph::index_pins() {
  for (auto& list : pins_at) list.clear();
  for (std::size_t k = 0; k < pins.size(); ++k) pins_at[at(pins[k].point)].push_back(static_cast<int>(k));
}

void WiringGraph::set_aside(const std::vector<int>& chosen) {
  for (const int edge : chosen) used[at(edge)] = true;
  for (auto& list : at_point) std::erase_if(list, [&](int e) { return used[at(e)]; });
}

void WiringGraph::collect_edges() {
  std::map<std::pair<std::size_t, bool>, std::size_t> runs;
  for (int i = 0; i < static_cast<int>(network_.elements.size()); ++i) {
    const Element& e = element(i);
    if (is_item(e.role)) continue;
    if (e.origin.section != Section::runs) {
      edges.push_back({e.from, e.to, false, {i}});
      continue;
    }
    const auto [place, fresh] = runs.try_emplace({e.origin.index, is_return(e.origin.part)}, edges.size());
    if (fresh) edges.push_back({e.from, e.to, true, {}});
    edges[place->second].elements.push_back(i);
    edges[place->second].to = e.to;
  }
}

void WiringGraph::collect_items() {
  for (int i = 0; i < static_cast<int>(network_.elements.size()); ++i) {
    const Element& e = element(i);
    if (!is_item(e.role)) continue;
    const bool outlet = e.origin.part == Part::converter_out;
    if (outlet && !items.empty() && items.back().kind == ItemKind::converter)
      items.back().elements.push_back(i);
    else
      items.push_back({kind_of(e), {i}, {}});
    const int item = static_cast<int>(items.size()) - 1;
    pins.push_back({item, e.from, true, outlet});
    pins.push_back({item, e.to, false, outlet});
  }
}

int WiringGraph::far_end(int edge, int point) const {
  const Edge& e = edges[at(edge)];
  return e.from == point ? e.to : e.from;
}

Piece WiringGraph::piece(int edge, int start) const {
  const Edge& e = edges[at(edge)];
  Piece p{e.is_run, e.elements, e.from != start};
  if (p.reversed) std::reverse(p.elements.begin(), p.elements.end());
  return p;
}

bool WiringGraph::passes(int point) const {
  return at_point[at(point)].size() == 2 && pins_at[at(point)].empty() && !forced.contains(point);
}

bool WiringGraph::is_battery_pin(int pin) const {
  return items[at(pins[at(pin)].item)].kind == ItemKind::supply;
}

Chain WiringGraph::chain(int point, int edge) const {
  Chain chain{{edge}, point, far_end(edge, point)};
  while (passes(chain.to) && chain.to != point && chain.edges.size() <= edges.size()) {
    const auto& two = at_point[at(chain.to)];
    const int next = two[0] == chain.edges.back() ? two[1] : two[0];
    chain.edges.push_back(next);
    chain.to = far_end(next, chain.to);
  }
  return chain;
}

std::vector<Piece> WiringGraph::pieces(const Chain& chain) const {
  std::vector<Piece> list;
  int point = chain.from;
  for (const int edge : chain.edges) {
    list.push_back(piece(edge, point));
    point = far_end(edge, point);
  }
  return list;
}

}  // namespace ohmtrail::render
