#include "render/flow.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <optional>

#include "units/index.hpp"

namespace ohmtrail::render {
namespace {

std::optional<double> held(const Wiring& wiring, const Bar& bar) {
  if (bar.item < 0) return std::nullopt;
  switch (wiring.items[at(bar.item)].kind) {
    case ItemKind::supply:
    case ItemKind::charger:
      return 1.0;
    case ItemKind::converter:
      return bar.outlet ? 1.0 : 0.0;
    case ItemKind::load:
      break;
  }
  return 0.0;
}

int other(const Lane& lane, int bar) {
  return lane.left == bar ? lane.right : lane.left;
}

std::vector<int> distances(const Wiring& wiring, const std::vector<double>& potential) {
  std::vector<int> distance(wiring.bars.size(), -1), open;
  for (int b = 0; b < static_cast<int>(wiring.bars.size()); ++b)
    if (potential[at(b)] >= 1 && wiring.bars[at(b)].item >= 0) open.push_back(b), distance[at(b)] = 0;
  for (int seed = 0; seed < static_cast<int>(wiring.bars.size()) || !open.empty();) {
    if (open.empty()) {
      if (distance[at(seed)] < 0) open.push_back(seed), distance[at(seed)] = 0;
      ++seed;
    }
    for (std::size_t k = 0; k < open.size(); ++k)
      for (const int lane : wiring.bars[at(open[k])].lanes) {
        const int next = other(wiring.lanes[at(lane)], open[k]);
        if (distance[at(next)] >= 0) continue;
        distance[at(next)] = distance[at(open[k])] + 1;
        open.push_back(next);
      }
    open.clear();
  }
  return distance;
}

}  // namespace

std::vector<double> potentials(const Wiring& wiring) {
  std::vector<double> potential(wiring.bars.size(), 0.5);
  std::vector<bool> fixed(wiring.bars.size(), false);
  for (std::size_t b = 0; b < wiring.bars.size(); ++b)
    if (const auto value = held(wiring, wiring.bars[b])) potential[b] = *value, fixed[b] = true;
  // Gauss-Seidel; an approximate answer orders the bars as well as an exact one.
  for (int sweep = 0; sweep < 200; ++sweep)
    for (std::size_t b = 0; b < potential.size(); ++b) {
      const Bar& bar = wiring.bars[b];
      if (fixed[b] || bar.lanes.empty()) continue;
      double sum = 0;
      for (const int lane : bar.lanes)
        sum += potential[at(other(wiring.lanes[at(lane)], static_cast<int>(b)))];
      potential[b] = sum / static_cast<double>(bar.lanes.size());
    }
  return potential;
}

std::vector<int> flow_order(const Wiring& wiring) {
  const std::vector<double> potential = potentials(wiring);
  const std::vector<int> distance = distances(wiring, potential);
  std::vector<int> order(wiring.bars.size());
  std::iota(order.begin(), order.end(), 0);
  // Rounded, so that the order does not hang on the last bit.
  const auto level = [&](int b) { return std::lround(potential[at(b)] * 1e4); };
  std::stable_sort(order.begin(), order.end(), [&](int a, int b) {
    if (level(a) != level(b)) return level(a) > level(b);
    return distance[at(a)] < distance[at(b)];
  });
  std::vector<int> place(order.size());
  for (std::size_t k = 0; k < order.size(); ++k) place[at(order[k])] = static_cast<int>(k);
  return place;
}

}  // namespace ohmtrail::render
