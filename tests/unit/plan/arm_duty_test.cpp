// How warm loads of short duty leave the wires that they share with lasting ones.
#include "plan/arm_duty.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "ohmtrail/trade/ampacity.hpp"
#include "unit/plan/sizing_rig.hpp"
#include "unit/plan/small_systems.hpp"
#include "units/index.hpp"

namespace ohmtrail::plan {
namespace {

/// A trunk of a winch in turns (40 A) and a lamp (10 A), with a cable for each.
netlist::System boat(bool lamp_in_turns = false) {
  test::Systems make(3);
  make.battery("bank", "b+", "b-");
  make.run("trunk", "b+", "p", 1.5), make.run("winch cable", "p", "w+", 2),
      make.run("lamp cable", "p", "l+", 2);
  auto& winch = make.load("winch", "w+", "b-");
  winch.takes = units::Current{40}, winch.on_for = units::Time{60}, winch.rest_for = units::Time{600};
  auto& lamp = make.load("lamp", "l+", "b-");
  lamp.takes = units::Current{10};
  if (lamp_in_turns) lamp.on_for = units::Time{20}, lamp.rest_for = units::Time{600};
  return make.done();
}

/// Warming per square ampere of a run's first candidate: as the wire lasts, and as its arm was left.
struct Warmth {
  double full = 0, share = 0;  ///< Ω/A², and the part of the steady rise at the end of the winch's turn
  Curve curve;
};

Warmth warmth_of(const SizingRig& rig, const std::string& run) {
  const CaseSpace& in_case = rig.space.cases.front();
  for (const Arm& arm : rig.cases.front().arms) {
    if (arm.run < 0) continue;
    const auto& values = in_case.values[at(arm.run)].front();
    for (const ElementValue& value : values) {
      const network::Element& element = in_case.network.elements[at(value.element)];
      if (element.id != run + "/wire") continue;
      return {value.ohms * value.alpha * value.rise / (value.rated * value.rated), value.duty,
              arm.choices.front()};
    }
  }
  ADD_FAILURE() << "no arm of " << run;
  return {};
}

TEST(ArmDuty, AWireOfTheWinchAloneWarmsByTheShareOfItsTurn) {
  const SizingRig rig(boat());
  const Warmth winch = warmth_of(rig, "winch cable");
  ASSERT_GT(winch.share, 0);
  ASSERT_LT(winch.share, 1);
  EXPECT_NEAR(winch.curve.least / winch.full, winch.share, 1e-12);
  EXPECT_NEAR(winch.curve.most / winch.full, winch.share, 1e-12);
}

TEST(ArmDuty, AWireOfTheLampAloneWarmsInFull) {
  const Warmth lamp = warmth_of(SizingRig(boat()), "lamp cable");
  EXPECT_NEAR(lamp.curve.least / lamp.full, 1, 1e-12);
  EXPECT_NEAR(lamp.curve.most / lamp.full, 1, 1e-12);
}

/// Of 50 A a fifth lasts: (10 / 50)² of the heat counts in full, the rest by the share of its turn.
TEST(ArmDuty, ASharedWireKeepsWhatLastsInFull) {
  const Warmth trunk = warmth_of(SizingRig(boat()), "trunk");
  const double kept = 0.04 + 0.96 * trunk.share;
  EXPECT_NEAR(trunk.curve.least / trunk.full, kept, 1e-12);
  EXPECT_NEAR(trunk.curve.most / trunk.full, kept, 1e-12);
}

TEST(ArmDuty, UnlikeTurnsLeaveTheWholeRangeOpen) {
  const Warmth trunk = warmth_of(SizingRig(boat(true)), "trunk");
  EXPECT_LT(trunk.curve.least, trunk.curve.most);
  EXPECT_NEAR(trunk.curve.most / trunk.full, 1, 1e-12) << "never cooler than it may be";
}

/// Constant power takes more the lower its voltage: the part that lasts is then a range that holds the truth.
TEST(ArmDuty, OfPowerTheRangeHoldsWhatTheSolveFinds) {
  netlist::System system = boat();
  system.loads[0].takes = units::Power{480};
  const SizingRig rig(system);
  const Warmth trunk = warmth_of(rig, "trunk");
  EXPECT_LT(trunk.curve.least, trunk.curve.most);
  const Assessment judged = rig.judged(rig.thickest());
  const auto& solved = judged.cases.front();
  const auto wire = at(*solved.network.element("trunk"));
  ASSERT_TRUE(solved.turns);
  const double kept = solved.turns->lasting[wire] + (1 - solved.turns->lasting[wire]) * trunk.share;
  EXPECT_LE(trunk.curve.least / trunk.full, kept + 1e-9);
  EXPECT_GE(trunk.curve.most / trunk.full, kept - 1e-9);
}

}  // namespace
}  // namespace ohmtrail::plan
