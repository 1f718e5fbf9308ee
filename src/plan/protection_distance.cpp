#include <fmt/format.h>

#include <cmath>
#include <limits>

#include "ohmtrail/trade/protection.hpp"
#include "ohmtrail/units/print.hpp"
#include "plan/protection_rules.hpp"

/// Whether every conductor meets a fuse or a breaker soon enough.
namespace ohmtrail::plan::protection {
namespace {

using diagnose::Finding;
using diagnose::Severity;
using units::Length;

/// The allowed distance for one conductor: as it is, and where it is sheathed all the way.
struct Allowed {
  trade::Rule<Length> plain;
  std::optional<trade::Rule<Length>> sheathed;
  std::string remedy_if_sheathed;
};

Allowed allowed(RuleSet rules, const Source& source) {
  const auto& limits = trade::fuse_distances();
  switch (rules) {
    case RuleSet::us_small_craft:
      if (source.battery) return {limits.from_battery, std::nullopt, ""};
      return {limits.plain, limits.sheathed, ""};
    case RuleSet::iso_10133:
      return {limits.european,
              trade::Rule<Length>{Length{std::numeric_limits<double>::infinity()}, limits.european.source},
              ""};
    case RuleSet::road_vehicle:
      break;
  }
  return {limits.park_trailer, std::nullopt, ""};
}

std::string both_ways(double metres) {
  return fmt::format("{} ({:.0f} in)", units::print(Length{metres}), metres / 0.0254);
}

std::string limit_in_words(const Allowed& limit) {
  if (!limit.sheathed) return both_ways(limit.plain.limit.si());
  if (std::isinf(limit.sheathed->limit.si()))
    return both_ways(limit.plain.limit.si()) + ", or more if it is sheathed all the way";
  return fmt::format("{}, or {} if it is sheathed all the way (the file does not say)",
                     both_ways(limit.plain.limit.si()), both_ways(limit.sheathed->limit.si()));
}

std::string first_device(const Beyond& beyond, double to_far_end, const std::string& start) {
  if (beyond.nearest_device)
    return fmt::format("the first fuse or breaker comes {} after \"{}\"",
                       both_ways(to_far_end + *beyond.nearest_device), start);
  return fmt::format("{} of conductor from \"{}\" and no fuse or breaker at all",
                     both_ways(to_far_end + beyond.longest), start);
}

Severity severity_of(const Allowed& limit, const Beyond& beyond, double distance) {
  if (!beyond.nearest_device) return Severity::before_further_use;
  const bool may_be_sheathed = limit.sheathed && distance <= limit.sheathed->limit.si();
  return may_be_sheathed ? Severity::improvement : Severity::soon;
}

Finding finding_of(const Context& context, int wire, const Source& source, const Allowed& limit) {
  const auto& network = context.network;
  const auto beyond = context.feed.beyond(wire);
  const auto& start = network.points[static_cast<std::size_t>(source.point)];
  Finding finding;
  finding.rule = "no-fuse-in-reach";
  finding.source = limit.plain.source;
  finding.severity = severity_of(limit, beyond, source.distance);
  finding.subject = subject_of(context, wire);
  finding.text = fmt::format("is fed by the battery without a fuse: {}; allowed is {}",
                             first_device(beyond, source.distance, start), limit_in_words(limit));
  finding.remedy = fmt::format(
      "Fit a fuse or breaker that this cable can carry, within {} of \"{}\". Disconnect the battery first. "
      "Only an engine's cranking feed is exempt.",
      units::print(limit.plain.limit), start);
  if (limit.sheathed) finding.source += "; " + limit.sheathed->source;
  return finding;
}

}  // namespace

void unfused_runs(const Context& context, Findings& findings) {
  const auto& elements = context.network.elements;
  for (int e = 0; e < static_cast<int>(elements.size()); ++e) {
    const auto k = static_cast<std::size_t>(e);
    if (elements[k].role != network::Role::wire || !context.guards.unprotected[k]) continue;
    if (context.guards.string_link[k] || context.feed.cranks(e)) continue;
    if (std::isinf(context.feed.metres(context.feed.far_point(e))))
      continue;  // behind a breaker of unknown rating
    const auto source = context.feed.source(e);
    const auto limit = allowed(context.rules, source);
    if (source.distance <= limit.plain.limit.si() * (1 + 1e-9)) continue;
    findings.push_back(finding_of(context, e, source, limit));
  }
}

}  // namespace ohmtrail::plan::protection
