#include "render/sheets.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "render/canvas.hpp"
#include "render/clip.hpp"
#include "render/lettering.hpp"
#include "render/text.hpp"
#include "render/words.hpp"

namespace ohmtrail::render {
namespace {

constexpr double page_margin = 24;
constexpr double still_one_page = 4.2;  // pt: what hardly misses `least_letters` is not cut to pieces
constexpr double report_side = 46, report_above_below = 84;
constexpr double head = 14;      // for the part's number
constexpr double overlap = 130;  // of the picture's own points: the widest name and some

/// The names' size; numbers beside them may be a little smaller.
double letters_of(const Scene& picture) {
  double largest = 0;
  for (const Shape& shape : picture.shapes)
    if (const Text* text = std::get_if<Text>(&shape.what); text && shape.kind == Kind::label)
      largest = std::max(largest, text->size);
  return largest;
}

double scale_in(const Scene& picture, double width, double height) {
  return std::min(width / picture.width, height / picture.height);
}

PaperSize turned(PaperSize size, const Scene& picture) {
  if (picture.width > picture.height) std::swap(size.width, size.height);
  return size;
}

/// Twice the area.
PaperSize next_larger(PaperSize size) {
  return {size.height, 2 * size.width};
}

/// How a picture is cut: columns × rows of equal windows that overlap.
struct Grid {
  PaperSize page;
  int columns = 1, rows = 1;
  [[nodiscard]] int parts() const { return columns * rows; }
  [[nodiscard]] Box room() const {
    return {page_margin, page_margin + head, page.width - 2 * page_margin,
            page.height - 2 * page_margin - head};
  }
};

int pieces(double whole, double piece) {
  return piece >= whole ? 1 : static_cast<int>(std::ceil((whole - overlap) / (piece - overlap)));
}

Grid grid_on(const Scene& picture, PaperSize page, double scale) {
  Grid grid{page};
  grid.columns = pieces(picture.width, grid.room().width / scale);
  grid.rows = pieces(picture.height, grid.room().height / scale);
  return grid;
}

Grid best_grid(const Scene& picture, Paper paper) {
  const double scale = least_letters / std::max(letters_of(picture), least_letters);
  const PaperSize upright = paper_size(paper);
  const Grid a = grid_on(picture, {upright.height, upright.width}, scale),
             b = grid_on(picture, upright, scale);
  return b.parts() < a.parts() ? b : a;
}

Box window(const Scene& picture, const Grid& grid, int column, int row) {
  const double width = (picture.width + overlap * (grid.columns - 1)) / grid.columns;
  const double height = (picture.height + overlap * (grid.rows - 1)) / grid.rows;
  return {column * (width - overlap), row * (height - overlap), width, height};
}

Scene one_page(const Scene& picture, PaperSize size) {
  const double scale = scale_in(picture, size.width - 2 * page_margin, size.height - 2 * page_margin);
  Scene page{size.width, size.height, picture.title, {}, {}};
  place(page, picture, {(size.width - picture.width * scale) / 2, (size.height - picture.height * scale) / 2},
        scale);
  return page;
}

/// "B3": letters from left to right, numbers downwards.
std::string name_of(int column, int row) {
  return std::string(1, static_cast<char>('A' + column % 26)) + std::to_string(row + 1);
}

Scene overview(const Scene& picture, const Grid& grid, PaperSize size) {
  Scene page = one_page(picture, size);
  const double scale = scale_in(picture, size.width - 2 * page_margin, size.height - 2 * page_margin);
  const Point corner{(size.width - picture.width * scale) / 2, (size.height - picture.height * scale) / 2};
  for (int row = 0; row < grid.rows; ++row)
    for (int column = 0; column < grid.columns; ++column) {
      const Box part = window(picture, grid, column, row);
      const Box frame{corner.x + part.x * scale, corner.y + part.y * scale, part.width * scale,
                      part.height * scale};
      draw_line(page, Kind::furniture, -1,
                {{frame.x, frame.y},
                 {frame.right(), frame.y},
                 {frame.right(), frame.bottom()},
                 {frame.x, frame.bottom()},
                 {frame.x, frame.y}},
                {palette::accent, 0.7, true});
      write(page, Kind::furniture, -1, {frame.middle().x, frame.middle().y}, name_of(column, row),
            {22, true, palette::accent}, Align::middle);
    }
  return page;
}

/// "Part B2; A2 is left of it, C2 right, B1 above"
std::string part_in_words(const Grid& grid, int column, int row) {
  std::string words = filled(text::part_of, name_of(column, row));
  if (column > 0) words += filled(text::part_left, name_of(column - 1, row));
  if (column + 1 < grid.columns) words += filled(text::part_right, name_of(column + 1, row));
  if (row > 0) words += filled(text::part_above, name_of(column, row - 1));
  if (row + 1 < grid.rows) words += filled(text::part_below, name_of(column, row + 1));
  return words;
}

Scene part(const Scene& picture, const Grid& grid, int column, int row) {
  const Scene piece = cut_out(picture, window(picture, grid, column, row));
  const Box room = grid.room();
  const double scale = scale_in(piece, room.width, room.height);
  Scene page{grid.page.width, grid.page.height, picture.title, {}, {}};
  write(page, Kind::furniture, -1, {room.x, page_margin + 3}, part_in_words(grid, column, row),
        {7.5, false, palette::quiet});
  write(page, Kind::furniture, -1, {room.right(), page_margin + 3},
        fitted(picture.title, 7.5, false, room.width / 2), {7.5, false, palette::quiet}, Align::right);
  fill_box(page, Kind::furniture, -1, {room.x, room.y, piece.width * scale, piece.height * scale},
           palette::paper, {palette::hair, 0.6, false});
  place(page, piece, {room.x, room.y}, scale);
  return page;
}

}  // namespace

PaperSize sheet_for(const Scene& picture, Paper paper, double side, double above_below) {
  PaperSize upright = paper_size(paper);
  for (int step = 0;; ++step) {
    const PaperSize size = turned(upright, picture);
    const double scale = scale_in(picture, size.width - side, size.height - above_below);
    if (scale * letters_of(picture) >= least_letters || step == 4) return size;
    upright = next_larger(upright);
  }
}

bool is_readable_on(const Scene& picture, Paper paper) {
  const PaperSize size = turned(paper_size(paper), picture);
  const double scale = scale_in(picture, size.width - report_side, size.height - report_above_below);
  return scale * letters_of(picture) >= least_letters;
}

Scene cut_out(const Scene& picture, const Box& window) {
  Scene piece{window.width, window.height, picture.title, picture.groups, {}};
  for (const Shape& shape : picture.shapes)
    for (Shape& kept : clipped(shape, window)) piece.shapes.push_back(std::move(kept));
  Scene moved{window.width, window.height, picture.title, {}, {}};
  place(moved, piece, {-window.x, -window.y});
  return moved;
}

std::vector<Scene> on_pages(const Scene& picture, Paper paper) {
  const PaperSize size = turned(paper_size(paper), picture);
  const double scale = scale_in(picture, size.width - 2 * page_margin, size.height - 2 * page_margin);
  if (scale * letters_of(picture) >= still_one_page || letters_of(picture) <= 0)
    return {one_page(picture, size)};
  const Grid grid = best_grid(picture, paper);
  std::vector<Scene> pages{overview(picture, grid, size)};
  for (int row = 0; row < grid.rows; ++row)
    for (int column = 0; column < grid.columns; ++column) pages.push_back(part(picture, grid, column, row));
  return pages;
}

std::vector<Scene> on_pages(const std::vector<Scene>& pictures, Paper paper) {
  constexpr double title_room = 18, apart = 14;
  const PaperSize size = paper_size(paper);
  std::vector<Scene> pages;
  double y = size.height;
  for (const Scene& picture : pictures) {
    const double room = size.height - 2 * page_margin - title_room;
    const double scale = std::min(1.0, scale_in(picture, size.width - 2 * page_margin, room));
    const double height = title_room + picture.height * scale;
    if (y + height > size.height - page_margin) {
      pages.push_back({size.width, size.height, picture.title, {}, {}});
      y = page_margin;
    }
    write(pages.back(), Kind::furniture, -1, {page_margin, y + 7},
          fitted(picture.title, 10, true, size.width - 2 * page_margin), {10, true, palette::accent});
    place(pages.back(), picture, {page_margin, y + title_room}, scale);
    y += height + apart;
  }
  return pages;
}

}  // namespace ohmtrail::render
