#include "route.hpp"

#include <algorithm>
#include <cmath>

#include "index.hpp"
#include "widest_path.hpp"

namespace ohmtrail::diagnose {
namespace {

Leg leg_of(const solve::CaseSolution& solved, const Hop& hop) {
  Leg leg{hop.element, hop.forward};
  leg.lost = lost_in(solved, leg);
  return leg;
}

Leg supplying(const solve::CaseSolution& solved, int element) {
  Leg leg{element, false};
  leg.supplies = true;
  leg.lost = lost_in(solved, leg);
  return leg;
}

bool append(std::vector<Leg>& legs, const solve::CaseSolution& solved, int from, int to) {
  const auto path = widest_path_across_sources(solved, from, to);
  if (!path) return false;
  for (const auto& hop : *path) legs.push_back(leg_of(solved, hop));
  return true;
}

/// The battery of a string that stands with its minus at a point, or whose link leads there; the first in the
/// file.
std::vector<int>::iterator next_above(std::vector<int>& waiting, const solve::CaseSolution& solved,
                                      int point) {
  const auto& elements = solved.network.elements;
  const auto direct =
      std::find_if(waiting.begin(), waiting.end(), [&](int k) { return at(elements, k).to == point; });
  if (direct != waiting.end()) return direct;
  return std::find_if(waiting.begin(), waiting.end(), [&](int k) {
    return at(elements, k).from != point && widest_path(solved, point, at(elements, k).to).has_value();
  });
}

/// From the string's minus up: battery, link, battery …
bool append_source(std::vector<Leg>& legs, const solve::CaseSolution& solved, const solve::Supply& supply) {
  std::vector<int> waiting = supply.elements;
  for (int point = supply.minus; !waiting.empty();) {
    const auto next = next_above(waiting, solved, point);
    if (next == waiting.end()) return false;
    if (!append(legs, solved, point, at(solved.network.elements, *next).to)) return false;
    legs.push_back(supplying(solved, *next));
    point = at(solved.network.elements, *next).from;
    waiting.erase(next);
  }
  return true;
}

const solve::Supply* supply_of(const solve::CaseSolution& solved, const solve::LoadResult& load) {
  const auto found =
      std::find_if(solved.supplies.begin(), solved.supplies.end(),
                   [&](const solve::Supply& one) { return one.elements.front() == load.supply; });
  return load.supply < 0 || found == solved.supplies.end() ? nullptr : &*found;
}

}  // namespace

std::vector<Leg> Route::legs() const {
  std::vector<Leg> all = source;
  all.insert(all.end(), there.begin(), there.end());
  all.insert(all.end(), back.begin(), back.end());
  return all;
}

double lost_in(const solve::CaseSolution& other, const Leg& leg) {
  const double drop = at(other.solution.drop, leg.element);
  if (leg.supplies) return at(other.network.elements, leg.element).voltage.si() - drop;
  return leg.forward ? drop : -drop;
}

std::optional<Route> route(const solve::CaseSolution& solved, const solve::LoadResult& load) {
  const auto* supply = load.running ? supply_of(solved, load) : nullptr;
  if (!supply) return std::nullopt;
  const auto& element = at(solved.network.elements, load.element);
  Route way;
  way.supply = supply;
  const bool joined = append_source(way.source, solved, *supply) &&
                      append(way.there, solved, supply->plus, element.from) &&
                      append(way.back, solved, element.to, supply->minus);
  return joined ? std::optional(std::move(way)) : std::nullopt;
}

std::optional<std::vector<Leg>> charging_way(const solve::CaseSolution& solved, const solve::Supply& charger,
                                             const solve::Supply& batteries) {
  std::vector<Leg> legs, string;
  if (!append(legs, solved, charger.plus, batteries.plus) || !append_source(string, solved, batteries) ||
      !append(legs, solved, batteries.minus, charger.minus))
    return std::nullopt;
  for (const auto& leg : string) {  // found from the minus up; a charger's current goes down
    if (leg.supplies) continue;
    legs.push_back({leg.element, !leg.forward});
    legs.back().lost = -leg.lost;
  }
  return legs;
}

}  // namespace ohmtrail::diagnose
