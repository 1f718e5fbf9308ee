// Boxes of designs that are cut away: none of them keeps its limits.
#include "plan/box_cut.hpp"

#include <gtest/gtest.h>

#include <numeric>

#include "support/sizing_systems.hpp"
#include "unit/plan/sizing_rig.hpp"
#include "units/index.hpp"

namespace ohmtrail::plan {
namespace {

constexpr int turns =
    25;  // small systems: as many under the sanitizers, for of one or two none may be refused

bool holds(const Box& box, const Design& design) {
  for (std::size_t k = 0; k < box.size(); ++k)
    if (!box[k][at(design[k])]) return false;
  return true;
}

std::size_t designs_in(const Box& box) {
  std::size_t count = 1;
  for (const auto& run : box) count *= static_cast<std::size_t>(std::count(run.begin(), run.end(), true));
  return count;
}

/// The next design, as an odometer counts; false after the last.
bool next(Design& design, const DesignSpace& space) {
  for (std::size_t k = 0; k < design.size(); ++k) {
    if (++design[k] < static_cast<int>(space.runs[k].candidates.size())) return true;
    design[k] = 0;
  }
  return false;
}

TEST(BoxCut, ARefusedBoxHoldsItsDesignAndNoneThatKeepsItsLimits) {
  std::mt19937 engine(12);
  int cut = 0;
  std::size_t most = 0;
  for (int turn = 1; turn <= turns; ++turn) {
    SCOPED_TRACE(turn);
    const SizingRig rig(test::SizingSystems(static_cast<unsigned>(turn)).make({3, 4, 1, true, false}));
    const Design design = rig.any_design(engine);
    const Box allowed = full_box(rig.space);
    if (!refused(rig.cases[0], rig.space, point_box(rig.space, design))) continue;
    std::vector<int> order(rig.space.runs.size());
    std::iota(order.begin(), order.end(), 0);
    const Box box = grow_refused_box(rig.cases[0], rig.space, allowed, design, order);
    ++cut;
    most = std::max(most, designs_in(box));
    EXPECT_TRUE(holds(box, design));
    EXPECT_TRUE(refused(rig.cases[0], rig.space, box));
    Design each(design.size(), 0);
    do {
      if (holds(box, each)) {
        EXPECT_FALSE(rig.judged(each).keeps_limits());
      }
    } while (next(each, rig.space));
  }
  EXPECT_GT(cut, 0);
  EXPECT_GT(most, 1U) << "it grows beyond the one design";
}

TEST(BoxCut, NeverTakesWhatIsNotAllowed) {
  std::mt19937 engine(13);
  for (int turn = 1; turn <= turns; ++turn) {
    const SizingRig rig(test::SizingSystems(static_cast<unsigned>(turn)).make({3, 4, 1, true, false}));
    const Design design = rig.any_design(engine);
    if (!refused(rig.cases[0], rig.space, point_box(rig.space, design))) continue;
    Box allowed = full_box(rig.space);
    for (std::size_t k = 0; k < allowed.size(); ++k)
      for (std::size_t c = 0; c < allowed[k].size(); ++c)
        if (static_cast<int>(c) != design[k]) allowed[k][c] = engine() % 2 == 0;
    const Box box = grow_refused_box(rig.cases[0], rig.space, allowed, design, {2, 0, 1});
    for (std::size_t k = 0; k < box.size(); ++k)
      for (std::size_t c = 0; c < box[k].size(); ++c) EXPECT_TRUE(!box[k][c] || allowed[k][c]);
  }
}

}  // namespace
}  // namespace ohmtrail::plan
