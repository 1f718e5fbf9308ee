#include "plan/guards.hpp"

#include <boost/pending/disjoint_sets.hpp>
#include <limits>
#include <optional>

#include "ohmtrail/trade/fuse_ladder.hpp"
#include "plan/feed.hpp"
#include "plan/ground.hpp"
#include "units/index.hpp"

namespace ohmtrail::plan {

namespace {

using network::Role;

/// Points joined so far.
using Joined = boost::disjoint_sets_with_storage<>;

/// Segments of the ungrounded side: points joined without crossing a device.
struct Segments {
  Joined joined;
  std::vector<int> level;  ///< per root point: devices between it and a battery; max: not fed

  Segments(const netlist::System& system, const network::Network& network,
           const std::vector<bool>& ungrounded)
      : joined(network.points.size()), level(network.points.size(), std::numeric_limits<int>::max()) {
    for (std::size_t e = 0; e < network.elements.size(); ++e)
      if (ungrounded[e] && !is_device(system, network.elements[e]))
        joined.union_set(at(network.elements[e].from), at(network.elements[e].to));
    feed(network);
    spread(system, network, ungrounded);
    feed_apart(network);
    spread(system, network, ungrounded);
  }

  int& level_at(int point) { return level[joined.find_set(at(point))]; }

 private:
  void feed(const network::Network& network) {
    bool any = false;
    for (const auto& element : network.elements)
      if (element.role == Role::battery)
        level_at(element.from) = level_at(element.to) = 0, any = true;  // of the two the grounded one is idle
    if (any) return;
    for (const auto& element : network.elements)
      if (element.role == Role::charger) level_at(element.from) = 0;
  }

  /// What no battery reaches a charger or a converter's output feeds. It limits its own current, so that
  /// before the first device nothing is unprotected.
  void feed_apart(const network::Network& network) {
    for (const auto& element : network.elements)
      if (element.role == Role::charger && level_at(element.from) == std::numeric_limits<int>::max())
        level_at(element.from) = 1;
  }

