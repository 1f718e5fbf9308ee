#include "render/diagram.hpp"

#include <algorithm>

#include "render/canvas.hpp"
#include "render/draw_boards.hpp"
#include "render/lettering.hpp"
#include "render/sheet.hpp"
#include "render/sheets.hpp"
#include "render/text.hpp"
#include "units/index.hpp"

namespace ohmtrail::render {
namespace {

constexpr double margin = 28;
constexpr double footer_gap = 22;
constexpr double least_width = 740;  // legend, hot spots and title block side by side
constexpr int most_rounds = 7;
constexpr std::size_t most_items = 60;
constexpr std::size_t rows_on_a_sheet = 20;

/// The uprights that pass through a lane.
std::vector<double> crossed(const Wiring& wiring, const Arrangement& arranged, std::size_t lane) {
  const Lane& l = wiring.lanes[lane];
  const Span x{arranged.bar_x[at(l.left)], arranged.bar_x[at(l.right)]};
  std::vector<double> result;
  for (int b = 0; b < static_cast<int>(wiring.bars.size()); ++b)
    if (b != l.left && b != l.right && x.holds(arranged.bar_x[at(b)]) &&
        Span{arranged.bar_span[at(b)].low - 6, arranged.bar_span[at(b)].high + 6}.holds(
            arranged.lane_y[lane]))
      result.push_back(arranged.bar_x[at(b)]);
  return result;
}

struct Plan {
  Wiring wiring;
  Cells cells;
  Arrangement arranged;
  std::vector<std::vector<PlacedCell>> placed;
};

/// Lanes whose lettering an upright leaves no room for get longer, and everything is arranged again.
Plan make_plan(const Teller& teller, const Wiring& start) {
  std::vector<double> extra(start.lanes.size(), 0);
  for (int round = 0;; ++round) {
    Plan plan{start, Cells(start, teller), {}, {}};
    for (std::size_t l = 0; l < extra.size(); ++l) plan.cells.sizes.lanes[l].length += extra[l];
    plan.arranged = arrange(plan.wiring, plan.cells.sizes);
    // Turned lanes need their cells in the new order.
    const Sizes sizes = plan.cells.sizes;
    plan.cells = Cells(plan.wiring, teller);
    plan.cells.sizes = sizes;
    bool all_fit = true;
    for (std::size_t l = 0; l < plan.wiring.lanes.size(); ++l) {
      const Lane& lane = plan.wiring.lanes[l];
      const Span x{plan.arranged.bar_x[at(lane.left)], plan.arranged.bar_x[at(lane.right)]};
      auto cells =
          plan.cells.lay(plan.wiring, static_cast<int>(l), x, crossed(plan.wiring, plan.arranged, l));
      if (!cells) {
        all_fit = false;
        extra[l] += 40;
        cells = plan.cells.lay(plan.wiring, static_cast<int>(l), x, {});
        if (cells)
          for (PlacedCell& cell : *cells) cell.lettered = false;
      }
      plan.placed.push_back(cells ? std::move(*cells) : std::vector<PlacedCell>(lane.pieces.size()));
    }
    if (all_fit || round == most_rounds) return plan;
  }
}

Box extent(const Scene& scene) {
  if (scene.shapes.empty()) return {};
  Box box = bounds(scene.shapes.front());
  for (const Shape& shape : scene.shapes) box = joined(box, bounds(shape));
  return box;
}

/// One wiring with legend, hot spots and title block.
Scene draw_whole(const Teller& teller, const Shade& shade, const std::vector<diagnose::HotSpot>& hot_spots,
                 const Wiring& start) {
  const Plan plan = make_plan(teller, start);
  Scene wiring;
  const Sheet sheet{plan.wiring, teller, shade, plan.cells, plan.arranged, plan.placed, wiring};
  draw_bars(sheet);
  draw_lanes(sheet);
  draw_items(sheet);
  draw_ties(sheet);
  draw_bar_names(sheet);

  const Box room = extent(wiring);
  const double inner = std::max(room.width, least_width);
  Scene scene;
  scene.title = std::string(text::diagram_title) + ": " + teller.system().info.name + ", " +
                teller.solved().network.case_name;
  const Scene foot = footer(teller, shade, hot_spots, inner);
  scene.width = inner + 2 * margin;
  scene.height = room.height + foot.height + footer_gap + 2 * margin;
  place(scene, wiring, {margin - room.x + (inner - room.width) / 2, margin - room.y});
  place(scene, foot, {margin, scene.height - margin - foot.height});
  return scene;
}

}  // namespace

Scene diagram(const netlist::System& system, const solve::CaseSolution& solved,
              const std::vector<diagnose::HotSpot>& hot_spots, const DiagramOptions& options) {
  const Teller teller(system, solved, hot_spots, options.show);
  return draw_whole(teller, Shade(system, solved), hot_spots, make_wiring(solved.network));
}

DiagramSheets diagram_sheets(const netlist::System& system, const solve::CaseSolution& solved,
                             const std::vector<diagnose::HotSpot>& hot_spots, Paper paper,
                             const DiagramOptions& options) {
  const Teller teller(system, solved, hot_spots, options.show);
  const Shade shade(system, solved);
  const Wiring wiring = make_wiring(solved.network);
  // More loads side by side than a page could hold are not tried first: that takes its time.
  const bool hopeless = wiring.items.size() > most_items;
  DiagramSheets sheets;
  if (!hopeless) sheets.trunk = draw_whole(teller, shade, hot_spots, wiring);
  if (!hopeless && is_readable_on(sheets.trunk, paper)) return sheets;
  const SplitWiring split = split_circuits(wiring, 1);
  if (hopeless || !split.boards.empty()) sheets.trunk = draw_whole(teller, shade, hot_spots, split.trunk);
  for (const Board& board : split.boards)
    for (Scene& scene : draw_board(board, teller, shade, rows_on_a_sheet))
      sheets.boards.push_back(std::move(scene));
  return sheets;
}

}  // namespace ohmtrail::render
