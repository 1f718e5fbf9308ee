#include "ohmtrail/diagnose/check_system.hpp"

#include <algorithm>
#include <map>
#include <tuple>

#include "system_rules.hpp"

namespace ohmtrail::diagnose {
namespace {

using Rule = void (*)(const RuleContext&, Collected&);

/// Every rule looks at one solved case; a new rule is a function and a row here.
constexpr Rule rules[] = {
    dead_islands,     live_stubs,    limits_broken,  dropped_out, collapsed_case,
    wires_overloaded, wires_too_hot, joints_too_hot, hunting,     stopped_at_half_charge,
    charging_losses,  measured_heat};

}  // namespace

void Collected::add(Finding finding, double badness) {
  const auto place = std::find_if(entries_.begin(), entries_.end(), [&](const Entry& one) {
    return one.finding.rule == finding.rule && one.finding.subject == finding.subject;
  });
  if (place == entries_.end())
    entries_.push_back({std::move(finding), badness});
  else if (badness > place->badness)
    *place = {std::move(finding), badness};
}

std::vector<Finding> Collected::worst_first() const {
  std::vector<Finding> findings;
  for (const auto& entry : entries_) findings.push_back(entry.finding);
  std::stable_sort(findings.begin(), findings.end(),
                   [](const Finding& a, const Finding& b) { return a.severity < b.severity; });
  return findings;
}

Finding finding_of(std::string rule, std::string source, std::string subject) {
  Finding finding;
  finding.rule = std::move(rule);
  finding.source = std::move(source);
  finding.subject = std::move(subject);
  return finding;
}

std::vector<Finding> check_system(const netlist::System& system,
                                  const std::vector<solve::CaseSolution>& solved) {
  Collected collected;
  for (const auto rule : rules)
    for (const auto& one : solved) rule(RuleContext{system, one, solved}, collected);
  return collected.worst_first();
}

}  // namespace ohmtrail::diagnose
