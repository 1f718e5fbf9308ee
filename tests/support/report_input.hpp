#pragma once
#include "ohmtrail/diagnose/bank.hpp"
#include "ohmtrail/diagnose/rank.hpp"
#include "ohmtrail/plan/protection.hpp"
#include "render/report.hpp"
#include "support/render_shipped.hpp"

namespace ohmtrail::test {

/// Everything that a report of this system tells, as the command line gathers it.
inline render::ReportInput report_input(netlist::System system) {
  render::ReportInput input;
  input.system = std::move(system);
  for (const netlist::Case& one : input.system.cases) {
    auto solved = solve::solve_case(network::build(input.system, one));
    if (solved) input.solved.push_back(std::move(*solved));
  }
  input.hot_spots = diagnose::rank(input.system, input.solved);
  for (const auto& solved : input.solved)
    for (auto& split : diagnose::split(solved)) input.splits.push_back(std::move(split));
  input.findings = plan::check_all(input.system, input.solved, plan::usual_rules(input.system.info.kind));
  input.bank = diagnose::judge_bank(input.system);
  for (const auto& solved : input.solved)
    for (auto& split : diagnose::charging(input.system, solved)) input.charging.push_back(std::move(split));
  const auto worst = render::worst_split(input.system, input.solved, input.splits);
  if (!worst) return input;
  const diagnose::SagSplit& split = input.splits[*worst];
  for (const auto& solved : input.solved) {
    if (solved.network.case_name != split.in_case) continue;
    const auto rated = solve::solve_case(diagnose::as_rated(input.system, solved.network));
    input.staircase =
        diagnose::staircase(solved, rated ? &*rated : nullptr, *solved.network.element(split.load));
  }
  return input;
}

/// Of a system in netlists/.
inline render::ReportInput shipped_report(const std::string& name) {
  return report_input(shipped(name));
}

}  // namespace ohmtrail::test
