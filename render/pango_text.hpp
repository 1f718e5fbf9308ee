#pragma once
#include <pango/pangocairo.h>

#include <memory>
#include <string_view>

namespace ohmtrail::render {

struct Unref {
  void operator()(void* object) const { g_object_unref(object); }
};
using Layout = std::unique_ptr<PangoLayout, Unref>;

/// A layout of `text` (cleaned by the caller) in the font of every picture, `size` in points. Metrics are not
/// hinted: the same text takes the same room at any scale.
[[nodiscard]] Layout make_layout(std::string_view text, double size, bool bold);

}  // namespace ohmtrail::render
