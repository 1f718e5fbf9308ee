#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "cli/text/parts.hpp"
#include "cli/text/rank.hpp"
#include "cli/text/words.hpp"
#include "ohmtrail/units/print.hpp"

namespace ohmtrail::cli {
namespace {

using diagnose::Swing;
using Align = Column::Align;
namespace u = units;

constexpr std::size_t elements_shown = 5;

std::string signed_volts(double si) {
  const std::string text = u::print(u::Voltage{std::abs(si)}, {.significant = 3, .keep_zeros = true});
  return (si < 0 ? "−" : "+") + text;
}

std::string shares(const Swing& swing) {
  std::string text;
  const auto add = [&](std::string_view name, double volts) {
    if (std::abs(volts) >= 5e-4)
      text += fmt::format("{}{} {}", text.empty() ? "" : ", ", name, signed_volts(volts));
  };
  for (const NamedPart& part : named(swing.parts)) add(part.name, part.volts);
  add("another source", swing.open_circuit);
  return text.empty() ? "nothing worth naming" : text;
}

Table element_table(const Swing& swing) {
  Table table({{"moved most by", Align::left, Narrow::cuts}, {"what", Align::left}, {"by", Align::right}});
  for (std::size_t i = 0; i < std::min(elements_shown, swing.elements.size()); ++i) {
    const diagnose::ElementSwing& change = swing.elements[i];
    table.row({change.element, role_in_words(change.role), signed_volts(change.change)});
  }
  return table;
}

void show_swing(Sheet& sheet, const Swing& swing) {
  const std::string limit = fmt::format("limit {}{}", u::print(u::Fraction{swing.limit_fraction}),
                                        swing.limit_given ? "" : ", common practice");
  sheet.line();
  sheet.paragraph(
      fmt::format("\"{}\" goes from {} to {}: {}, {} of rated ({}){}", swing.load,
                  u::print(u::Voltage{swing.before}, {.significant = 4}),
                  u::print(u::Voltage{swing.after}, {.significant = 4}), signed_volts(swing.change),
                  u::print(u::Fraction{swing.fraction}), limit, swing.within ? "" : ": TOO MUCH"),
      swing.within ? Ink::plain : Ink::bad);
  sheet.item("  ", shares(swing));
  if (!swing.elements.empty()) sheet.table(element_table(swing));
}

}  // namespace

void show_swings(Sheet& sheet, const netlist::System& system, const std::vector<Swing>& swings) {
  sheet.line(system.info.name, Ink::strong);
  if (swings.empty()) {
    sheet.line("No load runs in both cases.");
    return;
  }
  sheet.line(fmt::format("What moves each load's voltage from case \"{}\" to case \"{}\"",
                         swings.front().from_case, swings.front().to_case));
  for (const Swing& swing : swings) show_swing(sheet, swing);
}

}  // namespace ohmtrail::cli
