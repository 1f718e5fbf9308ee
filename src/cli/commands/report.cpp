#include <fmt/format.h>

#include <algorithm>

#include "cli/commands/commands.hpp"
#include "cli/commands/picture_options.hpp"
#include "cli/commands/survey.hpp"
#include "cli/pipeline.hpp"
#include "cli/text/printable.hpp"
#include "ohmtrail/diagnose/bank.hpp"
#include "ohmtrail/diagnose/check_system.hpp"
#include "render/report.hpp"

namespace ohmtrail::cli {
namespace {

constexpr Option output{.name = "-o,--output",
                        .value = "OUT",
                        .sentence = "the report to write: .pdf or .html by its ending",
                        .required = true};

bool ends_with(const std::string& path, std::string_view ending) {
  if (path.size() <= ending.size()) return false;
  return std::equal(ending.begin(), ending.end(), path.end() - static_cast<std::ptrdiff_t>(ending.size()),
                    [](char a, char b) { return a == (b >= 'A' && b <= 'Z' ? b - 'A' + 'a' : b); });
}

render::ReportInput report_input(const Survey& survey) {
  render::ReportInput input;
  input.system = survey.system;
  input.solved = survey.solved;
  input.hot_spots = survey.hot_spots;
  input.splits = survey.splits;
  input.findings = diagnose::check_system(survey.system, survey.solved);
  input.staircase = survey.staircase();
  input.bank = diagnose::judge_bank(survey.system);
  return input;
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
  const render::ReportInput input = report_input(*survey);
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
        "What was found in plain words, the drawing, the worst connections with what to do and what comes "
        "back, what was assumed, cautions.",
    .options = {options::file, output, options::in_case, paper, options::as_rated, options::strict},
    .examples = {"ohmtrail report boat.json -o boat.pdf"},
    .run = run};

}  // namespace ohmtrail::cli
