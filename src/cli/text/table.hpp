#pragma once
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "cli/text/ink.hpp"

namespace ohmtrail::cli {

/// What a column does when the page is too narrow for it.
enum class Narrow {
  stays,  ///< keeps its width
  cuts,   ///< ends in …
  wraps   ///< goes on in the next line
};

/// A column of a table for people. Its title may take several lines.
struct Column {
  enum class Align { left, right };
  std::string title;
  Align align = Align::left;
  Narrow narrow = Narrow::stays;
};

/// One cell; its text comes from anywhere and is made safe to show.
struct Cell {
  std::string text;
  Ink ink = Ink::plain;
  Cell(std::string shown, Ink as = Ink::plain)
      : text(std::move(shown)), ink(as) {}  // NOLINT(google-explicit-constructor)
  Cell(const char* shown) : text(shown) {}  // NOLINT(google-explicit-constructor)
};

/// A table of text, aligned by display columns.
class Table {
 public:
  explicit Table(std::vector<Column> columns) : columns_(std::move(columns)) {}
  void row(std::vector<Cell> cells);
  /// A line below the last row that starts at `column` and may run to the end of the page; wrapped where
  /// longer.
  void note(std::size_t column, const std::string& text, Ink ink = Ink::plain);
  [[nodiscard]] bool empty() const { return rows_.empty(); }
  /// Every line at most `width` columns, as far as the rigid columns allow, and indented by two.
  [[nodiscard]] std::string text(std::size_t width, bool colour) const;

 private:
  struct Note {
    std::size_t column;
    Cell cell;
  };
  struct Row {
    std::vector<Cell> cells;
    std::vector<Note> notes;
  };
  [[nodiscard]] std::vector<std::size_t> widths(std::size_t page) const;
  /// Titles on one line where there is room.
  void widen_for_titles(std::vector<std::size_t>& widths, std::size_t& total, std::size_t page) const;
  [[nodiscard]] std::string line(const std::vector<Cell>& cells, const std::vector<std::size_t>& widths,
                                 bool title, bool colour) const;

  std::vector<Column> columns_;
  std::vector<Row> rows_;
};

}  // namespace ohmtrail::cli
