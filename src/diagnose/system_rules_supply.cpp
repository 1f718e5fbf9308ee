#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>

#include "index.hpp"
#include "ohmtrail/units/print.hpp"
#include "system_rules.hpp"

/// Rules about who gets volts: islands, open ends, drop limits, cut-outs, collapse.
namespace ohmtrail::diagnose {
namespace {

using network::Role;

constexpr const char* drop_source =
    "the file's limits; 3 % for critical and 10 % for other loads where it gives none (common practice)";

bool is_dead(const solve::CaseSolution& solved, int point) {
  return !std::isfinite(at(solved.solution.voltage, point));
}

/// For every dead point the first point of its island; live points stand for themselves.
std::vector<int> first_points(const solve::CaseSolution& solved) {
  std::vector<int> first(solved.network.points.size());
  std::iota(first.begin(), first.end(), 0);
  const auto root = [&](int point) {
    while (at(first, point) != point) point = at(first, point) = at(first, at(first, point));
    return point;
  };
  for (const auto& element : solved.network.elements) {
    if (!element.active || !is_dead(solved, element.from) || !is_dead(solved, element.to)) continue;
    const int one = root(element.from), other = root(element.to);
    at(first, std::max(one, other)) = std::min(one, other);
  }
  for (std::size_t k = 0; k < first.size(); ++k) first[k] = root(static_cast<int>(k));
  return first;
}

bool dead_in_every_case(const RuleContext& context, int point) {
  return std::all_of(context.all.begin(), context.all.end(),
                     [&](const solve::CaseSolution& one) { return is_dead(one, point); });
}

/// Loads that are switched on in the island of this first point.
std::string loads_waiting(const solve::CaseSolution& solved, const std::vector<int>& first, int island) {
  std::string names;
  for (const auto& element : solved.network.elements)
    if (element.role == Role::load && element.active && at(first, element.from) == island)
      names += (names.empty() ? "" : ", ") + element.id;
  return names;
}

Finding island_finding(const RuleContext& context, int island, const std::string& waiting) {
  const auto& network = context.solved.network;
  const bool always = dead_in_every_case(context, island);
  const auto& name = at(network.points, island);
  auto finding = finding_of("island-without-source", "Kirchhoff's laws: no source, no current", name);
  finding.severity = always || !waiting.empty() ? Severity::soon : Severity::improvement;
  finding.in_case = always ? "" : network.case_name;
  finding.text =
      always ? fmt::format("no case connects {} to a battery or charger", name)
             : fmt::format("in case {} nothing connects {} to a battery or charger", network.case_name, name);
  if (!waiting.empty()) finding.text += fmt::format("; switched on there: {}", waiting);
  finding.remedy =
      "Check the names of the points, and which switches the case opens; if it is meant to be dead, nothing "
      "is wrong.";
  return finding;
}

/// Points at which more than a dead end is fixed.
std::vector<int> element_counts(const network::Network& network) {
  std::vector<int> counts(network.points.size());
  for (const auto& element : network.elements) {
    ++at(counts, element.from);
    ++at(counts, element.to);
  }
  return counts;
}

std::string percent(double fraction) {
  return units::print(units::Fraction{fraction});
}

}  // namespace

void dead_islands(const RuleContext& context, Collected& collected) {
  const auto first = first_points(context.solved);
  for (int point = 0; point < static_cast<int>(first.size()); ++point) {
    if (at(first, point) != point || !is_dead(context.solved, point)) continue;
    const auto waiting = loads_waiting(context.solved, first, point);
    collected.add(island_finding(context, point, waiting), waiting.empty() ? 0 : 1);
  }
}

void live_stubs(const RuleContext& context, Collected& collected) {
  const auto counts = element_counts(context.solved.network);
  for (const auto& name : context.system.stubs) {
    const auto point = context.solved.network.point(name);
    if (!point || at(counts, *point) > 1) continue;
    const double volts = at(context.solved.solution.voltage, *point);
    const bool live = std::isfinite(volts) && std::abs(volts) > 1;
    auto finding = finding_of("open-end", "common practice: a live end is covered or taken off", name);
    finding.severity = live ? Severity::soon : Severity::improvement;
    finding.text =
        live ? fmt::format("an open end at {} against the reference", units::print(units::Voltage{volts}))
             : "an open end; nothing is connected to it";
    finding.remedy =
        "Cover it with an insulated cap, or take the conductor off at its other end. Disconnect the battery "
        "first.";
    collected.add(std::move(finding), live ? std::abs(volts) : 0);
  }
}

/// Nothing runs backwards: the file is wrong, not the cable.
Finding reversed(const network::Network& network, const solve::LoadResult& load) {
  auto finding = finding_of("load-reversed", "Kirchhoff's laws: this current cannot come about",
                            at(network.elements, load.element).id);
  finding.severity = Severity::before_further_use;
  finding.in_case = network.case_name;
  finding.text = fmt::format("would stand at {}", units::print(units::Voltage{load.volts}));
  finding.remedy =
      "Look in the file whether plus and minus of this load or of a battery are swapped, or milliohms on its "
      "way are written as ohms.";
  return finding;
}

void limits_broken(const RuleContext& context, Collected& collected) {
  const auto& network = context.solved.network;
  for (const auto& load : context.solved.loads) {
    if (!load.running || load.within) continue;
    if (load.volts <= 0) {
      collected.add(reversed(network, load), load.drop_fraction);
      continue;
    }
    auto finding = finding_of("drop-limit", drop_source, at(network.elements, load.element).id);
    finding.in_case = network.case_name;
    finding.text = fmt::format("loses {} between the supply and itself: {} where {} is allowed",
                               units::print(units::Voltage{load.drop}), percent(load.drop_fraction),
                               percent(load.limit_fraction));
    finding.remedy = "Make good what loses most first, then choose larger cable.";
    collected.add(std::move(finding), load.drop_fraction / load.limit_fraction);
  }
}

void dropped_out(const RuleContext& context, Collected& collected) {
  const auto& network = context.solved.network;
  for (const auto& load : context.solved.loads) {
    const auto& element = at(network.elements, load.element);
    if (load.running || !element.active || !std::isfinite(load.volts) || !element.stops_below) continue;
    auto finding = finding_of("dropped-out", "the file's stops_below", element.id);
    finding.in_case = network.case_name;
    finding.text =
        fmt::format("is on but stopped: its voltage falls below {} when it draws; it has {} without",
                    units::print(*element.stops_below), units::print(units::Voltage{load.volts}));
    finding.remedy = "Find what sags: the battery first, then the way to the load.";
    collected.add(std::move(finding), 0);
  }
}

void collapsed_case(const RuleContext& context, Collected& collected) {
  const auto& collapse = context.solved.solution.collapse;
  if (!collapse) return;
  const auto& network = context.solved.network;
  auto finding = finding_of("collapse", "maximum power of a source behind a resistance, E²/4R",
                            collapse->branch < 0 ? "system" : at(network.elements, collapse->branch).id);
  finding.in_case = network.case_name;
  finding.text = fmt::format(
      "asks for more than can reach it: at most {} at {}, when {} of the constant-power loads is carried",
      units::print(units::Power{collapse->most_power}), units::print(units::Voltage{collapse->at_volts}),
      percent(collapse->share));
  finding.remedy = "Lower what is on at once, or the resistance on the way: battery, cables, connections.";
  collected.add(std::move(finding), 1 - collapse->share);
}

}  // namespace ohmtrail::diagnose
