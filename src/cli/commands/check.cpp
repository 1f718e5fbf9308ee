#include <algorithm>

#include "cli/commands/commands.hpp"
#include "cli/json/check.hpp"
#include "cli/json/common.hpp"
#include "cli/pipeline.hpp"
#include "cli/text/check.hpp"
#include "ohmtrail/diagnose/check_system.hpp"

namespace ohmtrail::cli {
namespace {

bool urgent(const diagnose::Finding& finding) {
  return finding.severity != diagnose::Severity::improvement;
}

Exit run(const Call& call, const Doors& doors) {
  const auto job = read_job(call.text(options::file), doors);
  if (!job) return job.error();
  const auto solved = solve_cases(*job, "", doors);
  if (!solved) return solved.error();
  const auto findings = diagnose::check_system(job->system(), *solved);

  Sheet sheet(doors.terminal.colour());
  if (call.has(options::json))
    doors.terminal.out(check_json(job->read, findings, assumptions_of(*solved)));
  else if (call.has(options::csv))
    doors.terminal.out(check_csv(findings));
  else
    show_check(sheet, job->system(), findings);
  doors.terminal.out(sheet.text());
  return exit_of(call, all_solved(*solved), std::none_of(findings.begin(), findings.end(), urgent));
}

}  // namespace

const Command commands::check{
    .name = "check",
    .summary = "is the file right, and is the system",
    .description =
        "Reads the file, telling every mistake in it at once with its place, and looks at the system: "
        "parts that no source reaches, loads outside their limits, cables and fuses that do not suit "
        "what they carry. With --strict it exits 1 when something must be done soon.",
    .options = {options::file, options::strict, options::json, options::csv},
    .examples = {"ohmtrail check boat.json"},
    .run = run};

}  // namespace ohmtrail::cli
