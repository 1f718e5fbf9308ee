#include "render/banks.hpp"

#include <algorithm>
#include <map>
#include <set>

#include "units/index.hpp"

namespace ohmtrail::render {
namespace {

using Neighbours = std::map<int, std::set<int>>;

Neighbours neighbours_of(const Wiring& wiring) {
  Neighbours neighbours;
  for (const Tie& tie : wiring.ties) {
    neighbours[tie.left].insert(tie.right);
    neighbours[tie.right].insert(tie.left);
  }
  return neighbours;
}

/// The items from `start` on, each tied to the one before; empty where they branch or close a ring.
std::vector<int> walk(const Neighbours& neighbours, int start) {
  std::vector<int> order{start};
  for (int before = -1, here = start;;) {
    const std::set<int>& next_to = neighbours.at(here);
    if (next_to.size() > 2 || next_to.contains(here)) return {};
    const auto next = std::find_if(next_to.begin(), next_to.end(), [&](int n) { return n != before; });
    if (next == next_to.end()) return order;
    if (*next == start) return {};
    before = here;
    here = *next;
    order.push_back(here);
  }
}

bool same_shape(const Item& a, const Item& b) {
  return a.elements.size() == b.elements.size() &&
         std::equal(a.links.begin(), a.links.end(), b.links.begin(), b.links.end(),
                    [](const auto& p, const auto& q) { return p.size() == q.size(); });
}

/// Two ties between the same two places would lie on each other.
bool has_double_tie(const Wiring& wiring) {
  std::set<std::pair<std::set<int>, std::pair<int, bool>>> known;
  for (const Tie& tie : wiring.ties)
    if (!known.insert({{tie.left, tie.right}, {tie.junction, tie.below_link}}).second) return true;
  return false;
}

void turn(Tie& tie) {
  std::swap(tie.left, tie.right);
  turn(tie.pieces);
}

}  // namespace

bool order_banks(Wiring& wiring) {
  const Neighbours neighbours = neighbours_of(wiring);
  std::map<int, std::size_t> place;
  for (const auto& [item, next_to] : neighbours) {
    if (place.contains(item) || next_to.size() != 1) continue;
    const std::vector<int> order = walk(neighbours, item);
    if (order.empty()) return false;
    for (const int member : order) {
      if (!same_shape(wiring.items[at(order.front())], wiring.items[at(member)])) return false;
      place.emplace(member, place.size());
    }
    wiring.banks.push_back(order);
  }
  if (place.size() != neighbours.size() || has_double_tie(wiring))
    return false;  // a ring has no end to begin at
  for (Tie& tie : wiring.ties)
    if (place.at(tie.left) > place.at(tie.right)) turn(tie);
  return true;
}

}  // namespace ohmtrail::render
