#include "render/canvas.hpp"
#include "render/sheet.hpp"
#include "render/symbols.hpp"
#include "render/text.hpp"
#include "units/index.hpp"

namespace ohmtrail::render {
namespace {

void write_beside(const Sheet& sheet, const ItemText& text, Point middle, bool bold, bool idle, int group) {
  double y = middle.y - text.height() / 2 + lettering::line / 2;
  for (const auto& line : text.name) {
    write(sheet.scene, Kind::label, group, {middle.x, y}, line,
          {lettering::name, bold, idle ? palette::quiet : palette::ink});
    y += lettering::line;
  }
  for (const auto& line : text.lines) {
    write(sheet.scene, Kind::label, group, {middle.x, y}, line, {lettering::value, false, palette::quiet});
    y += lettering::line;
  }
}

double text_offset(ItemKind kind) {
  return kind == ItemKind::load ? 8.5 : kind == ItemKind::converter ? 21 : 12.5;
}

void draw_symbol(const Sheet& sheet, const Item& item, const ColumnPart& part, double x, int group) {
  const int element = item.elements[at(part.battery)];
  const double y = (part.top + part.bottom) / 2, half = (part.bottom - part.top) / 2;
  const bool idle = sheet.shade.idle(element) && item.kind != ItemKind::supply;
  const Spot spot{{x, y}, item.kind == ItemKind::load, false, idle ? palette::idle : palette::ink, group};
  switch (item.kind) {
    case ItemKind::supply:
      draw_line(sheet.scene, Kind::post, group, {{x, part.top}, {x, y - symbol_length / 2}},
                {palette::ink, 1.1, false});
      draw_line(sheet.scene, Kind::post, group, {{x, y + symbol_length / 2}, {x, part.bottom}},
                {palette::ink, 1.1, false});
      draw_battery(sheet.scene, spot);
      break;
    case ItemKind::charger:
      draw_charger(sheet.scene, spot, half);
      break;
    case ItemKind::converter:
      draw_converter(sheet.scene, spot, 17, half);
      break;
    case ItemKind::load:
      draw_load(sheet.scene, spot, half);
      break;
  }
  if (const auto* hot = sheet.teller.hot_spot(element))
    draw_disc(sheet.scene, group, {x - (item.kind == ItemKind::load ? 5 : 10) - disc_radius - 1, y},
              disc_radius, hot->rank, hot->likelihood);
  write_beside(sheet, part.text, {x + text_offset(item.kind), y}, true, idle, group);
}

void draw_link(const Sheet& sheet, const ColumnPart& part, double x) {
  const int group = add_group(sheet.scene, sheet.teller.name(*part.piece), sheet.teller.title(*part.piece));
  draw_piece(sheet, *part.piece, {x, part.top}, {x, part.bottom}, 0, group);
  const bool idle = sheet.shade.idle(sheet.teller.main_element(*part.piece));
  write_beside(sheet, part.text, {x + 12.5, (part.top + part.bottom) / 2}, false, idle, group);
}

}  // namespace

void draw_items(const Sheet& sheet) {
  for (std::size_t i = 0; i < sheet.wiring.items.size(); ++i) {
    const Item& item = sheet.wiring.items[i];
    const double x = sheet.arranged.item_x[i];
    for (const ColumnPart& part : sheet.cells.columns[i]) {
      if (part.piece) {
        draw_link(sheet, part, x);
        continue;
      }
      if (part.tie_junction >= 0) {
        draw_line(sheet.scene, Kind::post, add_group(sheet.scene, "", std::string(text::plain_title)),
                  {{x, part.top}, {x, part.bottom}}, {palette::ink, 1.1, false});
        continue;
      }
      const std::size_t k = at(part.battery);
      const int group = add_group(sheet.scene, sheet.teller.name(item, k), sheet.teller.title(item, k));
      draw_symbol(sheet, item, part, x, group);
    }
  }
}

}  // namespace ohmtrail::render
