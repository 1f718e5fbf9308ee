#include "render/lettering.hpp"

#include <cmath>

#include "render/clean.hpp"
#include "render/pango_text.hpp"

namespace ohmtrail::render {
namespace {

using Context = std::unique_ptr<PangoContext, Unref>;
using Map = std::unique_ptr<PangoFontMap, Unref>;

struct FontOptions {
  cairo_font_options_t* options = cairo_font_options_create();
  ~FontOptions() { cairo_font_options_destroy(options); }
};

Context make_context() {
  // 72 dots an inch: a point is a unit of every surface used here.
  static thread_local const Map map{pango_cairo_font_map_new_for_font_type(CAIRO_FONT_TYPE_FT)};
  pango_cairo_font_map_set_resolution(PANGO_CAIRO_FONT_MAP(map.get()), 72);
  Context context{pango_font_map_create_context(map.get())};
  const FontOptions font;
  cairo_font_options_set_hint_metrics(font.options, CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_hint_style(font.options, CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_antialias(font.options, CAIRO_ANTIALIAS_GRAY);
  pango_cairo_context_set_font_options(context.get(), font.options);
  pango_context_set_round_glyph_positions(context.get(), FALSE);
  return context;
}

PangoContext* shared_context() {
  static thread_local const Context context = make_context();
  return context.get();
}

/// Characters of UTF-8 before byte `at` that a cut must not split.
std::size_t character_start(std::string_view text, std::size_t at) {
  while (at > 0 && at < text.size() && (static_cast<unsigned char>(text[at]) & 0xC0u) == 0x80) --at;
  return at;
}

std::string cut(const std::string& text, double size, bool bold, double width) {
  std::size_t fits = 0, fails = text.size();
  while (fits + 1 < fails) {
    const std::size_t middle = character_start(text, (fits + fails) / 2);
    if (middle <= fits) break;
    const bool good = measure(text.substr(0, middle) + "…", size, bold).width <= width;
    (good ? fits : fails) = middle;
  }
  while (fits > 0 && text[fits - 1] == ' ') --fits;
  return text.substr(0, fits) + "…";
}

}  // namespace

Layout make_layout(std::string_view text, double size, bool bold) {
  Layout layout{pango_layout_new(shared_context())};
  PangoFontDescription* font = pango_font_description_from_string(font_family);
  pango_font_description_set_size(font, static_cast<int>(std::lround(size * PANGO_SCALE)));
  if (bold) pango_font_description_set_weight(font, PANGO_WEIGHT_BOLD);
  pango_layout_set_font_description(layout.get(), font);
  pango_font_description_free(font);
  pango_layout_set_text(layout.get(), text.data(), static_cast<int>(text.size()));
  return layout;
}

Extent measure(std::string_view text, double size, bool bold) {
  const Layout layout = make_layout(text, size, bold);
  PangoRectangle room;
  pango_layout_get_extents(layout.get(), nullptr, &room);
  const double unit = PANGO_SCALE;
  return {room.width / unit, room.height / unit, pango_layout_get_baseline(layout.get()) / unit};
}

std::string fitted(std::string_view text, double size, bool bold, double width) {
  std::string whole = clean(text);
  return measure(whole, size, bold).width <= width ? whole : cut(whole, size, bold, width);
}

namespace {

/// The byte of `text` that lies `width` from its left edge, from one layout of the whole.
std::size_t reach(const std::string& text, double size, bool bold, double width) {
  const Layout layout = make_layout(text, size, bold);
  int index = 0, trailing = 0;
  pango_layout_line_x_to_index(pango_layout_get_line_readonly(layout.get(), 0),
                               static_cast<int>(width * PANGO_SCALE), &index, &trailing);
  return static_cast<std::size_t>(index);
}

/// Bytes of `text` that fill a line: up to a space where one is in reach, else up to the last letter that
/// fits.
std::size_t line_end(const std::string& text, double size, bool bold, double width) {
  std::size_t space = text.rfind(' ', reach(text, size, bold, width));
  // Letters that join, and text that runs the other way, may need a little more than was told.
  while (space != std::string::npos && space > 0 && measure(text.substr(0, space), size, bold).width > width)
    space = text.rfind(' ', space - 1);
  if (space != std::string::npos && space > 0) return space;
  std::size_t end = text.size() < 4 ? text.size() : character_start(text, text.size() - 1);
  while (end > 4 && measure(text.substr(0, end), size, bold).width > width)
    end = character_start(text, end - 1);
  return end;
}

}  // namespace

std::vector<std::string> wrapped(std::string_view text, double size, bool bold, double width,
                                 std::size_t lines) {
  std::vector<std::string> result;
  std::string rest = clean(text);
  while (!rest.empty() && result.size() + 1 < lines && measure(rest, size, bold).width > width) {
    const std::size_t end = line_end(rest, size, bold, width);
    result.push_back(rest.substr(0, end));
    rest.erase(0, end < rest.size() && rest[end] == ' ' ? end + 1 : end);
  }
  if (!rest.empty()) result.push_back(fitted(rest, size, bold, width));
  return result;
}

}  // namespace ohmtrail::render
