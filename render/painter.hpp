#pragma once
#include <cairo.h>

#include "render/scene.hpp"

namespace ohmtrail::render {

/// Paints a scene onto a surface, a point of the scene being a unit of `cr`.
void paint(cairo_t* cr, const Scene& scene);

}  // namespace ohmtrail::render
