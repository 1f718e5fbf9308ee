#include <algorithm>

#include "cli/commands/commands.hpp"
#include "cli/commands/rules_option.hpp"
#include "cli/json/check.hpp"
#include "cli/json/common.hpp"
#include "cli/pipeline.hpp"
#include "cli/text/check.hpp"
#include "ohmtrail/plan/protection.hpp"

namespace ohmtrail::cli {
namespace {

bool urgent(const diagnose::Finding& finding) {
  return finding.severity != diagnose::Severity::improvement;
}

Exit run(const Call& call, const Doors& doors) {
  const auto job = read_job(call.text(options::file), doors);
  if (!job) return job.error();
  const auto solved = solve_cases(*job, "", jobs_of(call), doors);
  if (!solved) return solved.error();
  const auto by = rules_asked_for(call, job->system());
  const auto findings = plan::check_all(job->system(), *solved, by);

  Sheet sheet(doors.terminal.colour());
  if (call.has(options::json))
    doors.terminal.out(check_json(job->read, by, findings, assumptions_of(*solved)));
  else if (call.has(options::csv))
    doors.terminal.out(check_csv(findings));
  else
    show_check(sheet, job->system(), by, findings);
  doors.terminal.out(sheet.text());
  return exit_of(call, all_solved(*solved), std::none_of(findings.begin(), findings.end(), urgent));
}

}  // namespace

const Command commands::check{
    .name = "check",
    .summary = "is the file right, and is the system",
    .description =
        "Reads the file, telling every mistake in it at once with its place, and looks at the system: "
        "parts that no source reaches, loads outside their limits, cables without a fuse in reach, fuses "
        "that do not protect their cable or cannot break what the bank delivers, cables too thin for what "
        "they carry, unlike batteries side by side. It advises; local codes and a licensed electrician "
        "decide. With --strict it exits 1 when something must be done soon.",
    .options = {options::file, rules, options::strict, options::jobs, options::json, options::csv},
    .examples = {"ohmtrail check boat.json", "ohmtrail check boat.json --rules iso-10133"},
    .run = run};

}  // namespace ohmtrail::cli
