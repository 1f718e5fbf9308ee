#include "cli/text/infer.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "cli/text/infer_doubts.hpp"
#include "cli/text/infer_verdicts.hpp"
#include "cli/text/infer_words.hpp"
#include "cli/text/notes.hpp"
#include "cli/text/words.hpp"
#include "ohmtrail/diagnose/infer_apply.hpp"
#include "ohmtrail/diagnose/point_in_words.hpp"

namespace ohmtrail::cli {
namespace {

using namespace diagnose;
using Align = Column::Align;

Ink ink_of(double probability) {
  if (probability >= worth_a_verdict) return Ink::bad;
  return probability >= worth_a_row ? Ink::warning : Ink::plain;
}

void add_row(Table& table, const InferResult& result, const std::string& id) {
  for (const InferredElement& e : result.elements)
    if (e.id == id && e.fault_probability >= worth_a_row)
      table.row({Cell(e.id, Ink::strong), print_ohms(e.resistance),
                 fmt::format("{} … {}", print_ohms(e.low), print_ohms(e.high)),
                 print_ohms(e.sound_resistance),
                 Cell(percent_sure(e.fault_probability), ink_of(e.fault_probability))});
  for (const InferredBattery& b : result.batteries)
    if (b.id == id && b.fault_probability >= worth_a_row)
      table.row({Cell(b.id, Ink::strong), print_ohms(b.resistance),
                 fmt::format("{} … {}", print_ohms(b.low), print_ohms(b.high)), "–",
                 Cell(percent_sure(b.fault_probability), ink_of(b.fault_probability))});
}

void show_table(Sheet& sheet, const InferResult& result) {
  Table table({{"suspect", Align::left, Narrow::cuts},
               {"resistance", Align::right},
               {"90 % between", Align::right},
               {"sound", Align::right},
               {"faulty", Align::right}});
  for (const std::string& id : result.suspects) add_row(table, result, id);
  if (table.empty()) return;
  sheet.line();
  sheet.table(table);
  if (!unparted(result).empty())
    sheet.item(
        "  ",
        "Resistances are those of the likeliest explanation: parts that share the odds may change places.",
        Ink::faint);
}

bool was_read(const netlist::System& system, const std::pair<std::string, std::string>& points) {
  return std::any_of(system.readings.begin(), system.readings.end(), [&](const netlist::Reading& reading) {
    const auto* volts = std::get_if<netlist::VoltsReading>(&reading.what);
    return volts != nullptr && ((volts->red == points.first && volts->black == points.second) ||
                                (volts->red == points.second && volts->black == points.first));
  });
}

/// The first reading that splits the group and was not taken yet.
void show_separation(Sheet& sheet, const netlist::System& system, const UnresolvedGroup& group) {
  const auto next = std::find_if_not(group.separate_at.begin(), group.separate_at.end(),
                                     [&](const auto& points) { return was_read(system, points); });
  if (next == group.separate_at.end()) return;
  sheet.item("    ",
             fmt::format("A reading from {} to {} narrows it down.", point_in_words(system, next->first),
                         point_in_words(system, next->second)),
             Ink::faint);
}

void show_unresolved(Sheet& sheet, const netlist::System& system, const network::Network& network,
                     const InferResult& result) {
  const auto unread = std::count_if(result.elements.begin(), result.elements.end(),
                                    [](const InferredElement& e) { return !e.informed; });
  if (result.unresolved.empty() && unread == 0) return;
  sheet.line();
  sheet.line("What these readings cannot tell", Ink::strong);
  for (const UnresolvedGroup& group : result.unresolved) {
    const std::string sum =
        std::isnan(group.sum)
            ? "cannot be told apart"
            : fmt::format("together {} ({} … {}); the sum is sure, the split is not", print_ohms(group.sum),
                          print_ohms(group.low), print_ohms(group.high));
    sheet.item("  - ",
               fmt::format("{}: {}.", capitalised(where_are(system, network, result, group.ids)), sum));
    show_separation(sheet, system, group);
  }
  if (unread > 0)
    sheet.item("  - ", fmt::format("{} that no reading says anything of.",
                                   unread == 1 ? "1 part" : fmt::format("{} parts", unread)));
}

// Rounded up, as becomes a bound.
void show_left_out(Sheet& sheet, const InferResult& result) {
  if (result.left_out == 0) return;
  sheet.paragraph(fmt::format("Explanations that were not weighed hold at most {} % of the probability.",
                              std::ceil(1000 * result.left_out) / 10),
                  Ink::faint);
}

void show_fit(Sheet& sheet, const InferResult& result) {
  if (result.fit.degrees_of_freedom == 0) return;
  sheet.line();
  sheet.paragraph(fmt::format("{} (chi-square {:.1f} for {}, p = {:.2g}).",
                              result.fit.p_value < 0.01 ? "The readings and this netlist do not agree well"
                                                        : "The readings and this netlist agree",
                              result.fit.chi_square,
                              result.fit.degrees_of_freedom == 1
                                  ? "1 independent value"
                                  : fmt::format("{} independent values", result.fit.degrees_of_freedom),
                              result.fit.p_value),
                  Ink::faint);
}

}  // namespace

void show_inference(Sheet& sheet, const netlist::System& system, const network::Network& network,
                    const InferResult& result) {
  sheet.line(system.info.name, Ink::strong);
  show_verdicts(sheet, system, network, result);
  show_table(sheet, result);
  show_unresolved(sheet, system, network, result);
  show_doubts(sheet, system, result);
  show_fit(sheet, result);
  show_left_out(sheet, result);
  std::vector<network::Assumption> assumed = network.assumptions;
  assumed.insert(assumed.end(), result.assumptions.begin(), result.assumptions.end());
  show_assumptions(sheet, assumed);
  show_cautions(sheet);
}

}  // namespace ohmtrail::cli
