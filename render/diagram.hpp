#pragma once
#include <vector>

#include "ohmtrail/diagnose/hot_spot.hpp"
#include "ohmtrail/netlist/system.hpp"
#include "ohmtrail/solve/case_solution.hpp"
#include "render/picture.hpp"
#include "render/scene.hpp"

namespace ohmtrail::render {

/// The number written beside each thing.
enum class Show {
  volts,  ///< lost in it; at posts and loads: what stands there
  amps,   ///< with an arrow in the direction of the current
  heat,   ///< watts, and the temperature where one is known
  gauge   ///< conductor size and length, ratings
};

struct DiagramOptions {
  Show show = Show::volts;
};

/// The wiring diagram of `system` as `solved` found it: supplies left, loads right, positive above, negative
/// below, every run one line as wide as its copper and coloured by the share of the allowed loss that it
/// takes, symbols after IEC 60617, hot spots as discs that carry their rank. `solved` was built from
/// `system`. Where things stand depends on the system alone, so that two cases can be laid side by side.
[[nodiscard]] Scene diagram(const netlist::System& system, const solve::CaseSolution& solved,
                            const std::vector<diagnose::HotSpot>& hot_spots,
                            const DiagramOptions& options = {});

/// The same on several sheets, for a system that one sheet could not show readably.
struct DiagramSheets {
  Scene trunk;                ///< supplies and bars; the whole diagram where `boards` is empty
  std::vector<Scene> boards;  ///< the circuits of each bar in rows, titled; some bars have several
};

/// Splits the diagram where its names would fall below `least_letters` on one page of `paper`.
[[nodiscard]] DiagramSheets diagram_sheets(const netlist::System& system, const solve::CaseSolution& solved,
                                           const std::vector<diagnose::HotSpot>& hot_spots, Paper paper,
                                           const DiagramOptions& options = {});

}  // namespace ohmtrail::render
