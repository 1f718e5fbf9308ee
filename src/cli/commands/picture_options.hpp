#pragma once
#include <optional>

#include "cli/call.hpp"
#include "render/picture.hpp"

namespace ohmtrail::cli {

inline constexpr Option paper{
    .name = "--paper", .value = "a4|letter", .sentence = "the size of the paper (default: a4)"};

[[nodiscard]] inline std::optional<render::Paper> paper_asked_for(const Call& call) {
  if (!call.has(paper)) return std::nullopt;
  return call.text(paper) == "letter" ? render::Paper::letter : render::Paper::a4;
}

}  // namespace ohmtrail::cli
