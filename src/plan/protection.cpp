#include "ohmtrail/plan/protection.hpp"

#include <algorithm>
#include <array>
#include <set>

#include "ohmtrail/diagnose/check_system.hpp"
#include "plan/protection_rules.hpp"

namespace ohmtrail::plan {
namespace {

using diagnose::Finding;
using protection::Context;

struct Named {
  RuleSet rules;
  std::string_view word, title;
};

constexpr std::array rule_sets{
    Named{RuleSet::us_small_craft, "us-small-craft", "US small craft (33 CFR 183)"},
    Named{RuleSet::iso_10133, "iso-10133", "small craft by ISO 10133"},
    Named{RuleSet::road_vehicle, "road-vehicle",
          "road vehicles (NEC 551 and 552 low voltage, common practice)"}};

const Named& named(RuleSet rules) {
  return *std::find_if(rule_sets.begin(), rule_sets.end(), [&](const Named& n) { return n.rules == rules; });
}

using Rule = void (*)(const Context&, protection::Findings&);

/// A new rule is a function and a row here.
constexpr std::array<Rule, 11> rules_in_order{protection::unfused_runs,
                                              protection::devices_over_ampacity,
                                              protection::devices_below_interrupting,
                                              protection::devices_below_voltage,
                                              protection::short_duty_heat,
                                              protection::devices_above_stall,
                                              protection::unlike_batteries,
                                              protection::unlike_links,
                                              protection::unlike_gauges,
                                              protection::wing_nuts,
                                              protection::crowded_studs};

void worst_first(std::vector<Finding>& findings) {
  std::stable_sort(findings.begin(), findings.end(),
                   [](const Finding& a, const Finding& b) { return a.severity < b.severity; });
}

/// A run of which both conductors or several places say the same is told of once.
void drop_repeats(std::vector<Finding>& findings) {
  std::set<std::array<std::string, 2>> told;
  std::erase_if(findings, [&](const Finding& one) { return !told.insert({one.rule, one.subject}).second; });
}

/// Wires that only short duty brings above their ampacity, in the cases in which it does: the steady state
/// that `check_system` judges is never reached there.
std::set<std::array<std::string, 2>> judged_by_heat(const Context& context) {
  std::set<std::array<std::string, 2>> wires;
  for (const auto& duty : protection::short_duties(context)) {
    if (duty.seconds > 3600) continue;  // runs on
    const auto& network = context.solved[duty.in_case].network;
    wires.insert({network.elements[static_cast<std::size_t>(duty.element)].id, network.case_name});
  }
  return wires;
}

}  // namespace

std::string_view word(RuleSet rules) {
  return named(rules).word;
}

std::string_view title(RuleSet rules) {
  return named(rules).title;
}

std::optional<RuleSet> rule_set_named(std::string_view word) {
  for (const Named& one : rule_sets)
    if (one.word == word) return one.rules;
  return std::nullopt;
}

RuleSet usual_rules(netlist::SystemKind kind) {
  return kind == netlist::SystemKind::vehicle || kind == netlist::SystemKind::cart ? RuleSet::road_vehicle
                                                                                   : RuleSet::us_small_craft;
}

std::vector<Finding> check_protection(const netlist::System& system,
                                      const std::vector<solve::CaseSolution>& solved, RuleSet rules) {
  std::vector<Finding> findings;
  if (solved.empty()) return findings;
  const Context context(system, solved, rules);
  for (const Rule rule : rules_in_order) rule(context, findings);
  drop_repeats(findings);
  worst_first(findings);
  return findings;
}

std::vector<Finding> check_all(const netlist::System& system, const std::vector<solve::CaseSolution>& solved,
                               RuleSet rules) {
  auto findings = diagnose::check_system(system, solved);
  if (solved.empty()) return findings;
  const auto by_heat = judged_by_heat(Context(system, solved, rules));
  std::erase_if(findings, [&](const Finding& one) {
    const bool steady = one.rule == "over-ampacity" || one.rule == "insulation-temperature";
    return steady && by_heat.contains({one.subject, one.in_case});
  });
  for (auto& one : check_protection(system, solved, rules)) findings.push_back(std::move(one));
  worst_first(findings);
  return findings;
}

namespace protection {
namespace {

const network::Element& element_of(const Context& context, int element) {
  return context.network.elements[static_cast<std::size_t>(element)];
}

std::string_view form_word(trade::FuseForm form) {
  switch (form) {
    case trade::FuseForm::blade:
      return "blade fuse";
    case trade::FuseForm::bolt_down:
      return "bolt-down fuse";
    case trade::FuseForm::cartridge:
      return "cartridge fuse";
    case trade::FuseForm::in_line:
      break;
  }
  return "in-line fuse";
}

}  // namespace

std::string subject_of(const Context& context, int element) {
  const auto& body = element_of(context, element);
  return body.origin.section == network::Section::runs ? context.system.runs[body.origin.index].id : body.id;
}

double rating_of(const Context& context, int element) {
  const auto& origin = element_of(context, element).origin;
  if (origin.section == network::Section::fuses) return context.system.fuses[origin.index].rating.si();
  const auto& rating = context.system.switches[origin.index].rating;
  return rating ? rating->si() : 0;
}

std::string kind_of(const Context& context, int element) {
  const auto& origin = element_of(context, element).origin;
  if (origin.section != network::Section::fuses) return "breaker";
  const auto& form = context.system.fuses[origin.index].form;
  return form ? std::string(form_word(*form)) : "fuse";
}

double ampacity_of(const Context& context, int element) {
  const auto& body = element_of(context, element);
  return body.role == network::Role::wire && body.heating ? body.heating->rated.si() : 0;
}

}  // namespace protection
}  // namespace ohmtrail::plan
