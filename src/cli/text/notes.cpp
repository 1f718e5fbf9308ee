#include "cli/text/notes.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "cli/json/common.hpp"
#include "ohmtrail/units/print.hpp"

namespace ohmtrail::cli {
namespace {

using network::Assumed;

bool rests_on_tables(const network::Assumption& assumption) {
  return assumption.quantity == Assumed::sound_resistance;
}

std::string printed(Assumed quantity, double value) {
  switch (quantity) {
    case Assumed::ambient:
      return units::print(units::Temperature{value});
    case Assumed::sound_resistance:
    case Assumed::resistance:
      return units::print(units::Resistance{value});
    case Assumed::voltage:
      return units::print(units::Voltage{value}, {.significant = 4});
    case Assumed::chance:
      return units::print(units::Fraction{value});
    case Assumed::other:
      break;
  }
  return "";
}

std::string value_in_words(const network::Assumption& assumption) {
  if (!assumption.value || assumption.quantity == Assumed::other) return "";
  return printed(assumption.quantity, *assumption.value) + ", ";
}

/// What does not rest on tables. What holds in several cases is told once.
std::vector<std::string> told_once(const std::vector<network::Assumption>& all) {
  std::vector<std::string> lines;
  for (const network::Assumption& assumption : all) {
    if (rests_on_tables(assumption)) continue;
    const std::string text = assumption.text.substr(0, assumption.text.find(" in case "));
    std::string line = fmt::format("{}: {}{}", assumption.id, value_in_words(assumption), text);
    if (std::find(lines.begin(), lines.end(), line) == lines.end()) lines.push_back(std::move(line));
  }
  return lines;
}

}  // namespace

void show_assumptions(Sheet& sheet, const std::vector<solve::CaseSolution>& solved) {
  show_assumptions(sheet, assumptions_of(solved));
}

void show_assumptions(Sheet& sheet, const std::vector<network::Assumption>& all) {
  if (all.empty()) return;
  sheet.line();
  sheet.line("Taken as given or assumed");
  for (const std::string& line : told_once(all)) sheet.item("  - ", line, Ink::faint);
  const auto from_tables = std::count_if(all.begin(), all.end(), rests_on_tables);
  if (from_tables == 0) return;
  sheet.item(
      "  - ",
      fmt::format("what {} would have if sound: from the built-in tables; --json lists it with its sources",
                  from_tables == 1 ? "1 part" : fmt::format("{} parts", from_tables)),
      Ink::faint);
}

void show_unused_readings(Sheet& sheet, const netlist::System& system) {
  if (system.readings.empty()) return;
  sheet.line();
  sheet.paragraph(
      fmt::format("Worked out from the description alone: {} in the file {} not used here. ohmtrail infer "
                  "-o writes a file with the resistances that they show.",
                  system.readings.size() == 1 ? "the reading"
                                              : fmt::format("the {} readings", system.readings.size()),
                  system.readings.size() == 1 ? "is" : "are"),
      Ink::warning);
}

void show_cautions(Sheet& sheet) {
  sheet.line();
  sheet.line("Before you undo anything", Ink::strong);
  sheet.item(
      "  ",
      "Chargers, solar and shore power off, then prove it dead. Batteries give off gas that explodes and "
      "hold acid; a short circuit can pass thousands of amperes: rings and watch straps off, tools "
      "insulated, meter fused. This advises; local codes and a licensed electrician decide.");
}

}  // namespace ohmtrail::cli
