#pragma once
#include "render/lane_order.hpp"

namespace ohmtrail::render {

/// Gives every lane of `order` its y: as close to the axis as the lanes inside it, the items and the names of
/// bars let it; then moves lanes level with one on the other side of their bar where there is room.
/// Reads bar_x and item_x of `arranged`; writes lane_y, label_y and bar_span.
void stack_lanes(const Wiring& wiring, const Sizes& sizes, const LaneOrder& order, Arrangement& arranged);

}  // namespace ohmtrail::render
