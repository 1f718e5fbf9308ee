#pragma once
#include "ohmtrail/diagnose/staircase.hpp"
#include "ohmtrail/netlist/system.hpp"
#include "render/scene.hpp"

namespace ohmtrail::render {

/// The voltage along the way battery → load → battery, to scale: each step named, as rated against as found,
/// the limits as bands. Sound ends of a run share its step. Without `titled` for where a heading stands above
/// it.
[[nodiscard]] Scene staircase_picture(const netlist::System& system, const diagnose::Staircase& staircase,
                                      bool titled = true);

}  // namespace ohmtrail::render
