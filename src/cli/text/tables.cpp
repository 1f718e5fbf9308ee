#include "cli/text/tables.hpp"

#include <fmt/format.h>

#include <algorithm>
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

/// Long notes and sources stand below the table, each text once, and are referred to by number.
class Footnotes {
 public:
  explicit Footnotes(const trade::Table& table) {
    for (std::size_t c = 0; c < table.columns.size(); ++c)
      taken_.push_back(is_remark(table.columns[c].name) && longest(table, c) > widest_in_table);
  }
  /// The cell itself, or the number of its footnote.
  std::string cell(std::size_t column, std::string text) {
    if (!taken_[column] || text.empty()) return text;
    const auto found = std::find(texts_.begin(), texts_.end(), text);
    const auto number = found - texts_.begin() + 1;
    if (found == texts_.end()) texts_.push_back(std::move(text));
    return fmt::format("[{}]", number);
  }
  void show(Sheet& sheet) const {
    for (std::size_t i = 0; i < texts_.size(); ++i)
      sheet.item(fmt::format("[{}] ", i + 1), texts_[i], Ink::faint);
  }

 private:
  static constexpr std::size_t widest_in_table = 24;
  static bool is_remark(std::string_view column) { return column == "source" || column == "note"; }
  static std::size_t longest(const trade::Table& table, std::size_t column) {
    std::size_t most = 0;
    for (const auto& row : table.rows) most = std::max(most, shown(row[column]).size());
    return most;
  }
  std::vector<bool> taken_;
  std::vector<std::string> texts_;
};

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
  Footnotes footnotes(table);
  for (const auto& cells : table.rows) {
    std::vector<Cell> row;
    for (std::size_t c = 0; c < cells.size(); ++c) row.emplace_back(footnotes.cell(c, shown(cells[c])));
    text.row(std::move(row));
  }
  sheet.table(text);
  sheet.line();
  footnotes.show(sheet);
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
