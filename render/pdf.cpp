#include "render/pdf.hpp"

#include <cairo-pdf.h>

#include "render/painter.hpp"
#include "render/pdf_catalog.hpp"
#include "render/surface.hpp"
#include "render/text.hpp"

namespace ohmtrail::render {

std::string pdf(const std::vector<Scene>& pages, const std::string& title, const std::string& subject) {
  std::string bytes;
  const Surface surface = pdf_surface(bytes, pages.front().width, pages.front().height, title, subject);
  const CairoContext cr{cairo_create(surface.get())};
  for (const Scene& page : pages) {
    cairo_pdf_surface_set_size(surface.get(), page.width, page.height);
    paint(cr.get(), page);
    cairo_show_page(cr.get());
  }
  require_success(cairo_status(cr.get()));
  cairo_surface_finish(surface.get());
  require_success(cairo_surface_status(surface.get()));
  set_language(bytes, std::string(text::language));
  return bytes;
}

}  // namespace ohmtrail::render
