#include "ohmtrail/plan/rewire_findings.hpp"

#include <algorithm>

namespace ohmtrail::plan {

namespace {

using diagnose::Finding;

/// Nothing where a case has no solution.
std::vector<Finding> findings_of(const netlist::System& system, RuleSet rules) {
  std::vector<solve::CaseSolution> solved;
  for (const netlist::Case& one : system.cases) {
    auto result = solve::solve_case(network::build(system, one));
    if (!result) return {};
    solved.push_back(std::move(*result));
  }
  return check_protection(system, solved, rules);
}

}  // namespace

std::vector<Finding> raised_by_rewire(const netlist::System& system, const SizeResult& sized, RuleSet rules) {
  if (!sized.found) return {};
  const std::vector<Finding> before = findings_of(system, rules);
  std::vector<Finding> raised = findings_of(sized.rewired, rules);
  std::erase_if(raised, [&](const Finding& now) {
    return std::any_of(before.begin(), before.end(), [&](const Finding& then) {
      return then.rule == now.rule && then.subject == now.subject;
    });
  });
  return raised;
}

}  // namespace ohmtrail::plan
