#include "ohmtrail/diagnose/bank.hpp"

#include <algorithm>

#include "cli/commands/commands.hpp"
#include "cli/json/bank.hpp"
#include "cli/pipeline.hpp"
#include "cli/text/bank.hpp"

namespace ohmtrail::cli {
namespace {

bool urgent(const diagnose::BankFinding& finding) {
  return finding.severity && *finding.severity != diagnose::Severity::improvement;
}

bool nothing_urgent(const diagnose::Bank& bank) {
  const auto quiet = [](const auto& one) {
    return std::none_of(one.findings.begin(), one.findings.end(), urgent);
  };
  return std::all_of(bank.batteries.begin(), bank.batteries.end(), quiet) &&
         std::all_of(bank.groups.begin(), bank.groups.end(), quiet);
}

Exit run(const Call& call, const Doors& doors) {
  const auto job = read_job(call.text(options::file), doors);
  if (!job) return job.error();
  const auto bank = diagnose::judge_bank(job->system());

  Sheet sheet(doors.terminal.colour());
  if (call.has(options::json))
    doors.terminal.out(bank_json(job->system(), bank));
  else if (call.has(options::csv))
    doors.terminal.out(bank_csv(bank));
  else
    show_bank(sheet, job->system(), bank);
  doors.terminal.out(sheet.text());
  return exit_of(call, true, nothing_urgent(bank));
}

}  // namespace

const Command commands::bank{.name = "bank",
                             .summary = "the batteries' own tests",
                             .description =
                                 "Judges each battery from its checks: rest voltage, load test, conductance "
                                 "tester, specific gravity and "
                                 "acid level of each cell, leakage, age; says what contradicts what, which "
                                 "battery is the weakest of its "
                                 "string and how batteries side by side suit each other. With --strict it "
                                 "exits 1 when something must be done "
                                 "soon.",
                             .options = {options::file, options::strict, options::json, options::csv},
                             .examples = {"ohmtrail bank boat.json", "ohmtrail bank --json cart.json"},
                             .run = run};

}  // namespace ohmtrail::cli
