#include <cairo-pdf.h>

#include "render/pages.hpp"
#include "render/painter.hpp"
#include "render/pdf_catalog.hpp"
#include "render/report_parts.hpp"
#include "render/surface.hpp"
#include "render/text.hpp"

namespace ohmtrail::render {

std::vector<Scene> report_pages(const ReportInput& input, Paper paper) {
  Pages pages(paper);
  tell_report(pages, input);
  return pages.finish(running_title(input));
}

std::string report_pdf(const ReportInput& input, Paper paper) {
  const std::vector<Scene> pages = report_pages(input, paper);
  std::string bytes;
  const Surface surface = pdf_surface(bytes, pages.front().width, pages.front().height, running_title(input),
                                      std::string(text::report_title));
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