  void spread(const netlist::System& system, const network::Network& network,
              const std::vector<bool>& ungrounded) {
    for (bool changed = true; changed;) {
      changed = false;
      for (std::size_t e = 0; e < network.elements.size(); ++e) {
        const auto& element = network.elements[e];
        if (!ungrounded[e] || !is_device(system, element)) continue;
        int& a = level_at(element.from);
        int& b = level_at(element.to);
        if (a != std::numeric_limits<int>::max() && a + 1 < b) b = a + 1, changed = true;
        if (b != std::numeric_limits<int>::max() && b + 1 < a) a = b + 1, changed = true;
      }
    }
  }
};

/// Links between the batteries of one string: of the segments that hold the plus of one and the minus of
/// another what is left when everything that leads away from the batteries is taken off.
std::vector<bool> string_links(const network::Network& network, Segments& segments,
                               const std::vector<bool>& candidates) {
  std::vector<bool> plus(network.points.size()), minus(plus), post(plus);
  for (const auto& element : network.elements) {
    if (element.role != Role::battery) continue;
    plus[segments.joined.find_set(at(element.from))] = true;
    minus[segments.joined.find_set(at(element.to))] = true;
    post[static_cast<std::size_t>(element.from)] = post[static_cast<std::size_t>(element.to)] = true;
  }
  std::vector<bool> link(candidates);
  std::vector<int> degree(network.points.size(), 0);
  for (std::size_t e = 0; e < link.size(); ++e) {
    const auto& element = network.elements[e];
    const auto root = segments.joined.find_set(at(element.from));
    link[e] = link[e] && plus[root] && minus[root];
    if (link[e])
      ++degree[static_cast<std::size_t>(element.from)], ++degree[static_cast<std::size_t>(element.to)];
  }
  const auto loose = [&](int point) {
    return degree[static_cast<std::size_t>(point)] == 1 && !post[static_cast<std::size_t>(point)];
  };
  for (bool changed = true; changed;) {
    changed = false;
    for (std::size_t e = 0; e < link.size(); ++e) {
      const auto& element = network.elements[e];
      if (!link[e] || (!loose(element.from) && !loose(element.to))) continue;
      link[e] = false, changed = true;
      --degree[static_cast<std::size_t>(element.from)], --degree[static_cast<std::size_t>(element.to)];
    }
  }
  return link;
}

void fill_segment(const network::Network& network, const std::vector<bool>& ungrounded, Segments& segments,
                  Guards& guards, int far_point) {
  Guard& guard = guards.devices.back();
  for (std::size_t e = 0; e < network.elements.size(); ++e) {
    if (!ungrounded[e] || guards.guard_of[e] == -2) continue;
    if (segments.joined.find_set(at(network.elements[e].from)) != segments.joined.find_set(at(far_point)))
      continue;
    guard.elements.push_back(static_cast<int>(e));
    if (guards.guard_of[e] < 0) guards.guard_of[e] = static_cast<int>(guards.devices.size()) - 1;
  }
}

/// Before the first device nothing limits a short circuit, but a conductor that feeds that one alone carries
/// no more for long than it lets through.
void guard_from_behind(const netlist::System& system, const network::Network& network, Guards& guards) {
  const Feed feed(system, network, guards);
  for (std::size_t e = 0; e < network.elements.size(); ++e) {
    const int element = static_cast<int>(e);
    if (network.elements[e].role != Role::wire || !guards.unprotected[e] || guards.string_link[e]) continue;
    if (feed.cranks(element)) continue;
    const auto beyond = feed.beyond(element);
    if (beyond.reaches_load || beyond.devices.size() != 1) continue;
    for (std::size_t d = 0; d < guards.devices.size(); ++d) {
      if (guards.devices[d].element != beyond.devices.front()) continue;
      guards.devices[d].elements.push_back(element);
      guards.guard_of[e] = static_cast<int>(d);
    }
  }
}

}  // namespace

bool is_device(const netlist::System& system, const network::Element& element) {
  if (element.role == Role::fuse) return true;
  if (element.origin.section != network::Section::switches) return false;
  const auto& body = system.switches[element.origin.index];
  return body.kind == trade::SwitchKind::breaker && body.rating.has_value();
}

std::vector<double> device_ladder(const netlist::System& system, const network::Element& element) {
  const auto ratings = [&]() -> const std::vector<units::Current>& {
    if (element.role != Role::fuse) return trade::all_fuse_ratings();
    const auto& fuse = system.fuses[element.origin.index];
    return fuse.form ? trade::fuse_ratings(*fuse.form) : trade::all_fuse_ratings();
  };
  std::vector<double> ladder;
  for (const auto rating : ratings()) ladder.push_back(rating.si());
  return ladder;
}

Guards find_guards(const netlist::System& system, const network::Network& network) {
  const std::size_t count = network.elements.size();
  Guards guards{{},
                std::vector<int>(count, -1),
                std::vector<bool>(count, false),
                std::vector<bool>(count, false),
                std::vector<bool>(count, false)};
  const auto grounded = find_ground(system, network).points;
  for (std::size_t e = 0; e < count; ++e)
    guards.ungrounded[e] =
        is_passive(network.elements[e]) && !grounded[static_cast<std::size_t>(network.elements[e].from)];
  Segments segments(system, network, guards.ungrounded);

  for (std::size_t e = 0; e < count; ++e) {
    if (!guards.ungrounded[e]) continue;
    const auto& element = network.elements[e];
    if (is_device(system, element)) {
      guards.guard_of[e] = -2;  // a device is not the ward of another
      continue;
    }
    guards.unprotected[e] = segments.level_at(element.from) == 0;
    guards.string_link[e] = guards.unprotected[e];
  }
  guards.string_link = string_links(network, segments, guards.string_link);
  for (std::size_t e = 0; e < count; ++e) {
    if (guards.guard_of[e] != -2) continue;
    const auto& element = network.elements[e];
    const int a = segments.level_at(element.from);
    const int b = segments.level_at(element.to);
    guards.devices.push_back({static_cast<int>(e), {}});
    if (a != b) fill_segment(network, guards.ungrounded, segments, guards, a < b ? element.to : element.from);
  }
  for (int& guard : guards.guard_of)
    if (guard == -2) guard = -1;
  guard_from_behind(system, network, guards);
  return guards;
}

}  // namespace ohmtrail::plan
