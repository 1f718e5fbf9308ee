#include "cli/json/solve.hpp"

#include "cli/commands/commands.hpp"
#include "cli/pipeline.hpp"
#include "cli/text/solve.hpp"

namespace ohmtrail::cli {
namespace {

Exit run(const Call& call, const Doors& doors) {
  const auto job = read_job(call.text(options::file), doors);
  if (!job) return job.error();
  const auto solved = solve_cases(*job, call.text(options::in_case), jobs_of(call), doors);
  if (!solved) return solved.error();

  Sheet sheet(doors.terminal.colour());
  if (call.has(options::json))
    doors.terminal.out(solve_json(job->system(), *solved));
  else if (call.has(options::csv))
    doors.terminal.out(solve_csv(*solved));
  else
    show_solved(sheet, job->system(), *solved);
  doors.terminal.out(sheet.text());
  return exit_of(call, all_solved(*solved), all_within(*solved));
}

}  // namespace

const Command commands::solve{
    .name = "solve",
    .summary = "currents, voltages, drops, temperatures",
    .description =
        "For each case: what every load gets and whether that is enough, which source feeds what, which "
        "elements lose most, and "
        "the proof that the numbers balance. --csv lists every element.",
    .options = {options::file, options::in_case, options::strict, options::jobs, options::json, options::csv},
    .examples = {"ohmtrail solve boat.json", "ohmtrail solve boat.json --json"},
    .run = run};

}  // namespace ohmtrail::cli
