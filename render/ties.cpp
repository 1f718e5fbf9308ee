#include <algorithm>

#include "render/series_strings.hpp"
#include "units/index.hpp"

namespace ohmtrail::render {
namespace {

/// A point that is a battery's post and nothing else's.
bool is_battery_post(const WiringGraph& graph, int point) {
  const auto& pins = graph.pins_at[at(point)];
  return !pins.empty() &&
         std::all_of(pins.begin(), pins.end(), [&](int k) { return graph.is_battery_pin(k); });
}

/// Plus of one battery and minus of another: bolted together.
bool is_bolted_middle(const WiringGraph& graph, int point) {
  const auto& pins = graph.pins_at[at(point)];
  return is_battery_post(graph, point) && pins.size() == 2 &&
         graph.pins[at(pins[0])].top != graph.pins[at(pins[1])].top;
}

bool is_plus(const WiringGraph& graph, int point) {
  return graph.pins[at(graph.pins_at[at(point)][0])].top;
}

/// The chains that lead from a battery's post to another's.
std::vector<Chain> chains_between_posts(const WiringGraph& graph, int point) {
  std::vector<Chain> chains;
  for (const int edge : graph.at_point[at(point)]) {
    Chain chain = graph.chain(point, edge);
    if (chain.to != point && is_battery_post(graph, chain.to)) chains.push_back(std::move(chain));
  }
  return chains;
}

bool is_link(const WiringGraph& graph, const Chain& chain) {
  return is_plus(graph, chain.from) != is_plus(graph, chain.to);
}

/// Inside a string: one link to the next battery, all else leads to other batteries' posts.
bool is_middle(const WiringGraph& graph, int point) {
  if (!is_battery_post(graph, point)) return false;
  const auto chains = chains_between_posts(graph, point);
  if (chains.size() != graph.at_point[at(point)].size()) return false;
  if (is_bolted_middle(graph, point)) return true;
  const auto links =
      std::count_if(chains.begin(), chains.end(), [&](const Chain& one) { return is_link(graph, one); });
  return graph.pins_at[at(point)].size() == 1 && links == 1;
}

bool is_tie(const WiringGraph& graph, const Chain& chain) {
  if (!is_middle(graph, chain.from) || !is_middle(graph, chain.to)) return false;
  const bool bolted = is_bolted_middle(graph, chain.from) || is_bolted_middle(graph, chain.to);
  return bolted || !is_link(graph, chain);
}

struct TieEnd {
  int item = -1, junction = 0;
  bool below_link = false;
};

TieEnd end_at(const WiringGraph& graph, int point) {
  for (int i = 0; i < static_cast<int>(graph.items.size()); ++i) {
    const Item& item = graph.items[at(i)];
    if (item.kind != ItemKind::supply) continue;
    for (int k = 0; k + 1 < static_cast<int>(item.elements.size()); ++k) {
      if (graph.element(item.elements[at(k)]).to == point) return {i, k, false};
      if (graph.element(item.elements[at(k + 1)]).from == point) return {i, k, true};
    }
  }
  return {};
}

}  // namespace

std::vector<Chain> set_ties_aside(WiringGraph& graph) {
  std::vector<Chain> ties;
  for (int p = 0; p < static_cast<int>(graph.at_point.size()); ++p) {
    if (!is_battery_post(graph, p)) continue;
    for (Chain& chain : chains_between_posts(graph, p))
      if (chain.to > p && is_tie(graph, chain)) ties.push_back(std::move(chain));
  }
  for (const Chain& tie : ties) graph.set_aside(tie.edges);
  return ties;
}

bool attach_ties(const WiringGraph& graph, const std::vector<Chain>& chains, std::vector<Tie>& ties) {
  for (const Chain& chain : chains) {
    const TieEnd from = end_at(graph, chain.from), to = end_at(graph, chain.to);
    if (from.item < 0 || to.item < 0 || from.junction != to.junction || from.below_link != to.below_link)
      return false;
    ties.push_back({from.item, to.item, from.junction, from.below_link, graph.pieces(chain)});
  }
  return true;
}

}  // namespace ohmtrail::render
