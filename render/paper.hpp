#pragma once
#include "render/picture.hpp"

namespace ohmtrail::render {

struct PaperSize {
  double width, height;  ///< pt, upright
};

/// ISO 216 A4; ANSI/ASME Y14.1 A (letter).
[[nodiscard]] inline PaperSize paper_size(Paper paper) {
  return paper == Paper::a4 ? PaperSize{595.28, 841.89} : PaperSize{612, 792};
}

}  // namespace ohmtrail::render
