#pragma once
#include <array>
#include <charconv>
#include <string>
#include <string_view>

#include "ohmtrail/trade/table.hpp"

/// Tables that are only listed: rows as published, each with how it is known and its own source.
namespace ohmtrail::trade::tables {

template <std::size_t N>
struct ListedRow {
  std::array<std::string_view, N> cells;
  std::string_view known;  ///< found, found and doubtful, from memory, derived, common practice
  std::string_view source;
};

/// A number where the whole text is one, words otherwise.
[[nodiscard]] inline Cell listed_cell(std::string_view text) {
  if (text.empty()) return {};
  double value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error == std::errc{} && end == text.data() + text.size()) return value;
  return std::string(text);
}

template <std::size_t N, std::size_t Rows>
void add_listed(Table& table, const std::array<ListedRow<N>, Rows>& rows) {
  table.columns.push_back({"how known", ""});
  table.columns.push_back({"source", ""});
  for (const auto& row : rows) {
    std::vector<Cell> cells;
    for (const auto text : row.cells) cells.push_back(listed_cell(text));
    cells.push_back(listed_cell(row.known));
    cells.push_back(listed_cell(row.source));
    table.rows.push_back(std::move(cells));
  }
}

}  // namespace ohmtrail::trade::tables
