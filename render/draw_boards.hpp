#pragma once
#include <vector>

#include "render/boards.hpp"
#include "render/shade.hpp"
#include "render/teller.hpp"

namespace ohmtrail::render {

/// The circuits of a board in rows, its plus bar on the left, its minus bars on the right; at most `rows` of
/// them a scene. The scenes have titles.
[[nodiscard]] std::vector<Scene> draw_board(const Board& board, const Teller& teller, const Shade& shade,
                                            std::size_t rows);

}  // namespace ohmtrail::render
