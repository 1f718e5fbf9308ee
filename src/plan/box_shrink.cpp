#include "plan/box_shrink.hpp"

#include <algorithm>

namespace ohmtrail::plan {

namespace {

std::size_t at(int i) {
  return static_cast<std::size_t>(i);
}

/// Currents closer than this share are one.
constexpr double kSlack = 1e-6;

double least_amperes(const Bounds& known, const std::vector<int>& loads) {
  double sum = 0;
  for (const int l : loads) sum += known.load_amperes[at(l)].low;
  return sum;
}

bool drop_below_current(const RadialCase& in_case, const Bounds& known, Box& box) {
  bool changed = false;
  for (const Arm& arm : in_case.arms) {
    if (arm.run < 0) continue;
    const double amperes = least_amperes(known, arm.loads) * (1 - kSlack);
    for (std::size_t c = 0; c < arm.choices.size(); ++c)
      if (box[at(arm.run)][c] && arm.most_amperes[c] < amperes) box[at(arm.run)][c] = false, changed = true;
  }
  return changed;
}

bool drop_below_fuse(const RadialCase& in_case, const DesignSpace& space, const Bounds& known, Box& box) {
  bool changed = false;
  for (const Device& device : in_case.devices) {
    const auto rating = std::lower_bound(device.ladder.begin(), device.ladder.end(),
                                         1.25 * least_amperes(known, device.loads) * (1 - kSlack));
    if (rating == device.ladder.end()) continue;
    for (const int run : device.runs)
      for (std::size_t c = 0; c < box[at(run)].size(); ++c)
        if (box[at(run)][c] && space.runs[at(run)].candidates[c].ampacity < *rating * (1 - kSlack))
          box[at(run)][c] = false, changed = true;
  }
  return changed;
}

bool holds_none(const Box& box) {
  return std::any_of(box.begin(), box.end(), [](const std::vector<bool>& allowed) {
    return std::find(allowed.begin(), allowed.end(), true) == allowed.end();
  });
}

}  // namespace

std::vector<Bounds> shrink_box(const std::vector<RadialCase>& cases, const DesignSpace& space, Box& box) {
  std::vector<Bounds> known;
  for (bool changed = true; changed;) {
    changed = false;
    known.clear();
    for (const RadialCase& in_case : cases) {
      known.push_back(bounds(in_case, space, box));
      if (!known.back().possible) return {};
      changed = drop_below_current(in_case, known.back(), box) || changed;
      changed = drop_below_fuse(in_case, space, known.back(), box) || changed;
      if (holds_none(box)) return {};
    }
  }
  return known;
}

}  // namespace ohmtrail::plan
