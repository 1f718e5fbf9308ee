#include <algorithm>

#include "render/cells.hpp"
#include "units/index.hpp"

namespace ohmtrail::render {
namespace {

constexpr double clear_of_upright = 5;

/// Spare length goes to the last run; the devices after it move along unless an upright stands where they
/// would come.
void stretch(const std::vector<Piece>& pieces, std::vector<PlacedCell>& placed, double slack,
             const std::vector<double>& crossed) {
  std::size_t run = pieces.size();
  for (std::size_t k = 0; k < pieces.size(); ++k)
    if (pieces[k].is_run) run = k;
  if (run == pieces.size()) return;
  for (std::size_t k = run + 1; k < pieces.size(); ++k)
    for (const double c : crossed)
      if (c > placed[k].left + slack - widest_device_name / 2 &&
          c < placed[k].right + slack + widest_device_name / 2)
        return;
  placed[run].right += slack;
  for (std::size_t k = run + 1; k < pieces.size(); ++k)
    placed[k].left += slack, placed[k].right += slack, placed[k].text += slack;
}

}  // namespace

std::optional<std::vector<PlacedCell>> Cells::lay(const Wiring& wiring, int lane, Span x,
                                                  const std::vector<double>& crossed) const {
  const auto& cells = lanes[at(lane)];
  const auto& pieces = wiring.lanes[at(lane)].pieces;
  std::vector<double> uprights = crossed;
  std::sort(uprights.begin(), uprights.end());
  const auto clear = [&](double from, double width) {
    for (const double c : uprights)
      if (c > from - clear_of_upright && c < from + width + clear_of_upright) from = c + clear_of_upright;
    return from;
  };
  std::vector<PlacedCell> placed;
  double at_x = x.low + lead;
  for (std::size_t k = 0; k < cells.size(); ++k) {
    const Cell& cell = cells[k];
    PlacedCell place;
    if (pieces[k].is_run) {
      place.left = at_x;
      place.text = clear(at_x + cell.before, cell.inner);
      place.right = place.text + cell.inner + cell.after;
      at_x = place.right;
    } else {
      const double start = clear(at_x, cell.width());
      place.left = start + cell.before;
      place.right = place.left + cell.inner;
      place.text = (place.left + place.right) / 2;
      at_x = start + cell.width();
    }
    placed.push_back(place);
  }
  const double slack = x.high - lead - at_x;
  if (slack < -1e-6) return std::nullopt;
  stretch(pieces, placed, slack, crossed);
  return placed;
}

std::vector<PlacedCell> Cells::lay_tie(const Wiring& wiring, int tie, Span x) const {
  double at_x = x.low + lead;
  std::vector<PlacedCell> placed;
  for (std::size_t k = 0; k < ties[at(tie)].size(); ++k) {
    const Cell& cell = ties[at(tie)][k];
    const bool run = wiring.ties[at(tie)].pieces[k].is_run;
    PlacedCell place;
    place.left = run ? at_x : at_x + cell.before;
    place.right = run ? at_x + cell.width() : place.left + cell.inner;
    place.text = run ? at_x + cell.before : (place.left + place.right) / 2;
    at_x += cell.width();
    placed.push_back(place);
  }
  stretch(wiring.ties[at(tie)].pieces, placed, x.high - lead - at_x, {});
  return placed;
}

}  // namespace ohmtrail::render
