#pragma once
#include "ohmtrail/diagnose/staircase.hpp"
#include "ohmtrail/netlist/system.hpp"
#include "render/scene.hpp"

namespace ohmtrail::render {

/// The voltage along the way battery → load → battery, to scale: each step named, as rated against as found,
/// the limits as bands.
[[nodiscard]] Scene staircase_picture(const netlist::System& system, const diagnose::Staircase& staircase);

}  // namespace ohmtrail::render
