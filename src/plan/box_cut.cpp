#include "plan/box_cut.hpp"

#include "units/index.hpp"

namespace ohmtrail::plan {

namespace {

/// Allowed candidates of one run between two indices.
std::vector<bool> span(const std::vector<bool>& allowed, int low, int high) {
  std::vector<bool> mask(allowed.size(), false);
  for (int c = low; c <= high; ++c) mask[at(c)] = allowed[at(c)];
  return mask;
}

/// Largest span around the design's candidate that is still refused: first towards thinner wire, then
/// thicker.
void grow_run(const RadialCase& in_case, const DesignSpace& space, const std::vector<bool>& allowed, int run,
              int candidate, Box& box) {
  const int last = static_cast<int>(allowed.size()) - 1;
  const auto holds = [&](int low, int high) {
    auto saved = box[at(run)];
    box[at(run)] = span(allowed, low, high);
    box[at(run)][at(candidate)] = true;
    if (refused(in_case, space, box)) return true;
    box[at(run)] = std::move(saved);
    return false;
  };
  if (holds(0, last)) return;
  int low = candidate;
  if (holds(0, candidate)) {
    low = 0;
  } else {
    for (int below = 0, above = candidate; above - below > 1;) {
      const int middle = (below + above) / 2;
      (holds(middle, candidate) ? low = above = middle : below = middle);
    }
  }
  for (int below = candidate, above = last; above - below > 1;) {
    const int middle = (below + above) / 2;
    (holds(low, middle) ? below : above) = middle;
  }
}

}  // namespace

bool refused(const RadialCase& in_case, const DesignSpace& space, const Box& box) {
  return !bounds(in_case, space, box).possible;
}

Box grow_refused_box(const RadialCase& in_case, const DesignSpace& space, const Box& allowed,
                     const Design& design, const std::vector<int>& order) {
  Box box = point_box(space, design);
  for (const int run : order) grow_run(in_case, space, allowed[at(run)], run, design[at(run)], box);
  return box;
}

}  // namespace ohmtrail::plan
