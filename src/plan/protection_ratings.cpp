#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <limits>
#include <map>

#include "ohmtrail/trade/fuse_ladder.hpp"
#include "ohmtrail/trade/protection.hpp"
#include "ohmtrail/units/print.hpp"
#include "plan/protection_rules.hpp"
#include "units/index.hpp"

/// Whether a fuse or breaker suits its wire and the system's voltage.
namespace ohmtrail::plan::protection {
namespace {

using diagnose::Finding;
using diagnose::Severity;
using units::Current;

constexpr const char* ampacity_source = "33 CFR 183.425 Table 5 (AWG, SAE), ISO 10133 Table A.1 (mm²)";
constexpr double rounding = 1 + 1e-9;

/// A device over a wire.
struct Pair {
  int device = -1, wire = -1;
  bool only_if_sheathed = false;  ///< allowed by a device of its own within the sheathed distance
};

/// The largest device that a rule set lets over a wire at all.
trade::Rule<Current> ceiling(const Context& context, int wire) {
  const Current ampacity{ampacity_of(context, wire)};
  const auto& run = context.system.runs[context.network.elements[at(wire)].origin.index];
  if (context.rules == RuleSet::us_small_craft)
    return trade::largest_fuse(ampacity, context.system.info.nominal);
  if (context.rules == RuleSet::iso_10133)
    return {ampacity, "from memory: ISO 10133 clause 8: no more than the conductor's largest current"};
  if (const auto by_gauge = trade::vehicle_fuse_limit(run.gauge)) return *by_gauge;
  return {ampacity, "common practice: no more than the conductor's ampacity"};
}

/// A conductor that meets a fuse of its own before anything else, within the distance that a rule allows,
/// needs none at its source.
bool own_device(const Context& context, int wire, double& metres) {
  const auto beyond = context.feed.beyond(wire);
  if (beyond.reaches_load || beyond.dead_end || beyond.devices.empty()) return false;
  metres = context.feed.length(wire) + beyond.longest;
  return std::all_of(beyond.devices.begin(), beyond.devices.end(), [&](int device) {
    return rating_of(context, device) <= ampacity_of(context, wire) * rounding;
  });
}

double plain_distance(RuleSet rules) {
  const auto& limits = trade::fuse_distances();
  if (rules == RuleSet::us_small_craft) return limits.plain.limit.si();
  return rules == RuleSet::iso_10133 ? limits.european.limit.si() : limits.park_trailer.limit.si();
}

void guarded_pairs(const Context& context, std::vector<Pair>& pairs) {
  for (const Guard& guard : context.guards.devices)
    for (const int wire : guard.elements) {
      if (ampacity_of(context, wire) <= 0) continue;
      Pair pair{guard.element, wire};
      double metres = 0;
      if (own_device(context, wire, metres)) {
        if (metres <= plain_distance(context.rules) * rounding) continue;
        pair.only_if_sheathed = context.rules == RuleSet::iso_10133 ||
                                (context.rules == RuleSet::us_small_craft &&
                                 metres <= trade::fuse_distances().sheathed.limit.si() * rounding);
      }
      pairs.push_back(pair);
    }
}

/// Other runs of which the same is to be said.
std::string also_on(const Context& context, const std::vector<Pair>& wires) {
  std::vector<std::string> others;
  for (const Pair& pair : wires) {
    const auto name = subject_of(context, pair.wire);
    if (name != subject_of(context, wires.front().wire) &&
        std::find(others.begin(), others.end(), name) == others.end())
      others.push_back(name);
  }
  return others.empty() ? "" : fmt::format("; too large for {} as well", fmt::join(others, ", "));
}

/// Worst wire first.
Finding over_ampacity(const Context& context, const std::vector<Pair>& wires) {
  const Pair& pair = wires.front();
  const double rating = rating_of(context, pair.device), ampacity = ampacity_of(context, pair.wire);
  const auto limit = ceiling(context, pair.wire);
  const bool illegal = rating > limit.limit.si() * rounding && !pair.only_if_sheathed;
  Finding finding;
  finding.rule = "fuse-over-ampacity";
  finding.source = illegal ? fmt::format("{}; {}", ampacity_source, limit.source) : ampacity_source;
  finding.severity = illegal ? Severity::before_further_use : Severity::improvement;
  finding.subject = context.network.elements[at(pair.device)].id;
  finding.text = fmt::format("is a {} {} on {}, which may carry {}", units::print(Current{rating}),
                             kind_of(context, pair.device), subject_of(context, pair.wire),
                             units::print(Current{ampacity}));
  if (illegal)
    finding.text += fmt::format("; at most {} is allowed", units::print(limit.limit));
  else if (pair.only_if_sheathed)
    finding.text += "; allowed only if that is sheathed all the way to its own fuse";
  else
    finding.text += fmt::format("; up to {} is allowed, but an overload between the two lasts",
                                units::print(limit.limit));
  finding.text += also_on(context, wires);
  finding.remedy = "Fit a fuse that the wire can carry, or a larger wire. Disconnect the battery first.";
  return finding;
}

double badness(const Context& context, const Pair& pair) {
  const double limit = pair.only_if_sheathed ? std::numeric_limits<double>::infinity()
                                             : ceiling(context, pair.wire).limit.si();
  const double rating = rating_of(context, pair.device);
  return rating > limit * rounding ? 1e6 * rating / limit : rating / ampacity_of(context, pair.wire);
}

bool fed_at_nominal(const Context& context, int device) {
  const auto& guards = context.guards;
  return guards.ungrounded[at(device)] &&
         std::any_of(guards.devices.begin(), guards.devices.end(),
                     [&](const Guard& guard) { return guard.element == device && !guard.elements.empty(); });
}

}  // namespace

void devices_over_ampacity(const Context& context, Findings& findings) {
  std::vector<Pair> pairs;
  guarded_pairs(context, pairs);
  std::map<int, std::vector<Pair>> of_device;
  for (const Pair& pair : pairs) {
    const double largest = std::min(ampacity_of(context, pair.wire), ceiling(context, pair.wire).limit.si());
    if (rating_of(context, pair.device) > largest * rounding) of_device[pair.device].push_back(pair);
  }
  for (auto& [device, wires] : of_device) {
    std::stable_sort(wires.begin(), wires.end(),
                     [&](const Pair& a, const Pair& b) { return badness(context, a) > badness(context, b); });
    findings.push_back(over_ampacity(context, wires));
  }
}

void devices_below_voltage(const Context& context, Findings& findings) {
  const double nominal = context.system.info.nominal.si();
  for (int e = 0; e < static_cast<int>(context.network.elements.size()); ++e) {
    const auto& element = context.network.elements[at(e)];
    if (element.role != network::Role::fuse || !fed_at_nominal(context, e)) continue;
    const auto& fuse = context.system.fuses[element.origin.index];
    const auto form = fuse.form.value_or(trade::usual_fuse_form(fuse.rating));
    const double volts = fuse.volts.value_or(trade::usual_fuse_limits(form).volts).si();
    if (volts >= nominal) continue;
    Finding finding;
    finding.rule = "fuse-voltage";
    finding.source = "33 CFR 183.455(d): a fuse is made for at least the nominal voltage";
    if (!fuse.volts) finding.source += "; " + trade::usual_fuse_limits(form).source;
    finding.severity = fuse.volts ? Severity::before_further_use : Severity::soon;
    finding.subject = fuse.id;
    finding.text = fmt::format("is {} for {} in a system of {}: its arc may not go out",
                               fuse.volts ? "made" : "usually made", units::print(units::Voltage{volts}),
                               units::print(context.system.info.nominal));
    finding.remedy = fuse.volts
                         ? "Fit a fuse made for this voltage. Disconnect the battery first."
                         : "Read the voltage off its body; fit one made for this voltage if it is less.";
    findings.push_back(std::move(finding));
  }
}

}  // namespace ohmtrail::plan::protection
