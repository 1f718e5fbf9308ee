#include "solve/supplies.hpp"

#include <algorithm>
#include <map>

#include "units/index.hpp"

// Two batteries are in series where the minus of one and the plus of the other are on one net of wires,
// joints and switchgear. Where such a net holds several of each (parallel strings with linked middles), they
// are paired in file order.

namespace ohmtrail::solve {

namespace {

using network::Element;
using network::Role;

bool is_passive(const Element& element) {
  return element.role != Role::battery && element.role != Role::charger && element.role != Role::load &&
         element.role != Role::isolator;
}

Partition nets_of(const network::Network& network) {
  Partition nets(static_cast<int>(network.points.size()));
  for (const Element& element : network.elements) {
    if (!element.active || !is_passive(element)) continue;
    nets.join(element.from, element.to);
  }
  return nets;
}

/// Per element: the battery that stands in series below it (its plus on this one's minus); −1: none.
std::vector<int> series_links(const network::Network& network) {
  Partition nets = nets_of(network);
  std::map<int, std::vector<int>> pluses_of_net;
  const auto each_battery = [&](auto&& visit) {
    for (std::size_t k = 0; k < network.elements.size(); ++k) {
      const Element& element = network.elements[k];
      if (element.role == Role::battery && element.active) visit(static_cast<int>(k), element);
    }
  };
  each_battery([&](int k, const Element& battery) { pluses_of_net[nets.find(battery.from)].push_back(k); });
  std::vector<int> below(network.elements.size(), -1);
  each_battery([&](int k, const Element& battery) {
    auto& candidates = pluses_of_net[nets.find(battery.to)];
    const auto next =
        std::find_if(candidates.begin(), candidates.end(), [&](int other) { return other != k; });
    if (next == candidates.end()) return;
    below[at(k)] = *next;
    candidates.erase(next);
  });
  return below;
}

Supply string_from(int top, const std::vector<int>& below, const network::Network& network,
                   const Solution& solution, std::vector<char>& used) {
  Supply supply;
  supply.plus = network.elements[at(top)].from;
  for (int k = top; k >= 0 && !used[at(k)]; k = below[at(k)]) {
    used[at(k)] = 1;
    supply.elements.push_back(k);
    supply.minus = network.elements[at(k)].to;
    supply.open_circuit += network.elements[at(k)].voltage.si();
    supply.terminal += solution.drop[at(k)];
    supply.power -= solution.drop[at(k)] * solution.current[at(k)];
  }
  std::sort(supply.elements.begin(), supply.elements.end());
  return supply;
}

}  // namespace

std::vector<Supply> find_supplies(const network::Network& network, const Islands& islands,
                                  const Solution& solution) {
  const std::vector<int> below = series_links(network);
  std::vector<char> is_below(below.size(), 0);
  for (const int k : below) {
    if (k >= 0) is_below[at(k)] = 1;
  }
  std::vector<Supply> supplies;
  std::vector<char> used(below.size(), 0);
  const auto add_where = [&](auto&& starts) {
    for (std::size_t k = 0; k < below.size(); ++k) {
      const Element& element = network.elements[k];
      const bool source = element.role == Role::battery || element.role == Role::charger;
      if (!source || !element.active || used[k] || !starts(k)) continue;
      supplies.push_back(string_from(static_cast<int>(k), below, network, solution, used));
      supplies.back().island = islands.of_point[at(supplies.back().plus)];
    }
  };
  add_where([&](std::size_t k) { return !is_below[k]; });
  add_where(
      [](std::size_t) { return true; });  // batteries in a ring have no top: the first in the file is it
  std::sort(supplies.begin(), supplies.end(),
            [](const Supply& a, const Supply& b) { return a.elements.front() < b.elements.front(); });
  return supplies;
}

Feeders::Feeders(const network::Network& network, const std::vector<Supply>& supplies) : supplies_(supplies) {
  for (const Supply& supply : supplies)
    if (network.elements[at(supply.elements.front())].origin.part == network::Part::converter_out)
      outputs_.push_back(&supply);
  if (!outputs_.empty()) nets_ = nets_of(network);
}

const Supply* Feeders::strongest(int island) const {
  const Supply* best = nullptr;
  for (const Supply& supply : supplies_)
    if (supply.island == island && (!best || supply.power > best->power)) best = &supply;
  return best;
}

const Supply* Feeders::of(int plus, int island) {
  const Supply* best = strongest(island);
  if (!nets_ || !best || nets_->find(best->plus) == nets_->find(plus)) return best;
  for (const Supply* output : outputs_)
    if (nets_->find(output->plus) == nets_->find(plus)) return output;
  return best;
}

}  // namespace ohmtrail::solve
