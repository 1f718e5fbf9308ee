#include "render/surface.hpp"

#include <cairo-pdf.h>

#include <stdexcept>

#include "render/clean.hpp"

namespace ohmtrail::render {
namespace {

cairo_status_t append(void* closure, const unsigned char* data, unsigned length) {
  static_cast<std::string*>(closure)->append(reinterpret_cast<const char*>(data), length);
  return CAIRO_STATUS_SUCCESS;
}

}  // namespace

Surface pdf_surface(std::string& bytes, double width, double height, const std::string& title,
                    const std::string& subject) {
  Surface surface{cairo_pdf_surface_create_for_stream(append, &bytes, width, height)};
  require_success(cairo_surface_status(surface.get()));
  const auto tell = [&](cairo_pdf_metadata_t what, const std::string& value) {
    cairo_pdf_surface_set_metadata(surface.get(), what, clean(value).c_str());
  };
  tell(CAIRO_PDF_METADATA_TITLE, title);
  tell(CAIRO_PDF_METADATA_SUBJECT, subject);
  tell(CAIRO_PDF_METADATA_CREATOR, "Ohmtrail");
  // A fixed date: without one the library writes the present time.
  tell(CAIRO_PDF_METADATA_CREATE_DATE, "2000-01-01T00:00:00Z");
  return surface;
}

void require_success(cairo_status_t status) {
  if (status != CAIRO_STATUS_SUCCESS) throw std::runtime_error(cairo_status_to_string(status));
}

}  // namespace ohmtrail::render
