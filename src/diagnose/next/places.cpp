#include "diagnose/next/places.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <numeric>
#include <set>

#include "diagnose/index.hpp"
#include "diagnose/next/reach.hpp"

namespace ohmtrail::diagnose::next {
namespace {

using network::Element;
using network::Role;

constexpr double no_current = 0.05;           // A
constexpr double where_nothing_flows = 0.01;  // of the suspicion counts there
constexpr double least_suspicion = 1e-4;

bool is_end(const Element& element) {
  return element.role == Role::load || element.role == Role::battery || element.role == Role::charger;
}

// Suspicion of each point: the largest fault probability of what ends there, where current makes it show.
std::vector<double> suspicion(const Posterior& posterior, const network::Network& network,
                              const solve::Solution& solution) {
  std::vector<double> out(network.points.size(), least_suspicion * where_nothing_flows);
  for (std::size_t k = 0; k < network.elements.size(); ++k) {
    const Element& element = network.elements[k];
    const auto found = posterior.survey.element_parameter.find(element.id);
    if (found == posterior.survey.element_parameter.end()) continue;
    const bool flows = std::abs(solution.current[k]) > no_current;
    const double chance = std::max(at(posterior.fault, found->second), least_suspicion);
    for (const int p : {element.from, element.to})
      at(out, p) = std::max(at(out, p), chance * (flows ? 1 : where_nothing_flows));
  }
  return out;
}

// Wires in series carry one current: one of each stretch stands for all, the first through which it is a
// plus, for people do not read a minus off a clamp.
class Stretches {
 public:
  explicit Stretches(const network::Network& network)
      : network_(network), terminals_(network.points.size(), 0), group_(network.points.size()) {
    std::iota(group_.begin(), group_.end(), 0);
    for (const Element& e : network.elements) {
      if (!e.active) continue;
      ++at(terminals_, e.from);
      ++at(terminals_, e.to);
    }
    for (const Element& e : network.elements) {
      if (e.active && goes_through(e.from) && goes_through(e.to)) at(group_, root(e.from)) = root(e.to);
    }
  }

  std::vector<int> wires(const std::vector<double>& current) const {
    std::vector<int> out;
    std::map<int, std::size_t> place;  // in `out`, by the root of its stretch
    for (std::size_t k = 0; k < network_.elements.size(); ++k) {
      const Element& e = network_.elements[k];
      if (!e.active || e.role != Role::wire) continue;
      const int wire = static_cast<int>(k);
      const bool a = goes_through(e.from), b = goes_through(e.to);
      if (!a && !b) {
        out.push_back(wire);
        continue;
      }
      const auto [found, is_new] = place.try_emplace(root(a ? e.from : e.to), out.size());
      if (is_new) out.push_back(wire);
      int& standing = out[found->second];
      if (at(current, standing) < 0 && at(current, wire) > 0) standing = wire;
    }
    return out;
  }

 private:
  [[nodiscard]] bool goes_through(int point) const { return at(terminals_, point) == 2; }
  [[nodiscard]] int root(int point) const {
    while (at(group_, point) != point) point = at(group_, point);
    return point;
  }

  const network::Network& network_;
  std::vector<int> terminals_, group_;
};

// Posts of sources and loads that run, at most half of what may be taken.
std::vector<int> posts(const network::Network& network, const std::vector<int>& points, std::size_t most) {
  std::set<int> ends;
  for (const Element& e : network.elements) {
    if (!e.active || !is_end(e)) continue;
    ends.insert({e.from, e.to});
  }
  std::vector<int> out;
  for (const int p : points) {
    if (ends.contains(p) && out.size() < most / 2) out.push_back(p);
  }
  return out;
}

std::vector<int> spread(const network::Network& network, const std::vector<int>& points,
                        const std::vector<double>& suspect, std::size_t most) {
  const std::vector<int> fixed = posts(network, points, most);
  std::set<int> out(fixed.begin(), fixed.end());
  std::vector<int> others;
  std::vector<double> weights;
  for (const int p : points) {
    if (out.contains(p)) continue;
    others.push_back(p);
    weights.push_back(at(suspect, p));
  }
  for (const std::size_t k : at_equal_steps(weights, most - fixed.size()).at) out.insert(others[k]);
  return {out.begin(), out.end()};
}

}  // namespace

EqualSteps at_equal_steps(const std::vector<double>& weights, std::size_t most) {
  EqualSteps out;
  if (most == 0 || weights.empty()) return out;
  const auto capped = [&](double w) { return std::min(w, out.step); };
  out.step = std::numeric_limits<double>::max();
  // What weighs more than a step takes one alone; the others share the steps that are left.
  for (int k = 0; k < 40; ++k) {
    const double sum = std::accumulate(weights.begin(), weights.end(), 0.0,
                                       [&](double total, double w) { return total + capped(w); });
    out.step = std::min(out.step, sum / static_cast<double>(most));
  }
  double sum = 0;
  for (std::size_t k = 0; k < weights.size() && out.at.size() < most; ++k) {
    sum += capped(weights[k]);
    if (sum > (static_cast<double>(out.at.size()) + 0.5) * out.step) out.at.push_back(k);
  }
  return out;
}

Places places_to_touch(const netlist::System& system, const Posterior& posterior,
                       const network::Network& network, const solve::Solution& solution, std::size_t most) {
  Places out;
  for (int p = 0; p < static_cast<int>(network.points.size()); ++p) {
    if (std::isfinite(at(solution.voltage, p)) &&
        reach_of(system, at(network.points, p)) != netlist::Reach::no) {
      out.points.push_back(p);
    }
  }
  out.within_reach = out.points.size();
  if (out.points.size() > most) {
    out.coarse = true;
    out.points = spread(network, out.points, suspicion(posterior, network, solution), most);
  }
  out.branches = Stretches(network).wires(solution.current);
  if (out.branches.size() > most) {
    out.coarse = true;
    out.branches.resize(most);
  }
  return out;
}

}  // namespace ohmtrail::diagnose::next
