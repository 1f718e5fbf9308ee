#include "widest_path.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <queue>

#include "index.hpp"

// Two searches: the first finds how wide the widest path is (Dijkstra on the least current of a path, largest
// first), the second the shortest path among those that are as wide (breadth first, elements in file order).

namespace ohmtrail::diagnose {
namespace {

using network::Role;

enum class May { follow_flow, oppose_flow, cross_sources };

/// Currents of one path are equal only up to rounding.
constexpr double as_wide = 1 - 1e-9;

class Search {
 public:
  Search(const solve::CaseSolution& solved, May may)
      : solved_(solved), may_(may), fans_(solved.network.points.size()) {
    const auto& elements = solved.network.elements;
    for (int k = 0; k < static_cast<int>(elements.size()); ++k) {
      if (!passable(k)) continue;
      at(fans_, at(elements, k).from).push_back({k, true});
      at(fans_, at(elements, k).to).push_back({k, false});
    }
  }

  std::optional<std::vector<Hop>> between(int from, int to) const {
    const double width = widest(from, to);
    if (width < 0) return std::nullopt;
    return shortest(from, to, width * as_wide);
  }

 private:
  bool passable(int k) const {
    const auto& element = at(solved_.network.elements, k);
    const bool source = element.role == Role::battery || element.role == Role::charger;
    return element.active && element.role != Role::load && (!source || may_ == May::cross_sources) &&
           std::isfinite(at(solved_.solution.current, k));
  }

  /// A; negative: not that way.
  double width(const Hop& hop) const {
    const double current = at(solved_.solution.current, hop.element) * (hop.forward ? 1 : -1);
    return may_ == May::follow_flow && current < 0 ? -1 : std::abs(current);
  }

  int beyond(const Hop& hop) const {
    const auto& element = at(solved_.network.elements, hop.element);
    return hop.forward ? element.to : element.from;
  }

  /// The least current of the widest path; negative: none.
  double widest(int from, int to) const {
    std::vector<double> best(fans_.size(), -1);
    std::priority_queue<std::pair<double, int>> open;
    at(best, from) = std::numeric_limits<double>::infinity();
    open.emplace(at(best, from), from);
    while (!open.empty()) {
      const auto [reached, point] = open.top();
      open.pop();
      if (point == to) return reached;
      if (reached < at(best, point)) continue;
      for (const auto& hop : at(fans_, point)) {
        const double through = std::min(reached, width(hop));
        if (through <= at(best, beyond(hop))) continue;
        at(best, beyond(hop)) = through;
        open.emplace(through, beyond(hop));
      }
    }
    return -1;
  }

  std::optional<std::vector<Hop>> shortest(int from, int to, double least) const {
    std::vector<Hop> came_by(fans_.size());
    std::vector<bool> seen(fans_.size());
    std::queue<int> open({from});
    seen[static_cast<std::size_t>(from)] = true;
    while (!open.empty() && open.front() != to) {
      for (const auto& hop : at(fans_, open.front())) {
        const auto next = static_cast<std::size_t>(beyond(hop));
        if (width(hop) < least || seen[next]) continue;
        seen[next] = true;
        came_by[next] = hop;
        open.push(beyond(hop));
      }
      open.pop();
    }
    return open.empty() ? std::nullopt : std::optional(trace_back(came_by, from, to));
  }

  std::vector<Hop> trace_back(const std::vector<Hop>& came_by, int from, int to) const {
    std::vector<Hop> hops;
    for (int point = to; point != from;) {
      hops.push_back(at(came_by, point));
      const auto& element = at(solved_.network.elements, hops.back().element);
      point = hops.back().forward ? element.from : element.to;
    }
    std::reverse(hops.begin(), hops.end());
    return hops;
  }

  const solve::CaseSolution& solved_;
  May may_;
  std::vector<std::vector<Hop>> fans_;  ///< per point, in file order
};

}  // namespace

std::optional<std::vector<Hop>> widest_path(const solve::CaseSolution& solved, int from, int to) {
  if (from == to) return std::vector<Hop>{};
  auto path = Search(solved, May::follow_flow).between(from, to);
  return path ? path : Search(solved, May::oppose_flow).between(from, to);
}

std::optional<std::vector<Hop>> widest_path_across_sources(const solve::CaseSolution& solved, int from,
                                                           int to) {
  auto path = widest_path(solved, from, to);
  return path ? path : Search(solved, May::cross_sources).between(from, to);
}

}  // namespace ohmtrail::diagnose
