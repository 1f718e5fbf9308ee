#pragma once
#include <string>
#include <string_view>
#include <vector>

/// How much room text takes. Measured with the font that the painters use, without hinting, so that a drawing
/// scales and every machine with that font agrees.
namespace ohmtrail::render {

inline constexpr const char* font_family = "Lato, DejaVu Sans, sans-serif";

struct Extent {
  double width = 0, height = 0;
  double ascent = 0;  ///< from the top to the base line
};

/// Of one line, in points.
[[nodiscard]] Extent measure(std::string_view text, double size, bool bold = false);

/// `text` cleaned, and cut with an ellipsis where it is wider than `width`.
[[nodiscard]] std::string fitted(std::string_view text, double size, bool bold, double width);

/// `text` cleaned and broken at spaces into at most `lines` lines no wider than `width`; the last is cut
/// where needed.
[[nodiscard]] std::vector<std::string> wrapped(std::string_view text, double size, bool bold, double width,
                                               std::size_t lines);

}  // namespace ohmtrail::render
