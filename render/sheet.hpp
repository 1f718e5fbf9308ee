#pragma once
#include "render/cells.hpp"

/// A diagram being drawn: the wiring, where it stands, and what is said about it.
namespace ohmtrail::render {

struct Sheet {
  const Wiring& wiring;
  const Teller& teller;
  const Shade& shade;
  const Cells& cells;
  const Arrangement& arranged;
  const std::vector<std::vector<PlacedCell>>& placed;  ///< per lane
  Scene& scene;
};

/// Bars, studs, posts and the uprights to the items.
void draw_bars(const Sheet& sheet);
/// After everything else: a name goes where nothing stands.
void draw_bar_names(const Sheet& sheet);
/// Pieces in line between two uprights, with their names above and their numbers below.
void draw_row(const Sheet& sheet, double y, Span x, const std::vector<Piece>& pieces,
              const std::vector<Cell>& cells, const std::vector<PlacedCell>& placed);
/// Runs and the devices in line with them.
void draw_lanes(const Sheet& sheet);
/// Cables between the middles of strings side by side.
void draw_ties(const Sheet& sheet);
/// Batteries with their links, chargers, converters and loads.
void draw_items(const Sheet& sheet);

/// One piece along its line, level or upright, without its lettering. `lettered`: how far along the line its
/// lettering reaches, which a disc on it must not cover.
void draw_piece(const Sheet& sheet, const Piece& piece, Point from, Point to, double lettered, int group);

/// Legend, worst hot spots and title block, `width` wide.
[[nodiscard]] Scene footer(const Teller& teller, const Shade& shade,
                           const std::vector<diagnose::HotSpot>& hot_spots, double width);

}  // namespace ohmtrail::render
