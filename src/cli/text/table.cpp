#include "cli/text/table.hpp"

#include <algorithm>
#include <numeric>

#include "cli/text/printable.hpp"
#include "cli/text/wrap.hpp"

namespace ohmtrail::cli {
namespace {

constexpr std::size_t indent = 2, gap = 2, narrowest = 6;

/// `text` in exactly `width` columns.
std::string padded(const Cell& cell, Column::Align align, std::size_t width, bool colour) {
  const std::string text = fitted(cell.text, width);
  const std::string blanks(width - std::min(width, columns_of(text)), ' ');
  const std::string shown = inked(text, cell.ink, colour);
  return align == Column::Align::right ? blanks + shown : shown + blanks;
}

void trim_end(std::string& line) { line.erase(line.find_last_not_of(' ') + 1); }

}  // namespace

void Table::row(std::vector<Cell> cells) {
  for (Cell& cell : cells) cell.text = printable(cell.text);
  rows_.push_back({std::move(cells), {}});
}

void Table::note(std::size_t column, std::string text, Ink ink) {
  rows_.back().notes.push_back({column, Cell(printable(text), ink)});
}

std::vector<std::size_t> Table::widths(std::size_t page) const {
  std::vector<std::size_t> widths;
  for (std::size_t c = 0; c < columns_.size(); ++c) {
    std::size_t widest = columns_of(columns_[c].title);
    for (const Row& row : rows_) widest = std::max(widest, columns_of(row.cells[c].text));
    widths.push_back(widest);
  }
  std::size_t total = std::accumulate(widths.begin(), widths.end(), indent + gap * (columns_.size() - 1));
  while (total > page) {
    std::size_t widest = columns_.size();
    for (std::size_t c = 0; c < columns_.size(); ++c)
      if (columns_[c].flexible && (widest == columns_.size() || widths[c] > widths[widest])) widest = c;
    if (widest == columns_.size() || widths[widest] <= narrowest) break;
    --widths[widest];
    --total;
  }
  return widths;
}

std::string Table::line(const std::vector<Cell>& cells, const std::vector<std::size_t>& widths,
                        bool colour) const {
  std::string line(indent, ' ');
  for (std::size_t c = 0; c < columns_.size(); ++c) {
    if (c > 0) line.append(gap, ' ');
    line += padded(cells[c], columns_[c].align, widths[c], colour);
  }
  trim_end(line);
  return line + '\n';
}

std::string Table::text(std::size_t width, bool colour) const {
  const std::vector<std::size_t> all = widths(width);
  std::vector<Cell> titles;
  for (const Column& column : columns_) titles.emplace_back(column.title, Ink::faint);
  std::string text = line(titles, all, colour);
  for (const Row& row : rows_) {
    text += line(row.cells, all, colour);
    for (const Note& note : row.notes) {
      const auto before = all.begin() + static_cast<std::ptrdiff_t>(note.column);
      const std::size_t start = std::accumulate(all.begin(), before, indent + gap * note.column);
      const std::string lines = wrapped(note.cell.text, width, start, "");
      text += std::string(start, ' ') + inked(lines.substr(0, lines.size() - 1), note.cell.ink, colour) + '\n';
    }
  }
  return text;
}

}  // namespace ohmtrail::cli
