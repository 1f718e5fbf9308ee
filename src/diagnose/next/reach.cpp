#include "diagnose/next/reach.hpp"

#include <algorithm>
#include <limits>
#include <queue>

#include "ohmtrail/diagnose/point_in_words.hpp"

namespace ohmtrail::diagnose::next {
namespace {

double length_of(const netlist::System& system, const network::Element& element) {
  return element.role == network::Role::wire && element.origin.section == network::Section::runs
             ? system.runs[element.origin.index].length.si()
             : 0.0;
}

using Edges = std::vector<std::vector<std::pair<int, double>>>;

std::vector<double> shortest(const Edges& edges, int start) {
  std::vector<double> out(edges.size(), std::numeric_limits<double>::infinity());
  using Item = std::pair<double, int>;
  std::priority_queue<Item, std::vector<Item>, std::greater<>> queue;
  queue.emplace(0.0, start);
  while (!queue.empty()) {
    const auto [metres, point] = queue.top();
    queue.pop();
    if (metres >= out[static_cast<std::size_t>(point)]) continue;
    out[static_cast<std::size_t>(point)] = metres;
    for (const auto& [next, length] : edges[static_cast<std::size_t>(point)])
      queue.emplace(metres + length, next);
  }
  return out;
}

}  // namespace

netlist::Reach reach_of(const netlist::System& system, const std::string& point) {
  if (const auto found = system.points.find(point); found != system.points.end()) return found->second.reach;
  const std::string stud = stud_of(system, point);
  const auto found = system.points.find(stud);
  return stud.empty() || found == system.points.end() ? netlist::Reach::easy : found->second.reach;
}

std::vector<std::vector<double>> leads_between(const netlist::System& system, const network::Network& network,
                                               const std::vector<int>& from) {
  Edges edges(network.points.size());
  for (const network::Element& element : network.elements) {
    const double length = length_of(system, element);
    edges[static_cast<std::size_t>(element.from)].emplace_back(element.to, length);
    edges[static_cast<std::size_t>(element.to)].emplace_back(element.from, length);
  }
  std::vector<std::vector<double>> out;
  for (const int start : from) out.push_back(shortest(edges, start));
  return out;
}

}  // namespace ohmtrail::diagnose::next
