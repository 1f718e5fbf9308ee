#include "render/cells.hpp"

#include <algorithm>

#include "render/lettering.hpp"
#include "render/symbols.hpp"
#include "units/index.hpp"

namespace ohmtrail::render {
namespace {

constexpr double widest_run_name = 104, widest_item_name = 62, widest_bar_name = 120;
constexpr double dot_room = 7;
constexpr double disc_room = 2 * disc_radius + 1;
constexpr double tie_room = 28;  // a level line with its name above and its number below

int discs(const Piece& piece, const Teller& teller, bool left) {
  const int main = teller.main_element(piece);
  int count = 0;
  bool before = true;
  for (const int i : piece.elements) {
    if (i == main)
      before = false;
    else if (before == left && teller.hot_spot(i))
      ++count;
  }
  return count;
}

Cell measure_cell(const Piece& piece, const Teller& teller) {
  Cell cell;
  cell.name =
      fitted(teller.name(piece), lettering::name, false, piece.is_run ? widest_run_name : widest_device_name);
  cell.value = teller.value(piece);
  cell.name_width = measure(cell.name, lettering::name).width;
  cell.value_width = measure(cell.value, lettering::value).width;
  const double text = std::max(cell.name_width, cell.value_width);
  const bool hot = teller.hot_spot(teller.main_element(piece)) != nullptr;
  if (!piece.is_run) {
    const double sides = std::max(0.0, (text + 6 - symbol_length) / 2);
    cell.before = std::max(sides, hot ? disc_room + 2 : 0);
    cell.after = sides;
    cell.inner = symbol_length;
    return cell;
  }
  cell.before = dot_room + disc_room * discs(piece, teller, true);
  cell.after = dot_room + disc_room * discs(piece, teller, false);
  const double arrow = teller.show() == Show::amps ? 9 : 0;
  cell.inner = std::max(text, 16.0) + (hot ? disc_room + 4 : 0) + arrow;
  return cell;
}

ItemText item_text(const std::string& name, std::vector<std::string> lines, double width,
                   std::size_t most_lines) {
  ItemText text{wrapped(name, lettering::name, true, width, most_lines), std::move(lines), 0};
  for (const auto& line : text.name)
    text.width = std::max(text.width, measure(line, lettering::name, true).width);
  for (const auto& line : text.lines)
    text.width = std::max(text.width, measure(line, lettering::value).width);
  return text;
}

ItemText piece_text(const Piece& piece, const Teller& teller) {
  ItemText text;
  text.name = {fitted(teller.name(piece), lettering::name, false, widest_item_name)};
  if (auto value = teller.value(piece); !value.empty()) text.lines = {std::move(value)};
  text.width = measure(text.name[0], lettering::name).width;
  for (const auto& line : text.lines)
    text.width = std::max(text.width, measure(line, lettering::value).width);
  return text;
}

/// One below the other, from heights (in `bottom` where `top` is still 0) or after those have changed.
void stack_up(std::vector<ColumnPart>& parts) {
  double y = 0;
  for (ColumnPart& part : parts) {
    const double height = part.bottom - part.top;
    part.top = y;
    part.bottom = y += height;
  }
  for (ColumnPart& part : parts) part.top -= y / 2, part.bottom -= y / 2;
}

/// Whether any tie of the item's bank lies there: all its strings leave room.
bool has_tie(const Wiring& wiring, int item, int junction, bool below_link) {
  const auto bank = std::find_if(wiring.banks.begin(), wiring.banks.end(), [&](const auto& members) {
    return std::find(members.begin(), members.end(), item) != members.end();
  });
  if (bank == wiring.banks.end()) return false;
  return std::any_of(wiring.ties.begin(), wiring.ties.end(), [&](const Tie& tie) {
    return tie.junction == junction && tie.below_link == below_link &&
           std::find(bank->begin(), bank->end(), tie.left) != bank->end();
  });
}

bool is_bar(const Wiring& wiring, const Bar& bar) {
  return bar.item < 0 &&
         (bar.lanes.size() >= 3 || !bar.note.empty() || (bar.lanes.size() == 1 && !wiring.lanes.empty()));
}

}  // namespace

Cells::Cells(const Wiring& wiring, const Teller& teller)
    : lanes(wiring.lanes.size()), columns(wiring.items.size()), bar_names(wiring.bars.size()) {
  sizes.lanes.resize(wiring.lanes.size());
  sizes.items.resize(wiring.items.size());
  sizes.bars.resize(wiring.bars.size());
  for (int l = 0; l < static_cast<int>(lanes.size()); ++l) measure_lane(wiring, teller, l);
  for (int i = 0; i < static_cast<int>(columns.size()); ++i) measure_item(wiring, teller, i);
  for (const auto& bank : wiring.banks) align_bank(bank);
  measure_ties(wiring, teller);
  for (int b = 0; b < static_cast<int>(bar_names.size()); ++b) measure_bar(wiring, teller, b);
}

/// Strings of one shape get parts of one height, so that ties between them are level.
void Cells::align_bank(const std::vector<int>& bank) {
  std::vector<ColumnPart>& first = columns[at(bank.front())];
  for (std::size_t k = 0; k < first.size(); ++k) {
    double height = 0;
    for (const int item : bank) {
      const ColumnPart& part = columns[at(item)][k];
      height = std::max(height, part.bottom - part.top);
    }
    for (const int item : bank) columns[at(item)][k].bottom = columns[at(item)][k].top + height;
  }
  for (const int item : bank) {
    stack_up(columns[at(item)]);
    sizes.items[at(item)].up = -columns[at(item)].front().top;
    sizes.items[at(item)].down = columns[at(item)].back().bottom;
  }
}

void Cells::measure_ties(const Wiring& wiring, const Teller& teller) {
  for (const Tie& tie : wiring.ties) {
    double length = 2 * lead;
    ties.emplace_back();
    for (const Piece& piece : tie.pieces) {
      ties.back().push_back(measure_cell(piece, teller));
      length += ties.back().back().width();
    }
    double& right = sizes.items[at(tie.left)].right;
    right = std::max(right, length - sizes.items[at(tie.right)].left);
  }
}

double Cells::tie_y(const Tie& tie) const {
  const std::vector<ColumnPart>& parts = columns[at(tie.left)];
  const auto place = std::find_if(parts.begin(), parts.end(), [&](const ColumnPart& part) {
    return part.tie_junction == tie.junction && part.below_link == tie.below_link;
  });
  return place == parts.end() ? 0 : (place->top + place->bottom) / 2;
}

void Cells::measure_lane(const Wiring& wiring, const Teller& teller, int lane) {
  Sizes::OfLane& size = sizes.lanes[at(lane)];
  size.length = 2 * lead;
  for (const Piece& piece : wiring.lanes[at(lane)].pieces) {
    lanes[at(lane)].push_back(measure_cell(piece, teller));
    size.length += lanes[at(lane)].back().width();
    const double reach = piece.is_run ? 0 : symbol_half;
    size.above = std::max(size.above, reach + 2.5 + lettering::line);
    const bool has_value = !lanes[at(lane)].back().value.empty();
    size.below = std::max(size.below, reach + (has_value ? 2.5 + lettering::line : 2));
    if (piece.is_run) size.below = std::max(size.below, disc_radius + 1);
  }
}

std::vector<ColumnPart> Cells::column(const Wiring& wiring, int number, const Teller& teller) {
  const Item& item = wiring.items[at(number)];
  std::vector<ColumnPart> parts;
  const auto add = [&](ColumnPart part, double least) {
    part.bottom = std::max(least, part.text.height() + 3);
    parts.push_back(std::move(part));
  };
  const auto add_tie = [&](int junction, bool below_link) {
    ColumnPart part;
    part.tie_junction = junction;
    part.below_link = below_link;
    if (has_tie(wiring, number, junction, below_link)) add(std::move(part), tie_room);
  };
  for (std::size_t k = 0; k < item.elements.size(); ++k) {
    if (item.kind == ItemKind::converter && k > 0) break;
    ColumnPart part;
    part.battery = static_cast<int>(k);
    part.text = item_text(teller.name(item, k), teller.values(item, k), widest_item_name,
                          item.kind == ItemKind::supply ? 2 : 3);
    add(std::move(part), 34);
    if (item.kind != ItemKind::supply || k >= item.links.size()) continue;
    add_tie(static_cast<int>(k), false);
    for (const Piece& piece : item.links[k]) {
      ColumnPart link;
      link.piece = &piece;
      link.text = piece_text(piece, teller);
      add(std::move(link), piece.is_run ? 26 : 20);
    }
    add_tie(static_cast<int>(k), true);
  }
  stack_up(parts);
  return parts;
}

void Cells::measure_item(const Wiring& wiring, const Teller& teller, int number) {
  const Item& item = wiring.items[at(number)];
  Sizes::OfItem& size = sizes.items[at(number)];
  columns[at(number)] = column(wiring, number, teller);
  double text = 0;
  for (const ColumnPart& part : columns[at(number)]) text = std::max(text, part.text.width);
  size.up = -columns[at(number)].front().top;
  size.down = columns[at(number)].back().bottom;
  size.outlet = item.kind == ItemKind::converter ? 12 : 0;
  const double half = item.kind == ItemKind::converter ? 17 : item.kind == ItemKind::load ? 5 : 9;
  size.left = half + 7;
  size.right = half + 5 + text + 8;
  for (const int i : item.elements)
    if (teller.hot_spot(i)) size.left = std::max(size.left, half + 4 + disc_room);
  for (const auto& link : item.links)
    for (const Piece& piece : link)
      for (const int i : piece.elements)
        if (teller.hot_spot(i)) size.left = std::max(size.left, 8 + disc_room + 6);
}

void Cells::measure_bar(const Wiring& wiring, const Teller& teller, int number) {
  const Bar& bar = wiring.bars[at(number)];
  if (!is_bar(wiring, bar)) return;
  std::string name = fitted(teller.name(bar), lettering::name, true, widest_bar_name);
  const std::string value = teller.value(bar);
  if (!value.empty()) name += " · " + value;
  if (!bar.note.empty()) name += " · " + bar.note;
  sizes.bars[at(number)] = {measure(name, lettering::name, true).width + 6, lettering::line};
  bar_names[at(number)] = std::move(name);
}

}  // namespace ohmtrail::render
