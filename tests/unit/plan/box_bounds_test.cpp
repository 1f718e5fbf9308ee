// The intervals of a box hold the solved state of every design in it that keeps its limits.
#include "plan/box_bounds.hpp"

#include <gtest/gtest.h>

#include <random>

#include "plan/assess.hpp"
#include "plan/box_shrink.hpp"
#include "small_systems.hpp"
#include "support/random_cases.hpp"
#include "support/sizing_systems.hpp"
#include "unit/plan/sizing_rig.hpp"
#include "units/index.hpp"

namespace ohmtrail::plan {
namespace {

/// Two parallel batteries, a fused trunk, a winch of short duty and a lamp.
netlist::System everything(unsigned seed) {
  test::Systems make(seed);
  make.battery("a", "a+", "a-"), make.battery("b", "b+", "b-");
  make.run("jumper plus", "b+", "a+", 0.5), make.run("jumper minus", "b-", "a-", 0.5);
  make.fuse("main", "a+", "m", 80);
  make.run("trunk", "m", "p", 1.5), make.run("winch cable", "p", "w+", 2);
  auto& winch = make.load("winch", "w+", "a-");
  winch.takes = units::Current{40}, winch.on_for = units::Time{60}, winch.rest_for = units::Time{600};
  make.load("lamp", "p", "a-");
  return make.done();
}

void expect_within(double value, const Interval& interval, const std::string& what) {
  EXPECT_GE(value, interval.low - 1e-6 * (1 + std::abs(value))) << what;
  EXPECT_LE(value, interval.high + 1e-6 * (1 + std::abs(value))) << what;
}

void expect_state_within(const SizingRig& rig, const Assessment& solved, const std::vector<Bounds>& known) {
  for (std::size_t s = 0; s < rig.cases.size(); ++s)
    for (std::size_t l = 0; l < rig.cases[s].loads.size(); ++l) {
      const auto& load = solved.cases[s].loads;
      const int element = rig.cases[s].loads[l].element;
      const auto found =
          std::find_if(load.begin(), load.end(), [&](const auto& one) { return one.element == element; });
      ASSERT_NE(found, load.end());
      expect_within(found->volts, known[s].load_volts[l], "volts");
      expect_within(std::abs(found->current), known[s].load_amperes[l], "amperes");
      expect_within(found->volts + found->drop, known[s].terminal, "posts");
    }
}

Box random_box_around(const Design& design, const SizingRig& rig, std::mt19937& engine) {
  Box box = full_box(rig.space);
  for (std::size_t k = 0; k < box.size(); ++k)
    for (std::size_t c = 0; c < box[k].size(); ++c)
      if (static_cast<int>(c) != design[k] && engine() % 2 == 0) box[k][c] = false;
  return box;
}

TEST(BoxBounds, HoldEveryStateThatKeepsItsLimits) {
  std::mt19937 engine(9);
  int kept = 0;
  for (int turn = 1; turn <= test::random_cases(30); ++turn) {
    const SizingRig rig(everything(static_cast<unsigned>(turn)));
    for (int pick = 0; pick < 12; ++pick) {
      const Design design = rig.any_design(engine);
      const auto solved = rig.judged(design);
      if (!solved.keeps_limits()) continue;
      ++kept;
      Box box = random_box_around(design, rig, engine);
      std::vector<Bounds> known;
      for (const RadialCase& in_case : rig.cases) known.push_back(bounds(in_case, rig.space, box));
      for (const Bounds& one : known) ASSERT_TRUE(one.possible) << "turn " << turn;
      expect_state_within(rig, solved, known);
      // Neither does shrinking take the design away.
      ASSERT_FALSE(shrink_box(rig.cases, rig.space, box).empty());
      for (std::size_t k = 0; k < design.size(); ++k) EXPECT_TRUE(box[k][at(design[k])]);
    }
  }
  EXPECT_GT(kept, 0);
}

TEST(BoxBounds, WhatTheyCallCertainTheJudgeAccepts) {
  std::mt19937 engine(10);
  int certain = 0;
  for (int turn = 1; turn <= test::random_cases(30); ++turn) {
    const SizingRig rig(test::SizingSystems(static_cast<unsigned>(turn)).make({4, 4, 2, true, false}));
    for (int pick = 0; pick < 12; ++pick) {
      const Design design = rig.any_design(engine);
      bool all = true;
      for (const RadialCase& in_case : rig.cases)
        all = all && bounds(in_case, rig.space, point_box(rig.space, design)).certain;
      if (!all) continue;
      ++certain;
      EXPECT_TRUE(rig.judged(design).keeps_limits()) << "turn " << turn;
    }
  }
  EXPECT_GT(certain, 0);
}

}  // namespace
}  // namespace ohmtrail::plan
