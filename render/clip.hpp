#pragma once
#include <vector>

#include "render/scene.hpp"

namespace ohmtrail::render {

/// What is left of a shape inside `window`: lines cut at its edges (several pieces where they leave and come
/// back), filled polygons cut to polygons, text and circles whole or not at all.
[[nodiscard]] std::vector<Shape> clipped(const Shape& shape, const Box& window);

}  // namespace ohmtrail::render
