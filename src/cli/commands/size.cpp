#include "ohmtrail/plan/size.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "cli/commands/commands.hpp"
#include "cli/json/size.hpp"
#include "cli/nearest.hpp"
#include "cli/pipeline.hpp"
#include "cli/text/progress.hpp"
#include "cli/text/size.hpp"
#include "ohmtrail/netlist/write.hpp"
#include "ohmtrail/plan/rewire.hpp"
#include "ohmtrail/plan/rewire_findings.hpp"
#include "ohmtrail/units/print.hpp"

namespace ohmtrail::cli {
namespace {

constexpr Option only{.name = "--only",
                      .value = "RUN",
                      .sentence = "choose for this run, the others stay; may be given again (default: all)",
                      .repeats = true};
constexpr Option time_limit{.name = "--time-limit",
                            .value = "SECONDS",
                            .sentence = "then the best found is shown, with what is not proved (default: 60)",
                            .number = true,
                            .lowest = 0};
constexpr Option new_file{.name = "-o,--output",
                          .value = "NEW.json",
                          .sentence = "writes the netlist with the new cable and fuses"};

/// False after telling which run is unknown.
bool runs_are_known(const Call& call, const netlist::System& system, const Doors& doors) {
  std::vector<std::string> names;
  for (const netlist::Run& run : system.runs) names.push_back(run.id);
  bool known = true;
  for (const std::string& id : call.texts(only)) {
    if (std::find(names.begin(), names.end(), id) != names.end()) continue;
    const std::string near = nearest(id, names);
    doors.complain(fmt::format("ohmtrail size: no run is named \"{}\"{}", id,
                               near.empty() ? "" : fmt::format("; did you mean \"{}\"?", near)));
    known = false;
  }
  return known;
}

std::string amount(const plan::Progress& progress, double cost) {
  return progress.priced ? fmt::format("{:.2f}", cost) : units::print(units::Mass{cost});
}

std::string in_words(const plan::Progress& progress) {
  const std::string least = progress.bound > 0 ? amount(progress, progress.bound) : "";
  if (!progress.best)
    return least.empty() ? "size: nothing found yet that keeps every limit"
                         : fmt::format("size: nothing found yet; it takes {} or more", least);
  const std::string best = amount(progress, *progress.best);
  if (least.empty()) return fmt::format("size: {} keeps every limit; looking for less", best);
  return fmt::format("size: {} keeps every limit, less than {} cannot; {:.2g} % between", best, least,
                     100 * (*progress.best - progress.bound) / *progress.best);
}

tl::expected<plan::SizeResult, std::string> sized_with_progress(const Call& call, const Job& job,
                                                                const Doors& doors) {
  ProgressLine line(doors.terminal, steady_seconds);
  plan::SizeOptions options;
  options.only = call.texts(only);
  options.time_limit_in_seconds = call.number(time_limit).value_or(60);
  options.progress = [&](const plan::Progress& progress) { line.tell(in_words(progress)); };
  return plan::size(job.system(), options);
}

/// The exit code after writing the rewired netlist, where that was asked for.
Exit write_rewired(const Call& call, const Job& job, const plan::SizeResult& sized, const Doors& doors) {
  if (!call.has(new_file)) return Exit::done;
  if (!sized.found) {
    doors.complain(
        fmt::format("ohmtrail size: nothing keeps every limit, so {} is not written", call.text(new_file)));
    return Exit::no_solution;
  }
  auto document = netlist::Document::open(job.text);
  if (!document) return Exit::mistake;  // it was read before
  plan::write_rewired(job.system(), sized, *document);
  return write_output(call.text(new_file), document->text(), doors) ? Exit::done : Exit::not_written;
}

Exit run(const Call& call, const Doors& doors) {
  const auto job = read_job(call.text(options::file), doors);
  if (!job) return job.error();
  if (!runs_are_known(call, job->system(), doors)) return Exit::mistake;
  const auto sized = sized_with_progress(call, *job, doors);
  if (!sized) {
    doors.complain("ohmtrail size: " + sized.error());
    return Exit::mistake;
  }
  if (const Exit written = write_rewired(call, *job, *sized, doors); written == Exit::not_written)
    return written;

  const auto raised =
      plan::raised_by_rewire(job->system(), *sized, plan::usual_rules(job->system().info.kind));
  Sheet sheet(doors.terminal.colour());
  if (call.has(options::json))
    doors.terminal.out(size_json(job->system(), *sized, raised));
  else if (call.has(options::csv))
    doors.terminal.out(size_csv(*sized));
  else
    show_sizing(sheet, job->system(), *sized, raised);
  doors.terminal.out(sheet.text());
  return exit_of(call, sized->found, true);
}

}  // namespace

const Command commands::size{
    .name = "size",
    .summary = "cable and fuses for the rewire",
    .description =
        "Chooses a cable for each run from cable_list (or every AWG from 18 to 4/0, by conductor mass), so "
        "that in every case every load is within its drop limit, every wire within its ampacity and every "
        "fuse both carries its load and protects its wire, for the least cost, and proves that there is no "
        "cheaper choice. Where nothing suffices it says what is missing and what would help, and exits 3.",
    .options = {options::file, new_file, only, time_limit, options::json, options::csv},
    .examples = {"ohmtrail size boat.json --time-limit 5",
                 "ohmtrail size boat.json --only fridge -o rewired.json"},
    .run = run};

}  // namespace ohmtrail::cli
