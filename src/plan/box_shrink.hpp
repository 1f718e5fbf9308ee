#pragma once
#include <vector>

#include "plan/box_bounds.hpp"

namespace ohmtrail::plan {

/// Takes candidates out of the box that no design in it can use: below the current that surely flows, or
/// below the fuse that this current needs. Repeated, since each raises the currents' lower bounds. The bounds
/// of every case in the box that is left; empty where it holds no design that keeps every limit.
[[nodiscard]] std::vector<Bounds> shrink_box(const std::vector<RadialCase>& cases, const DesignSpace& space,
                                             Box& box);

/// Tells the devices of every case what they carry at most over all cases, in any design of the box whose
/// bounds are known.
void narrow_devices(const std::vector<Bounds>& known, std::vector<RadialCase>& cases);

}  // namespace ohmtrail::plan
