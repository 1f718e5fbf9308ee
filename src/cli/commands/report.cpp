#include <fmt/format.h>

#include <algorithm>

#include "cli/commands/commands.hpp"
#include "cli/commands/picture_options.hpp"
#include "cli/commands/rules_option.hpp"
#include "cli/commands/survey.hpp"
#include "cli/pipeline.hpp"
#include "cli/text/printable.hpp"
#include "ohmtrail/diagnose/bank.hpp"
#include "ohmtrail/plan/rewire_findings.hpp"
#include "render/report.hpp"

namespace ohmtrail::cli {
namespace {

constexpr Option output{.name = "-o,--output",
                        .value = "OUT",
                        .sentence = "the report to write: .pdf or .html by its ending",
                        .required = true};

constexpr Option before{.name = "--before",
                        .value = "FILE",
                        .sentence = "an earlier survey of the same system, to set beside this one"};
constexpr Option bench{
    .name = "--bench",
    .sentence = "with the bench sheet: readings to take, what sound parts show, a line each"};
constexpr Option rewire{.name = "--rewire", .sentence = "with the cable and fuses that size chooses"};
constexpr Option time_limit{.name = "--time-limit",
                            .value = "SECONDS",
                            .sentence = "with --rewire: how long to look for the cheapest (default: 20)",
                            .number = true,
                            .lowest = 0};

bool ends_with(const std::string& path, std::string_view ending) {
  if (path.size() <= ending.size()) return false;
  return std::equal(ending.begin(), ending.end(), path.end() - static_cast<std::ptrdiff_t>(ending.size()),
                    [](char a, char b) { return a == (b >= 'A' && b <= 'Z' ? b - 'A' + 'a' : b); });
}

render::ReportInput report_input(const Survey& survey, plan::RuleSet by) {
  render::ReportInput input;
  input.system = survey.system;
  input.solved = survey.solved;
  input.hot_spots = survey.hot_spots;
  input.splits = survey.splits;
  input.findings = plan::check_all(survey.system, survey.solved, by);
  input.staircase = survey.staircase();
  input.bank = diagnose::judge_bank(survey.system);
  for (const solve::CaseSolution& solved : survey.solved)
    for (diagnose::ChargeSplit& split : diagnose::charging(survey.system, solved))
      input.charging.push_back(std::move(split));
  input.loss_intervals = survey.losses;
  input.inferred = survey.inferred;
  return input;
}

tl::expected<void, Exit> add_before(render::ReportInput& input, const Survey& survey, const Call& call,
                                    const Doors& doors) {
  if (!call.has(before)) return {};
  const auto earlier = read_job_as_found(call.text(before), doors);
  if (!earlier) return tl::unexpected(earlier.error());
  const netlist::System& written = earlier->as_written ? *earlier->as_written : earlier->system();
  auto comparison = diagnose::compare(written, survey.as_written);
  if (!comparison) {
    doors.complain(
        fmt::format("ohmtrail report: {}; {}", comparison.error().text, comparison.error().remedy));
    return tl::unexpected(Exit::no_solution);
  }
  input.before_after = render::BeforeAfter{written.info.job, std::move(*comparison), {}, {}};
  const auto& loads = input.before_after->comparison.loads;
  const auto most = std::max_element(loads.begin(), loads.end(), [](const auto& a, const auto& b) {
    return a.volts_after - a.volts_before < b.volts_after - b.volts_before;
  });
  if (most == loads.end()) return {};
  input.before_after->then = staircase_to(earlier->system(), most->in_case, most->id);
  input.before_after->now = staircase_to(survey.system, most->in_case, most->id);
  return {};
}

tl::expected<void, Exit> add_rewire(render::ReportInput& input, const Survey& survey, const Call& call,
                                    const Doors& doors) {
  if (!call.has(rewire)) return {};
  plan::SizeOptions options;
  options.time_limit_in_seconds = call.number(time_limit).value_or(20);
  auto sized = plan::size(survey.system, options);
  if (!sized) {
    doors.complain("ohmtrail report: " + sized.error());
    return tl::unexpected(Exit::mistake);
  }
  input.raised_by_rewire =
      plan::raised_by_rewire(survey.system, *sized, rules_asked_for(call, survey.system));
  input.rewire = std::move(*sized);
  return {};
}

Exit run(const Call& call, const Doors& doors) {
  const std::string path = call.text(output);
  const bool html = ends_with(path, ".html");
  if (!html && !ends_with(path, ".pdf")) {
    doors.complain(fmt::format("ohmtrail report: \"{}\" must end in .pdf or .html", path));
    return Exit::mistake;
  }
  const auto survey = make_survey(call, doors);
  if (!survey) return survey.error();
  render::ReportInput input = report_input(*survey, rules_asked_for(call, survey->system));
  if (const auto added = add_before(input, *survey, call, doors); !added) return added.error();
  if (const auto added = add_rewire(input, *survey, call, doors); !added) return added.error();
  if (call.has(bench)) input.bench_sheet = diagnose::bench_sheet(survey->system, survey->solved);
  const auto paper_size = paper_asked_for(call).value_or(render::Paper::a4);
  if (!write_output(path, html ? render::report_html(input) : render::report_pdf(input, paper_size), doors))
    return Exit::not_written;
  doors.terminal.out(printable_line(fmt::format("{}: report, {} {}", path, survey->hot_spots.size(),
                                                survey->hot_spots.size() == 1 ? "hot spot" : "hot spots")));
  return exit_of(call, all_solved(survey->solved), all_within(survey->solved));
}

}  // namespace

const Command commands::report{
    .name = "report",
    .summary = "for the customer, and the bench sheet",
    .description =
        "What was found in plain words, what can come of it and what to do first, the drawing, the worst "
        "connections with what comes back, limits met and broken, batteries, what was assumed, cautions. On "
        "demand: the cable for a rewire, an earlier survey beside this one, the sheet to take readings by.",
    .options = {options::file, output, options::in_case, before, bench, rewire, time_limit, rules, paper,
                options::as_rated, options::strict, options::jobs},
    .examples = {"ohmtrail report boat.json -o boat.pdf",
                 "ohmtrail report boat.json --bench --rewire -o boat.pdf",
                 "ohmtrail report after.json --before before.json -o cured.html"},
    .run = run};

}  // namespace ohmtrail::cli
