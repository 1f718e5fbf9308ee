#include "ohmtrail/diagnose/compare.hpp"

#include <fmt/format.h>

#include "cli/commands/commands.hpp"
#include "cli/json/infer.hpp"
#include "cli/pipeline.hpp"
#include "cli/text/compare.hpp"

namespace ohmtrail::cli {
namespace {

constexpr Option before{.name = "BEFORE", .sentence = "the survey before the work (JSON)", .required = true};
constexpr Option after{.name = "AFTER", .sentence = "the survey after it", .required = true};

Exit run(const Call& call, const Doors& doors) {
  const auto earlier = read_job(call.text(before), doors), later = read_job(call.text(after), doors);
  if (!earlier) return earlier.error();
  if (!later) return later.error();
  const auto comparison = diagnose::compare(earlier->system(), later->system());
  if (!comparison) {
    doors.complain(fmt::format("{}; {}", comparison.error().text, comparison.error().remedy));
    return Exit::no_solution;
  }
  const network::Network network = network::build(later->system(), later->system().cases.front());
  Sheet sheet(doors.terminal.colour());
  if (call.has(options::json))
    doors.terminal.out(compare_json(later->system(), *comparison, network));
  else if (call.has(options::csv))
    doors.terminal.out(compare_csv(*comparison));
  else
    show_comparison(sheet, later->system(), network, *comparison);
  doors.terminal.out(sheet.text());
  return Exit::done;
}

}  // namespace

const Command commands::compare{.name = "compare",
                                .summary = "two surveys of one system: what was cured",
                                .description =
                                    "Compares a survey before the work with one after it: what was cured, "
                                    "what is left, what is new, and the volts "
                                    "each load has gained at the same battery voltage and load. A change "
                                    "within the uncertainty is no change.",
                                .options = {before, after, options::json, options::csv},
                                .examples = {"ohmtrail compare before.json after.json"},
                                .run = run};

}  // namespace ohmtrail::cli
