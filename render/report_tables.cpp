#include <algorithm>
#include <cmath>
#include <set>

#include "render/bank.hpp"
#include "render/diagram.hpp"
#include "render/number.hpp"
#include "render/repairs.hpp"
#include "render/report_parts.hpp"
#include "render/staircase.hpp"
#include "render/text.hpp"
#include "render/words.hpp"

namespace ohmtrail::render {
namespace {

/// The condition to draw: that of the worst sag, else the first.
const solve::CaseSolution* case_to_draw(const ReportInput& input) {
  if (input.solved.empty()) return nullptr;
  if (const auto worst = worst_split(input.system, input.solved, input.splits))
    for (const solve::CaseSolution& solved : input.solved)
      if (solved.network.case_name == input.splits[*worst].in_case) return &solved;
  return &input.solved.front();
}

/// Never quite certain: readings leave a rest of doubt.
std::string how_sure(double odds) {
  if (odds > diagnose::nearly_sure) return std::string(text::nearly_sure);
  return odds < diagnose::hardly ? std::string(text::hardly) : fmt::format("{:.0f}\u202F%", 100 * odds);
}

std::vector<std::string> connection_row(const ReportInput& input, const Repair& repair, bool with_odds) {
  const diagnose::HotSpot& spot = repair.first();
  const std::string each = repair.of_each() ? std::string(text::each) : std::string();
  std::vector<std::string> row{ranks(repair),
                               sentence(where(input.system, repair)) + ": " + std::string(what_it_is(repair)),
                               volts(diagnose::lost_volts(spot)) + each, watts(spot.heat) + each,
                               spot.temperature ? celsius(*spot.temperature) : "–"};
  const std::optional<double> odds = diagnose::odds_of(spot);
  if (with_odds) row.push_back(odds ? how_sure(*odds) : "–");
  row.push_back(what_to_do(input.system, repair));
  row.push_back(spot.recoverable ? volts(spot.recoverable->volts) + each : "–");
  return row;
}

std::vector<Column> connection_columns(bool with_odds) {
  std::vector<Column> columns{{std::string(text::column_number), 0.6},
                              {std::string(text::column_where), 3.35},
                              {std::string(text::column_lost), 1.05, Align::right},
                              {std::string(text::column_heat), 1.15, Align::right},
                              {std::string(text::column_hot), 1.2, Align::right}};
  if (with_odds) columns.push_back({std::string(text::column_sure), 0.8, Align::right});
  columns.push_back({std::string(text::column_do), 4.4});
  columns.push_back({std::string(text::column_back), 1.05, Align::right});
  return columns;
}

std::vector<std::string> battery_row(const netlist::System& system, const diagnose::BatteryVerdict& verdict) {
  const auto battery = std::find_if(system.batteries.begin(), system.batteries.end(),
                                    [&](const netlist::Battery& b) { return b.id == verdict.id; });
  const bool rested = battery != system.batteries.end() && battery->checks.rest;
  return {verdict.id, rested ? standing_volts(battery->checks.rest->volts.si()) : "–",
          percent(verdict.charge.of_one()), volts(verdict.lost_per_100_amperes.si()), verdict.in_words};
}

/// Whether a picture tells more than the table does.
bool has_more_than_rest(const netlist::System& system) {
  return std::any_of(system.batteries.begin(), system.batteries.end(), [](const netlist::Battery& battery) {
    return battery.checks.load_test || !battery.checks.cells.empty();
  });
}

/// Batteries of which the same is said share a row.
void add_battery(Rows& rows, std::vector<std::string> row) {
  for (auto& known : rows)
    if (std::equal(known.begin() + 1, known.end(), row.begin() + 1)) {
      known.front() += ", " + row.front();
      return;
    }
  rows.push_back(std::move(row));
}

/// Parts of an assumption that are named.
constexpr std::size_t most_parts = 2;

/// "ambient temperature 18 °C", once for cases that share it.
std::vector<std::string> ambients(const ReportInput& input) {
  std::vector<std::string> list;
  for (const solve::CaseSolution& solved : input.solved)
    for (const network::Assumption& assumed : solved.network.assumptions) {
      if (assumed.quantity != network::Assumed::ambient || !assumed.value) continue;
      std::string words = filled(text::assumed_ambient, celsius(*assumed.value));
      if (std::find(list.begin(), list.end(), words) == list.end()) list.push_back(std::move(words));
    }
  return list;
}

/// What was assumed, each once with the parts it was assumed of. Every sound conductor is worked out in the
/// same way, with its own numbers: one sentence for all.
std::vector<std::string> assumptions(const ReportInput& input) {
  std::vector<std::pair<std::string, std::vector<std::string>>> by_text;
  std::vector<std::string> wires;
  std::set<std::pair<std::string, std::string>> told;
  for (const solve::CaseSolution& solved : input.solved)
    for (const network::Assumption& assumed : solved.network.assumptions) {
      if (assumed.quantity == network::Assumed::ambient || !told.insert({assumed.id, assumed.text}).second)
        continue;
      const auto element = solved.network.element(assumed.id);
      if (element &&
          solved.network.elements[static_cast<std::size_t>(*element)].role == network::Role::wire) {
        if (std::find(wires.begin(), wires.end(), assumed.id) == wires.end()) wires.push_back(assumed.id);
        continue;
      }
      auto same = std::find_if(by_text.begin(), by_text.end(),
                               [&](const auto& known) { return known.first == assumed.text; });
      if (same == by_text.end()) same = by_text.insert(by_text.end(), {assumed.text, {}});
      same->second.push_back(assumed.id);
    }
  std::vector<std::string> list;
  if (!wires.empty()) list.push_back(filled(text::assumed_wires, listed(input.system, wires, most_parts)));
  std::string of_system;
  for (const std::string& words : ambients(input)) of_system += (of_system.empty() ? "" : "; ") + words;
  for (const auto& [words, ids] : by_text)
    if (ids.front() == "system") of_system += (of_system.empty() ? "" : "; ") + words;
  if (!of_system.empty()) list.push_back(sentence(of_system));
  for (const auto& [words, ids] : by_text)
    if (ids.front() != "system")
      list.push_back(sentence(filled(text::assumed_of, listed(input.system, ids, most_parts), words)));
  return list;
}

}  // namespace

ReportPictures draw_pictures(const ReportInput& input, std::optional<Paper> paper) {
  ReportPictures pictures;
  if (const solve::CaseSolution* solved = case_to_draw(input)) {
    pictures.diagram_heading = filled(text::heading_diagram, solved->network.case_name);
    if (paper) {
      DiagramSheets sheets = diagram_sheets(input.system, *solved, input.hot_spots, *paper);
      pictures.diagram = std::move(sheets.trunk);
      pictures.boards = std::move(sheets.boards);
    } else {
      pictures.diagram = diagram(input.system, *solved, input.hot_spots);
    }
  }
  if (input.staircase) {
    pictures.staircase_heading = filled(text::heading_staircase, where(input.system, input.staircase->load));
    pictures.staircase = staircase_picture(input.system, *input.staircase, false);
  }
  return pictures;
}

void tell_pictures(Document& document, const ReportPictures& pictures) {
  if (pictures.diagram) document.full_picture(pictures.diagram_heading, *pictures.diagram);
  if (pictures.staircase) document.picture(pictures.staircase_heading, *pictures.staircase);
}

void tell_boards(Document& document, const ReportPictures& pictures) {
  if (pictures.boards.empty()) return;
  document.begin_sheet();
  for (const Scene& board : pictures.boards) document.picture(board.title, board);
}

void tell_connections(Document& document, const ReportInput& input, const Brevity& brevity) {
  document.heading(text::heading_connections);
  if (input.hot_spots.empty()) {
    document.paragraph(input.inferred ? text::no_connections_likely : text::no_connections);
    return;
  }
  Rows rows;
  const bool with_odds =
      std::any_of(input.hot_spots.begin(), input.hot_spots.end(),
                  [](const diagnose::HotSpot& spot) { return spot.likelihood.has_value(); });
  const std::vector<Repair> list = repairs(input.hot_spots);
  for (std::size_t k = 0; k < std::min(brevity.connections, list.size()); ++k)
    rows.push_back(connection_row(input, list[k], with_odds));
  document.table(connection_columns(with_odds), rows);
  if (list.size() > rows.size())
    document.paragraph(filled(text::connections_more, list.size() - rows.size()), Tone::small);
}

void tell_batteries(Document& document, const ReportInput& input) {
  if (!input.bank || input.bank->batteries.empty()) return;
  Rows rows;
  for (const diagnose::BatteryVerdict& verdict : input.bank->batteries)
    add_battery(rows, battery_row(input.system, verdict));
  document.together([&] {
    document.heading(text::heading_batteries);
    document.table({{std::string(text::column_battery), 1.4},
                    {std::string(text::column_rest), 0.9, Align::right},
                    {std::string(text::column_charge), 0.9, Align::right},
                    {std::string(text::column_per_100), 1.2, Align::right},
                    {std::string(text::column_in_words), 4.6}},
                   rows);
    if (has_more_than_rest(input.system))
      document.picture({}, bank_picture(input.system, *input.bank, document.width()));
  });
}

void tell_small_print(Document& document, const ReportInput& input) {
  document.subheading(text::heading_assumptions);
  const std::vector<std::string> assumed = assumptions(input);
  for (const std::string& words : assumed) document.paragraph(words, Tone::small);
  if (assumed.empty()) document.paragraph(text::no_assumptions, Tone::small);
  document.subheading(text::heading_method);
  document.paragraph(text::method_network, Tone::small);
  document.paragraph(input.inferred ? text::method_readings : text::method_values, Tone::small);
  document.paragraph(std::string(text::method_back) + " " + std::string(text::method_temperature),
                     Tone::small);
  document.paragraph(text::sources, Tone::small);
}

void tell_cautions(Document& document) {
  document.heading(text::heading_cautions);
  document.paragraph(text::cautions);
  document.heading(text::heading_limits_of_advice);
  document.paragraph(text::limits_of_advice);
}

void tell_report(Document& document, const ReportInput& input, const ReportPictures& pictures,
                 const Brevity& brevity) {
  tell_front(document, input);
  tell_findings(document, input, brevity);
  tell_limits(document, input, brevity);
  tell_not_examined(document, input);
  tell_pictures(document, pictures);
  tell_connections(document, input, brevity);
  tell_batteries(document, input);
  tell_charging(document, input, brevity);
  tell_small_print(document, input);
  tell_cautions(document);
}

void tell_extras(Document& document, const ReportInput& input) {
  tell_rewire(document, input);
  tell_before_after(document, input);
  tell_bench_sheet(document, input);
}

}  // namespace ohmtrail::render
