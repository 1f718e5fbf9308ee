#pragma once
#include <vector>

#include "render/columns.hpp"

namespace ohmtrail::render {

/// The lanes of both halves from the axis outwards.
struct LaneOrder {
  std::vector<int> upper, lower;
};

/// How many times an upright crosses a lane that does not end at it.
[[nodiscard]] int count_crossings(const Wiring& wiring, const Columns& columns, const LaneOrder& order);

/// Searches the order of items along the axis and of lanes in both halves for few crossings, then for short
/// uprights; leaves `columns` solved for what it found. The number of trials is bounded, not the time: the
/// same wiring gives the same order.
[[nodiscard]] LaneOrder find_order(const Wiring& wiring, Columns& columns,
                                   const std::vector<double>& bar_shift);

}  // namespace ohmtrail::render
