#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "index.hpp"
#include "ohmtrail/units/print.hpp"
#include "system_rules.hpp"

/// Rules about charging: what is lost between charger and battery, and batteries that never get full.
namespace ohmtrail::diagnose {
namespace {

using network::Role;
using solve::Supply;
using units::print;
using units::Voltage;

constexpr double most_charging_drop = 0.03;  // of nominal, common practice
// Common practice: chargers hold their set point to about 1 %; what is missing beyond it was lost on the way.
constexpr double set_point_tolerance = 0.01;
// Common practice: absorption ends when a battery takes 1 to 2 % of its Ah in amperes.
constexpr double tail_current_per_ah = 0.01;
constexpr double tail_current_of_unknown = 1;

Role role_of(const RuleContext& context, const Supply& supply) {
  return at(context.solved.network.elements, supply.elements.front()).role;
}

double nominal_of(const RuleContext& context, const Supply& batteries) {
  double volts = 0;
  for (const int k : batteries.elements)
    volts += at(context.solved.network.elements, k).nominal.value_or(Voltage{}).si();
  return volts;
}

std::string name_of(const RuleContext& context, const Supply& supply) {
  std::string name;
  for (const int k : supply.elements)
    name += (name.empty() ? "" : "+") + at(context.solved.network.elements, k).id;
  return name;
}

/// The running charger with the highest set point in the island that can be meant for these batteries:
/// converters put chargers of another voltage into one island.
const Supply* charger_of(const RuleContext& context, const Supply& batteries) {
  const double nominal = nominal_of(context, batteries);
  const Supply* best = nullptr;
  double highest = 0;
  for (const auto& supply : context.solved.supplies) {
    if (supply.island != batteries.island || role_of(context, supply) != Role::charger) continue;
    const auto& element = at(context.solved.network.elements, supply.elements.front());
    const double set = element.voltage.si();
    if (!element.active || set < nominal || set > 1.4 * nominal || set <= highest) continue;
    best = &supply;
    highest = set;
  }
  return best;
}

Finding charging_finding(const RuleContext& context, const Supply& batteries, const char* rule,
                         const char* source) {
  auto finding = finding_of(rule, source, at(context.solved.network.elements, batteries.elements.front()).id);
  finding.in_case = context.solved.network.case_name;
  return finding;
}

/// The end of charging: every battery takes its tail current only, the loads of the case stay.
network::Network at_end_of_charging(const RuleContext& context) {
  auto network = context.solved.network;
  for (auto& element : network.elements) {
    if (element.role != Role::battery || !element.nominal) continue;
    const auto& capacity = context.system.batteries[element.origin.index].capacity;
    const double amperes = capacity ? tail_current_per_ah * capacity->si() / 3600 : tail_current_of_unknown;
    element.role = Role::load;
    element.takes = units::Resistance{element.nominal->si() * 1.15 / amperes};
  }
  return network;
}

std::string why_not_full(const solve::CaseSolution& end, const Supply& charger) {
  const auto& element = at(end.network.elements, charger.elements.front());
  const double amperes = std::abs(at(end.solution.current, charger.elements.front()));
  if (element.limit.si() > 0 && amperes > 0.999 * element.limit.si())
    return fmt::format("; {} gives all it can, {}", element.id, print(element.limit));
  return "; the rest is lost in isolators, cables and connections";
}

void judge_full(const RuleContext& context, Collected& collected, const solve::CaseSolution& end,
                const Supply& batteries) {
  const auto* charger = charger_of(context, batteries);
  if (charger == nullptr) return;
  const double set = at(context.solved.network.elements, charger->elements.front()).voltage.si();
  const double reached = at(end.solution.voltage, batteries.plus) - at(end.solution.voltage, batteries.minus);
  if (!std::isfinite(reached) || reached >= set * (1 - set_point_tolerance)) return;
  auto finding =
      charging_finding(context, batteries, "undercharge", "set point held to 1 %: common practice");
  finding.text =
      fmt::format("{} never gets beyond {} where {} is set to {}{}", name_of(context, batteries),
                  print(Voltage{reached}), at(context.solved.network.elements, charger->elements.front()).id,
                  print(Voltage{set}), why_not_full(end, *charger));
  finding.remedy =
      "Batteries that are never full sulphate. Cure the way from charger to battery, let the charger sense "
      "at the battery's "
      "posts, or set it to make up for the isolator, within what the battery's maker allows.";
  collected.add(std::move(finding), set - reached);
}

bool charging(const RuleContext& context, const Supply& supply) {
  return role_of(context, supply) == Role::battery &&
         at(context.solved.solution.current, supply.elements.front()) > 0;
}

}  // namespace

void charging_drop(const RuleContext& context, Collected& collected) {
  for (const auto& batteries : context.solved.supplies) {
    if (!charging(context, batteries)) continue;
    const auto* charger = charger_of(context, batteries);
    if (charger == nullptr) continue;
    const double lost = charger->terminal - batteries.terminal;
    const double fraction = lost / nominal_of(context, batteries);
    if (!(fraction > most_charging_drop)) continue;
    auto finding =
        charging_finding(context, batteries, "charging-drop", "3 % from charger to battery: common practice");
    finding.text = fmt::format("{} is lost between {} and the posts of {}, {} where {} is allowed",
                               print(Voltage{lost}), name_of(context, *charger), name_of(context, batteries),
                               print(units::Fraction{fraction}), print(units::Fraction{most_charging_drop}));
    finding.remedy =
        "Measure along the way from charger to battery, plus and minus side, while it charges hard.";
    collected.add(std::move(finding), fraction);
  }
}

void never_charged(const RuleContext& context, Collected& collected) {
  const auto& supplies = context.solved.supplies;
  const bool any = std::any_of(supplies.begin(), supplies.end(), [&](const Supply& supply) {
    return role_of(context, supply) == Role::battery && charger_of(context, supply) != nullptr;
  });
  if (!any) return;
  const auto end = solve::solve_case(at_end_of_charging(context));
  if (!end) return;
  for (const auto& supply : supplies)
    if (role_of(context, supply) == Role::battery) judge_full(context, collected, *end, supply);
}

}  // namespace ohmtrail::diagnose
