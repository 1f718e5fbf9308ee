#include "ohmtrail/diagnose/next.hpp"

#include <fmt/format.h>

#include "cli/commands/commands.hpp"
#include "cli/json/next.hpp"
#include "cli/pipeline.hpp"
#include "cli/text/next.hpp"

namespace ohmtrail::cli {
namespace {

constexpr Option top{.name = "--top",
                     .value = "N",
                     .sentence = "the N best readings only (default: 5)",
                     .number = true,
                     .whole = true,
                     .lowest = 1,
                     .highest = 50};

Exit run(const Call& call, const Doors& doors) {
  const std::string path = call.text(options::file);
  const auto job = read_job(path, doors);
  if (!job) return job.error();
  diagnose::NextOptions asked;
  if (const auto number = call.number(top)) asked.most = static_cast<std::size_t>(*number);
  const auto result = diagnose::next_reading(job->system(), asked);
  if (!result) {
    doors.complain(fmt::format("{}: {}; {}", path, result.error().text, result.error().remedy));
    return Exit::no_solution;
  }
  Sheet sheet(doors.terminal.colour());
  if (call.has(options::json))
    doors.terminal.out(
        next_json(job->system(), *result, network::build(job->system(), job->system().cases.front())));
  else if (call.has(options::csv))
    doors.terminal.out(next_csv(*result));
  else
    show_next(sheet, job->system(), *result);
  doors.terminal.out(sheet.text());
  return Exit::done;
}

}  // namespace

const Command commands::next{
    .name = "next",
    .summary = "which reading to take next",
    .description =
        "Names the readings that are expected to tell most of where the fault is: where red and black go or "
        "what the clamp goes round, what is switched on, what a sound system shows and from which value on "
        "it is bad. Says when no further reading is worth taking, and why.",
    .options = {options::file, top, options::json, options::csv},
    .examples = {"ohmtrail next boat.json", "ohmtrail next boat.json --json"},
    .run = run};

}  // namespace ohmtrail::cli
