#include "plan/box_shrink.hpp"

#include <algorithm>
#include <map>

#include "units/index.hpp"

namespace ohmtrail::plan {

namespace {

/// Currents closer than this share are one.
constexpr double kSlack = 1e-6;

bool drop_below_current(const RadialCase& in_case, const Bounds& known, Box& box) {
  bool changed = false;
  for (std::size_t a = 0; a < in_case.arms.size(); ++a) {
    const Arm& arm = in_case.arms[a];
    if (arm.run < 0) continue;
    const double amperes = known.arm_amperes[a].low * (1 - kSlack);
    for (std::size_t c = 0; c < arm.choices.size(); ++c)
      if (box[at(arm.run)][c] && arm.most_amperes[c] < amperes) box[at(arm.run)][c] = false, changed = true;
  }
  return changed;
}

bool drop_below_fuse(const RadialCase& in_case, const DesignSpace& space, const Bounds& known, Box& box) {
  bool changed = false;
  for (const Device& device : in_case.devices) {
    const auto rating = std::lower_bound(device.ladder.begin(), device.ladder.end(),
                                         1.25 * known.arm_amperes[at(device.arm)].low * (1 - kSlack));
    if (rating == device.ladder.end()) continue;
    for (const int run : device.runs)
      for (std::size_t c = 0; c < box[at(run)].size(); ++c)
        if (box[at(run)][c] && space.runs[at(run)].candidates[c].fuse_limit < *rating * (1 - kSlack))
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

void narrow_devices(const std::vector<Bounds>& known, std::vector<RadialCase>& cases) {
  std::map<int, Interval> most;  // by element
  for (std::size_t s = 0; s < cases.size(); ++s)
    for (const Device& device : cases[s].devices) {
      const Interval& amperes = known[s].arm_amperes[at(device.arm)];
      Interval& all = most.try_emplace(device.element, Interval{0, 0}).first->second;
      all.low = std::max(all.low, amperes.low);
      all.high = std::max(all.high, amperes.high);
    }
  for (RadialCase& in_case : cases)
    for (Device& device : in_case.devices) (void)device.most.narrow(most.at(device.element));
}

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
