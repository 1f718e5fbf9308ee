#include "diagnose/next/reach.hpp"

#include <algorithm>
#include <limits>
#include <queue>

#include "ohmtrail/netlist/names.hpp"

namespace ohmtrail::diagnose::next {
namespace {

// The given point that a derived one belongs to; empty for a plain name.
std::string stud_of(const netlist::System& system, const std::string& point) {
  const netlist::SplitName name = netlist::split_point_name(point);
  if (name.part.empty()) return "";
  const auto run = std::find_if(system.runs.begin(), system.runs.end(),
                                [&](const netlist::Run& r) { return r.id == name.owner; });
  if (run == system.runs.end()) return "";
  if (name.part.starts_with("return")) {
    if (!run->return_conductor) return "";
    return name.part.starts_with("return-from") ? run->return_conductor->from : run->return_conductor->to;
  }
  return name.part.starts_with("from") ? run->from : run->to;
}

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

std::string point_in_words(const netlist::System& system, const std::string& point) {
  const auto quoted = [&](const std::string& name) {
    const auto found = system.points.find(name);
    const bool placed = found != system.points.end() && !found->second.place.empty();
    return '"' + name + '"' + (placed ? " (" + found->second.place + ')' : "");
  };
  const std::string stud = stud_of(system, point);
  if (stud.empty()) return quoted(point);
  const netlist::SplitName name = netlist::split_point_name(point);
  const bool metal = name.part.ends_with("-metal");
  const std::string whose =
      (name.part.starts_with("return") ? "the return of \"" : "\"") + std::string(name.owner) + '"';
  return (metal ? "the lug's metal of " : "the barrel of ") + whose + " at " + quoted(stud);
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
