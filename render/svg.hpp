#pragma once
#include <string>

#include "render/scene.hpp"

namespace ohmtrail::render {

/// A scene as an SVG element: real text, a <title> in every group. `prologue`: with the XML declaration, as a
/// file of its own; without, to stand inside an HTML page.
[[nodiscard]] std::string svg(const Scene& scene, bool prologue);

}  // namespace ohmtrail::render
