#include "cli/text/table.hpp"

#include <algorithm>
#include <numeric>

#include "cli/text/printable.hpp"
#include "cli/text/wrap.hpp"

namespace ohmtrail::cli {
namespace {

constexpr std::size_t indent = 2, gap = 2, narrowest = 6;

/// `text` in exactly `width` columns.
std::string padded(const std::string& text, const Column& column, std::size_t width, Ink ink, bool colour) {
  const std::string blanks(width - std::min(width, columns_of(text)), ' ');
  const std::string shown = inked(text, ink, colour);
  return column.align == Column::Align::right ? blanks + shown : shown + blanks;
}

/// The lines of `text` in a column of `width`; words longer than it are cut.
std::vector<std::string> lines_of(const std::string& text, std::size_t width, bool wraps) {
  if (!wraps) return {fitted(text, width)};
  std::vector<std::string> lines;
  const std::string all = wrapped(text, width, 0, "");
  for (std::size_t start = 0, end; (end = all.find('\n', start)) != std::string::npos; start = end + 1)
    lines.push_back(fitted(all.substr(start, end - start), width));
  return lines;
}

std::size_t longest_word(std::string_view text) {
  std::size_t longest = 0;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find(' '), text.size());
    longest = std::max(longest, columns_of(text.substr(0, end)));
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return longest;
}

void trim_end(std::string& line) {
  line.erase(line.find_last_not_of(' ') + 1);
}

}  // namespace

void Table::row(std::vector<Cell> cells) {
  for (Cell& cell : cells) cell.text = printable(cell.text);
  rows_.push_back({std::move(cells), {}});
}

void Table::note(std::size_t column, const std::string& text, Ink ink) {
  rows_.back().notes.push_back({column, Cell(printable(text), ink)});
}

std::vector<std::size_t> Table::widths(std::size_t page) const {
  std::vector<std::size_t> widths;
  for (std::size_t c = 0; c < columns_.size(); ++c) {
    std::size_t widest = longest_word(columns_[c].title);
    for (const Row& row : rows_) widest = std::max(widest, columns_of(row.cells[c].text));
    widths.push_back(widest);
  }
  std::size_t total = std::accumulate(widths.begin(), widths.end(), indent + gap * (columns_.size() - 1));
  widen_for_titles(widths, total, page);
  while (total > page) {
    std::size_t widest = columns_.size();
    for (std::size_t c = 0; c < columns_.size(); ++c)
      if (columns_[c].narrow != Narrow::stays && (widest == columns_.size() || widths[c] > widths[widest]))
        widest = c;
    if (widest == columns_.size() || widths[widest] <= narrowest) break;
    --widths[widest];
    --total;
  }
  return widths;
}

void Table::widen_for_titles(std::vector<std::size_t>& widths, std::size_t& total, std::size_t page) const {
  for (std::size_t c = 0; c < columns_.size(); ++c) {
    const std::size_t whole = columns_of(columns_[c].title);
    if (whole <= widths[c] || total + whole - widths[c] > page) continue;
    total += whole - widths[c];
    widths[c] = whole;
  }
}

std::string Table::line(const std::vector<Cell>& cells, const std::vector<std::size_t>& widths, bool title,
                        bool colour) const {
  std::vector<std::vector<std::string>> lines;
  std::size_t height = 1;
  for (std::size_t c = 0; c < columns_.size(); ++c) {
    lines.push_back(lines_of(cells[c].text, widths[c], title || columns_[c].narrow == Narrow::wraps));
    height = std::max(height, lines.back().size());
  }
  std::string text;
  for (std::size_t i = 0; i < height; ++i) {
    std::string line(indent, ' ');
    for (std::size_t c = 0; c < columns_.size(); ++c) {
      if (c > 0) line.append(gap, ' ');
      line += padded(i < lines[c].size() ? lines[c][i] : "", columns_[c], widths[c], cells[c].ink, colour);
    }
    trim_end(line);
    text += line + '\n';
  }
  return text;
}

std::string Table::text(std::size_t width, bool colour) const {
  const std::vector<std::size_t> all = widths(width);
  std::vector<Cell> titles;
  for (const Column& column : columns_) titles.emplace_back(column.title, Ink::faint);
  std::string text = line(titles, all, true, colour);
  for (const Row& row : rows_) {
    text += line(row.cells, all, false, colour);
    for (const Note& note : row.notes) {
      const auto before = all.begin() + static_cast<std::ptrdiff_t>(note.column);
      const std::size_t start = std::accumulate(all.begin(), before, indent + gap * note.column);
      const std::string lines = wrapped(
          with_words_broken(note.cell.text, width - std::min(start, width - narrowest)), width, start, "");
      text +=
          std::string(start, ' ') + inked(lines.substr(0, lines.size() - 1), note.cell.ink, colour) + '\n';
    }
  }
  return text;
}

}  // namespace ohmtrail::cli
