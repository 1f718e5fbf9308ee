#include <algorithm>

#include "render/lettering.hpp"
#include "render/pages.hpp"
#include "render/typeset.hpp"

/// Tables on paper.
namespace ohmtrail::render {
namespace {

constexpr double cell_gap = 9;
constexpr double form_row = 21;  // room to write by hand

constexpr Lettering table_text{7.6, false, palette::ink};
constexpr Lettering table_title{7.0, true, palette::quiet};

}  // namespace

std::vector<double> Pages::column_widths(const std::vector<Column>& columns) const {
  double all = 0;
  for (const Column& column : columns) all += column.share;
  std::vector<double> widths;
  for (const Column& column : columns) widths.push_back(width() * column.share / all - cell_gap);
  widths.back() += cell_gap;
  return widths;
}

Pages::Cells Pages::cells(const std::vector<std::string>& texts, const std::vector<double>& widths,
                          const Lettering& style) const {
  Cells result;
  for (std::size_t k = 0; k < widths.size(); ++k)
    result.push_back(wrapped(typeset(texts[k]), style.size, style.bold, widths[k], any_number_of_lines));
  return result;
}

void Pages::row(const std::vector<Column>& columns, const std::vector<double>& widths, const Cells& cells,
                const Lettering& style, double least_height) {
  double x = side;
  std::size_t lines = 1;
  for (std::size_t k = 0; k < columns.size(); ++k) {
    double y = y_ + line_height(style) / 2 + 1;
    for (const auto& part : cells[k]) {
      const double at = columns[k].align == Align::right ? x + widths[k] : x;
      write(page(), Kind::label, -1, {at, y}, part, style, columns[k].align);
      y += line_height(style);
    }
    lines = std::max(lines, cells[k].size());
    x += widths[k] + cell_gap;
  }
  space(std::max(static_cast<double>(lines) * line_height(style) + 2.5, least_height));
}

void Pages::table_head(const std::vector<Column>& columns, const std::vector<double>& widths) {
  std::vector<std::string> titles;
  for (const Column& column : columns) titles.push_back(column.title);
  const Lettering style = sized(table_title);
  row(columns, widths, cells(titles, widths, style), style);
  rule(palette::quiet, 0.8);
  space(3);
}

void Pages::table(const std::vector<Column>& columns, const Rows& rows) {
  lay_table(columns, rows, 0);
}

void Pages::form(const std::vector<Column>& columns, const Rows& rows) {
  lay_table(columns, rows, form_row);
}

void Pages::lay_table(const std::vector<Column>& columns, const Rows& rows, double least_height) {
  const std::vector<double> widths = column_widths(columns);
  const Lettering style = sized(table_text);
  std::vector<Cells> laid;
  for (const auto& texts : rows) laid.push_back(cells(texts, widths, style));
  const auto height = [&](const Cells& row_cells) {
    std::size_t lines = 1;
    for (const auto& cell : row_cells) lines = std::max(lines, cell.size());
    return std::max(least_height, static_cast<double>(lines) * line_height(style)) + 6;
  };
  constexpr double head = 24;
  need(std::max(64.0, head + (laid.empty() ? 0 : height(laid.front()))));
  table_head(columns, widths);
  for (std::size_t k = 0; k < laid.size(); ++k) {
    // The last row never stands alone on a page.
    const bool last_but_one = k > 0 && k + 2 == laid.size();
    if (room() < height(laid[k]) + (last_but_one ? height(laid[k + 1]) : 0)) {
      new_page();
      table_head(columns, widths);
    }
    row(columns, widths, laid[k], style, least_height);
    rule(palette::hair, 0.5);
    space(2);
  }
  space(6);
}

}  // namespace ohmtrail::render
