#include <fmt/format.h>

#include <algorithm>

#include "cli/commands/commands.hpp"
#include "cli/commands/picture_options.hpp"
#include "cli/commands/survey.hpp"
#include "cli/pipeline.hpp"
#include "cli/text/printable.hpp"
#include "ohmtrail/diagnose/bank.hpp"
#include "render/bank.hpp"
#include "render/diagram.hpp"
#include "render/staircase.hpp"

namespace ohmtrail::cli {
namespace {

constexpr Option output{.name = "-o,--output",
                        .value = "OUT",
                        .sentence = "the picture to write: .svg, .png or .pdf by its ending",
                        .required = true};
constexpr Option shown_case{.name = options::in_case.name,
                            .value = options::in_case.value,
                            .sentence = "the case to show (default: the one in which a load is worst off)"};
constexpr Option staircase{.name = "--staircase",
                           .sentence = "the voltage from battery to load and back, step by step"};
constexpr Option show{.name = "--show",
                      .value = "volts|amps|heat|gauge",
                      .sentence = "the number beside each thing (default: volts lost)",
                      .excludes = "--staircase"};
constexpr Option load{.name = "--load",
                      .value = "ID",
                      .sentence = "with --staircase: the load it leads to (default: the worst off)"};

render::DiagramOptions diagram_options(const Call& call) {
  const std::string word = call.text(show, "volts");
  if (word == "amps") return {render::Show::amps};
  if (word == "heat") return {render::Show::heat};
  if (word == "gauge") return {render::Show::gauge};
  return {render::Show::volts};
}

constexpr Option battery_tests{.name = "--bank",
                               .sentence = "the batteries' own tests: voltages, each cell's specific gravity",
                               .excludes = "--staircase"};

/// The picture and what to say of it.
struct Picture {
  render::Scene scene;
  std::string title;
  std::vector<render::Scene> sheets;  ///< further ones, of a diagram that one page could not show readably
};

Picture wiring_diagram(const Survey& survey, const Call& call) {
  const solve::CaseSolution& solved = survey.case_to_show();
  std::string title = fmt::format("wiring diagram, case \"{}\"", solved.network.case_name);
  const auto on = paper_asked_for(call);
  const bool pdf = render::file_kind(call.text(output)) == render::FileKind::pdf;
  if (!on || !pdf)
    return {render::diagram(survey.system, solved, survey.hot_spots, diagram_options(call)),
            std::move(title),
            {}};
  auto sheets = render::diagram_sheets(survey.system, solved, survey.hot_spots, *on, diagram_options(call));
  return {std::move(sheets.trunk), std::move(title), std::move(sheets.boards)};
}

tl::expected<Picture, Exit> staircase_picture(const Survey& survey, const Call& call, const Doors& doors) {
  const auto steps = survey.staircase(call.text(load));
  if (steps)
    return Picture{render::staircase_picture(survey.system, *steps),
                   fmt::format("voltage staircase to \"{}\", case \"{}\"", steps->load, steps->in_case),
                   {}};
  doors.complain(call.has(load)
                     ? fmt::format("ohmtrail draw: no load \"{}\" runs in these cases", call.text(load))
                     : "ohmtrail draw: no load runs, so there is no staircase to draw");
  return tl::unexpected(Exit::mistake);
}

tl::expected<Picture, Exit> bank_picture(const Survey& survey, const Doors& doors) {
  if (render::has_checks(survey.system))
    return Picture{render::bank_page(survey.system, diagnose::judge_bank(survey.system)),
                   "the batteries' own tests",
                   {}};
  doors.complain("ohmtrail draw: the file holds no battery checks, so there is nothing to draw with --bank");
  return tl::unexpected(Exit::mistake);
}

tl::expected<Picture, Exit> picture_asked_for(const Survey& survey, const Call& call, const Doors& doors) {
  if (call.has(staircase)) return staircase_picture(survey, call, doors);
  if (call.has(battery_tests)) return bank_picture(survey, doors);
  return wiring_diagram(survey, call);
}

Exit run(const Call& call, const Doors& doors) {
  const std::string path = call.text(output);
  const auto kind = render::file_kind(path);
  if (!kind) {
    doors.complain(fmt::format("ohmtrail draw: \"{}\" must end in .svg, .png or .pdf", path));
    return Exit::mistake;
  }
  const auto survey = make_survey(call, doors);
  if (!survey) return survey.error();
  const auto picture = picture_asked_for(*survey, call, doors);
  if (!picture) return picture.error();
  if (!write_output(path, render::encode(picture->scene, *kind, paper_asked_for(call), picture->sheets),
                    doors))
    return Exit::not_written;
  doors.terminal.out(printable_line(fmt::format("{}: {}", path, picture->title)));
  return exit_of(call, all_solved(survey->solved), all_within(survey->solved));
}

}  // namespace

const Command commands::draw{
    .name = "draw",
    .summary = "a wiring diagram, or the voltage staircase",
    .description =
        "Draws the system from batteries on the left to loads on the right, coloured by the volts lost, "
        "hot spots numbered as rank lists them.",
    .options = {options::file, output, shown_case, staircase, battery_tests, load, show, paper,
                options::as_rated, options::strict, options::jobs},
    .examples = {"ohmtrail draw boat.json -o boat.svg", "ohmtrail draw boat.json --staircase -o sag.png"},
    .run = run};

}  // namespace ohmtrail::cli
