#include "plan/feed.hpp"

#include <algorithm>
#include <cctype>
#include <limits>
#include <queue>
#include <string>
#include <tuple>
#include <utility>

#include "units/index.hpp"

namespace ohmtrail::plan {
namespace {

using network::Role;

constexpr double nowhere = std::numeric_limits<double>::infinity();

int other_end(const network::Element& element, int point) {
  return element.from == point ? element.to : element.from;
}

bool is_breaker(const netlist::System& system, const network::Element& element) {
  return element.origin.section == network::Section::switches &&
         system.switches[element.origin.index].kind == trade::SwitchKind::breaker;
}

bool takes_or_gives(Role role) {
  return role == Role::load || role == Role::charger;
}

std::string lower(std::string text) {
  std::transform(text.begin(), text.end(), text.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return text;
}

}  // namespace

bool is_starting_motor(const netlist::Load& load) {
  const std::string words = lower(load.id + " " + load.note);
  for (const char* word : {"starter", "starting motor", "start motor", "cranking"})
    if (words.find(word) != std::string::npos) return true;
  return false;
}

Feed::Feed(const netlist::System& system, const network::Network& network, const Guards& guards)
    : network_(network),
      length_(network.elements.size(), 0),
      area_(network.elements.size(), 0),
      ungrounded_(guards.ungrounded),
      conducts_(network.elements.size(), false),
      stops_(conducts_),
      cranks_(conducts_),
      metres_(network.points.size(), nowhere),
      by_(network.points.size(), -1),
      rank_(network.points.size(), -1),
      at_(network.points.size()) {
  for (std::size_t e = 0; e < network.elements.size(); ++e) {
    const auto& element = network.elements[e];
    at_[at(element.from)].push_back(static_cast<int>(e));
    at_[at(element.to)].push_back(static_cast<int>(e));
    stops_[e] = is_device(system, element) || is_breaker(system, element);
    conducts_[e] = guards.ungrounded[e] && !stops_[e];
    if (element.role != Role::wire) continue;
    length_[e] = system.runs[element.origin.index].length.si();
    area_[e] = system.runs[element.origin.index].gauge.area.si();
  }
  measure();
  mark_cranking(system);
}

void Feed::measure() {
  using Place =
      std::tuple<int, double, int, int>;  // devices passed, metres since, point, element that leads there
  std::priority_queue<Place, std::vector<Place>, std::greater<>> open;
  for (const auto& element : network_.elements)
    if (element.role == Role::battery) open.push({0, 0, element.from, -1}), open.push({0, 0, element.to, -1});
  for (int reached = 0; !open.empty();) {
    const auto [devices, metres, point, by] = open.top();
    open.pop();
    if (rank_[at(point)] >= 0) continue;
    rank_[at(point)] = reached++;
    metres_[at(point)] = devices == 0 ? metres : nowhere;
    by_[at(point)] = by;
    for (const int e : at_[at(point)]) {
      const int next = other_end(network_.elements[at(e)], point);
      if (conducts_[at(e)]) open.push({devices, metres + length_[at(e)], next, e});
      if (stops_[at(e)] && ungrounded_[at(e)]) open.push({devices + 1, 0, next, e});
    }
  }
}

void Feed::mark_cranking(const netlist::System& system) {
  for (const auto& element : network_.elements) {
    if (element.role != Role::load || element.origin.section != network::Section::loads) continue;
    if (!is_starting_motor(system.loads[element.origin.index])) continue;
    for (int point = element.from; by_[at(point)] >= 0;
         point = other_end(network_.elements[at(by_[at(point)])], point))
      cranks_[at(by_[at(point)])] = conducts_[at(by_[at(point)])];
  }
}

int Feed::far_point(int wire) const {
  const auto& element = network_.elements[at(wire)];
  const auto order = [&](int point) {
    return rank_[at(point)] < 0 ? std::numeric_limits<int>::max() : rank_[at(point)];
  };
  return order(element.from) > order(element.to) ? element.from : element.to;
}

Beyond Feed::beyond(int wire) const {
  Beyond result;
  std::vector<bool> seen(network_.points.size(), false);
  const int start = far_point(wire);
  seen[at(other_end(network_.elements[at(wire)], start))] = seen[at(start)] = true;
  std::vector<std::pair<int, double>> open{{start, 0}};
  while (!open.empty()) {
    const auto [point, metres] = open.back();
    open.pop_back();
    result.longest = std::max(result.longest, metres);
    if (at_[at(point)].size() == 1) result.dead_end = true;
    for (const int e : at_[at(point)]) {
      const auto& element = network_.elements[at(e)];
      if (takes_or_gives(element.role)) result.reaches_load = true;
      if (stops_[at(e)]) {
        if (std::find(result.devices.begin(), result.devices.end(), e) == result.devices.end())
          result.devices.push_back(e);
        result.nearest_device = std::min(result.nearest_device.value_or(nowhere), metres);
      }
      if (e == wire || !conducts_[at(e)]) continue;
      const int next = other_end(element, point);
      if (seen[at(next)]) continue;
      seen[at(next)] = true;
      open.emplace_back(next, metres + length_[at(e)]);
    }
  }
  return result;
}

int Feed::upstream_wire(int point) const {
  for (int e = by_[at(point)]; e >= 0; e = by_[at(point)]) {
    if (length_[at(e)] > 0) return e;
    point = other_end(network_.elements[at(e)], point);
  }
  return -1;
}

Source Feed::source(int wire) const {
  const int far = far_point(wire);
  int near = other_end(network_.elements[at(wire)], far);
  Source source{true, length_[at(wire)], near};
  // Up the conductor as long as it does not become thicker.
  for (int up = upstream_wire(near); up >= 0; up = upstream_wire(near)) {
    if (area_[at(up)] > area_[at(wire)] * (1 + 1e-9)) {
      source.battery = false;
      break;
    }
    source.distance += length_[at(up)];
    near = other_end(network_.elements[at(up)], far_point(up));
  }
  // Out of the lug; and from a battery's cable through clamps and switches to the post.
  while (by_[at(near)] >= 0 && length_[at(by_[at(near)])] == 0 &&
         (source.battery || network_.elements[at(by_[at(near)])].role == Role::termination))
    near = other_end(network_.elements[at(by_[at(near)])], near);
  source.point = near;
  return source;
}

}  // namespace ohmtrail::plan
