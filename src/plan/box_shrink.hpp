#pragma once
#include <vector>

#include "plan/box_bounds.hpp"

namespace ohmtrail::plan {

/// Takes candidates out of the box that no design in it can use: below the current that surely flows, or
/// below the fuse that this current needs. Repeated, since each raises the currents' lower bounds. The bounds
/// of every case in the box that is left; empty where it holds no design that keeps every limit.
[[nodiscard]] std::vector<Bounds> shrink_box(const std::vector<RadialCase>& cases, const DesignSpace& space,
                                             Box& box);

}  // namespace ohmtrail::plan
