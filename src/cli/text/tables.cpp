#include "cli/text/tables.hpp"

#include <fmt/format.h>

#include <cmath>

#include "cli/text/printable.hpp"
#include "ohmtrail/units/print.hpp"

namespace ohmtrail::cli {
namespace {

using Align = cli::Column::Align;

/// Digits enough for every published figure; the exact value is in --csv and --json.
constexpr units::Format digits{.significant = 7};

std::string shown(const trade::Cell& cell) {
  if (const auto* value = std::get_if<double>(&cell)) return units::print_number(*value, digits);
  if (const auto* text = std::get_if<std::string>(&cell)) return *text;
  return "";
}

bool holds_numbers(const trade::Table& table, std::size_t column) {
  for (const auto& row : table.rows)
    if (std::holds_alternative<std::string>(row[column])) return false;
  return true;
}

}  // namespace

void show_table(Sheet& sheet, const trade::Table& table) {
  sheet.line(table.title, Ink::strong);
  sheet.line();
  std::vector<Column> columns;
  for (std::size_t c = 0; c < table.columns.size(); ++c) {
    const bool numbers = holds_numbers(table, c);
    const trade::Column& column = table.columns[c];
    columns.push_back({column.unit.empty() ? column.name : fmt::format("{} {}", column.name, column.unit),
                       numbers ? Align::right : Align::left, numbers ? Narrow::stays : Narrow::wraps});
  }
  Table text(std::move(columns));
  for (const auto& cells : table.rows) {
    std::vector<Cell> row;
    for (const trade::Cell& cell : cells) row.emplace_back(shown(cell));
    text.row(std::move(row));
  }
  sheet.table(text);
  sheet.line();
  sheet.item("Source: ", table.source, Ink::faint);
  for (const std::string& doubt : table.doubts) sheet.item("Doubt: ", doubt, Ink::warning);
}

void show_tables(Sheet& sheet, const std::vector<trade::Table>& tables) {
  Table list({{"name", Align::left}, {"what it holds", Align::left, Narrow::wraps}});
  for (const trade::Table& table : tables) list.row({table.name, table.title});
  sheet.table(list);
  sheet.line();
  sheet.line("ohmtrail tables NAME prints one with its source.");
}

}  // namespace ohmtrail::cli
