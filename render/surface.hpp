#pragma once
#include <cairo.h>

#include <memory>
#include <string>

namespace ohmtrail::render {

struct DestroySurface {
  void operator()(cairo_surface_t* surface) const { cairo_surface_destroy(surface); }
};
struct DestroyContext {
  void operator()(cairo_t* cr) const { cairo_destroy(cr); }
};
using Surface = std::unique_ptr<cairo_surface_t, DestroySurface>;
using CairoContext = std::unique_ptr<cairo_t, DestroyContext>;

/// A PDF that is written into `bytes`, complete once the surface is finished. Title, language and a creation
/// date that does not change are set: the same drawing gives the same bytes. Sizes in points.
[[nodiscard]] Surface pdf_surface(std::string& bytes, double width, double height, const std::string& title,
                                  const std::string& subject);

/// For a drawing that failed inside the library: a bug or no memory, never bad input.
void require_success(cairo_status_t status);

}  // namespace ohmtrail::render
