#include "cli/text/notes.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "cli/json/common.hpp"
#include "ohmtrail/units/print.hpp"

namespace ohmtrail::cli {
namespace {

bool rests_on_tables(const network::Assumption& assumption) {
  return assumption.text.starts_with("sound resistance");
}

/// The value with the unit that the text implies.
std::string value_in_words(const network::Assumption& assumption) {
  if (!assumption.value) return "";
  const auto speaks_of = [&](std::string_view word) {
    return assumption.text.find(word) != std::string::npos;
  };
  std::string value = units::print_number(*assumption.value);
  if (speaks_of("temperature"))
    value = units::print(units::Temperature{*assumption.value});
  else if (speaks_of("resistance"))
    value = units::print(units::Resistance{*assumption.value});
  else if (speaks_of("voltage"))
    value = units::print(units::Voltage{*assumption.value}, {.significant = 4});
  return value + ", ";
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
  sheet.line("Assumed, because the file does not say");
  for (const std::string& line : told_once(all)) sheet.item("  - ", line, Ink::faint);
  const auto from_tables = std::count_if(all.begin(), all.end(), rests_on_tables);
  if (from_tables == 0) return;
  sheet.item(
      "  - ",
      fmt::format("what {} would have if sound: from the built-in tables; --json lists it with its sources",
                  from_tables == 1 ? "1 part" : fmt::format("{} parts", from_tables)),
      Ink::faint);
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
