#pragma once
#include "plan/box_bounds.hpp"

namespace ohmtrail::plan {

/// Grows the box around a refused design for as long as the bounds still refuse it; all of it may then be cut
/// away: at least one run must take a candidate outside. `order`: runs in the order in which they are grown.
[[nodiscard]] Box grow_refused_box(const RadialCase& in_case, const DesignSpace& space, const Box& allowed,
                                   const Design& design, const std::vector<int>& order);

/// Whether the bounds refuse every design in the box.
[[nodiscard]] bool refused(const RadialCase& in_case, const DesignSpace& space, const Box& box);

}  // namespace ohmtrail::plan
