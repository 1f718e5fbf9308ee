#include "render/picture.hpp"

#include <cairo.h>

#include <algorithm>
#include <cmath>

#include "render/painter.hpp"
#include "render/pdf.hpp"
#include "render/sheets.hpp"
#include "render/surface.hpp"
#include "render/svg.hpp"

namespace ohmtrail::render {
namespace {

constexpr double most_pixels = 12000;

std::string png(const Scene& scene) {
  const double scale = std::min(2.0, most_pixels / std::max(scene.width, scene.height));
  const auto pixels = [&](double points) { return std::max(1, static_cast<int>(std::ceil(points * scale))); };
  const Surface surface{
      cairo_image_surface_create(CAIRO_FORMAT_RGB24, pixels(scene.width), pixels(scene.height))};
  require_success(cairo_surface_status(surface.get()));
  const CairoContext cr{cairo_create(surface.get())};
  cairo_set_source_rgb(cr.get(), 1, 1, 1);
  cairo_paint(cr.get());
  cairo_scale(cr.get(), scale, scale);
  paint(cr.get(), scene);
  require_success(cairo_status(cr.get()));
  std::string bytes;
  const auto append = [](void* closure, const unsigned char* data, unsigned length) {
    static_cast<std::string*>(closure)->append(reinterpret_cast<const char*>(data), length);
    return CAIRO_STATUS_SUCCESS;
  };
  require_success(cairo_surface_write_to_png_stream(surface.get(), append, &bytes));
  return bytes;
}

}  // namespace

std::optional<FileKind> file_kind(std::string_view file_name) {
  const std::size_t dot = file_name.rfind('.');
  if (dot == std::string_view::npos) return std::nullopt;
  std::string ending(file_name.substr(dot + 1));
  std::transform(ending.begin(), ending.end(), ending.begin(),
                 [](unsigned char c) { return static_cast<char>(c >= 'A' && c <= 'Z' ? c + 32 : c); });
  if (ending == "svg") return FileKind::svg;
  if (ending == "png") return FileKind::png;
  if (ending == "pdf") return FileKind::pdf;
  return std::nullopt;
}

std::string encode(const Scene& scene, FileKind kind, std::optional<Paper> paper,
                   const std::vector<Scene>& sheets) {
  std::vector<Scene> pages = paper ? on_pages(scene, *paper) : std::vector<Scene>{scene};
  switch (kind) {
    case FileKind::svg:
      return svg(pages.front(), true);
    case FileKind::png:
      return png(pages.front());
    case FileKind::pdf:
      break;
  }
  if (paper)
    for (Scene& sheet : on_pages(sheets, *paper)) pages.push_back(std::move(sheet));
  return pdf(pages, scene.title);
}

}  // namespace ohmtrail::render
