// The judge: which limits a design breaks, and where there is nothing to judge.
#include "plan/assess.hpp"

#include <gmock/gmock.h>

#include <algorithm>

#include "unit/plan/sizing_rig.hpp"
#include "unit/plan/small_systems.hpp"
#include "units/index.hpp"

namespace ohmtrail::plan {
namespace {

using testing::HasSubstr;
using What = Broken::What;

/// Battery, one cable of 4 m or so each way, one load.
test::Systems lamp(const netlist::Takes& takes, std::optional<double> stops_below = {}) {
  test::Systems make(5);
  make.battery("bank", "b+", "b-");
  make.run("feed", "b+", "l+", 4), make.run("back", "l-", "b-", 4);
  auto& load = make.load("lamp", "l+", "l-");
  load.takes = takes;
  if (stops_below) load.stops_below = units::Voltage{*stops_below};
  return make;
}

Assessment with_thinnest(const netlist::System& system) {
  const SizingRig rig(system);
  return rig.judged(Design(rig.space.runs.size(), 0));
}

bool breaks(const Assessment& judged, What what) {
  return std::any_of(judged.broken.begin(), judged.broken.end(),
                     [&](const Broken& one) { return one.what == what; });
}

TEST(Assess, AThinWireLosesTooMuch) {
  const Assessment judged = with_thinnest(lamp(units::Current{20}).done());
  ASSERT_TRUE(breaks(judged, What::drop));
  const Broken& drop = *std::find_if(judged.broken.begin(), judged.broken.end(),
                                     [](const Broken& one) { return one.what == What::drop; });
  EXPECT_GT(drop.value, drop.limit);
  EXPECT_EQ(judged.cases[drop.in_case].network.elements[at(drop.element)].id, "lamp");
  EXPECT_FALSE(judged.keeps_limits());
}

TEST(Assess, AHotWireIsAboveItsAmpacity) {
  const Assessment judged = with_thinnest(lamp(units::Current{60}).done());
  EXPECT_TRUE(breaks(judged, What::ampacity));
}

TEST(Assess, PowerThatCannotBeCarriedCollapses) {
  const Assessment judged = with_thinnest(lamp(units::Power{2000}).done());
  EXPECT_TRUE(breaks(judged, What::collapsed));
  EXPECT_FALSE(judged.failure);
}

TEST(Assess, ALoadThatDropsOutIsBrokenAtItsLeastVoltage) {
  const Assessment judged = with_thinnest(lamp(units::Power{200}, 11).done());
  ASSERT_TRUE(breaks(judged, What::stopped));
  const auto stopped = std::find_if(judged.broken.begin(), judged.broken.end(),
                                    [](const Broken& one) { return one.what == What::stopped; });
  EXPECT_EQ(stopped->limit, 11);
}

TEST(Assess, AShortIsNoDesignsFault) {
  netlist::System system = lamp(units::Current{1}).done();
  netlist::Joint strap;
  strap.id = "strap", strap.from = "b+", strap.to = "b-";
  strap.resistances.as_found = units::Resistance{0};
  system.joints.push_back(strap);
  const SizingRig rig(system);
  const Assessment judged = rig.judged(rig.thickest());
  ASSERT_TRUE(judged.failure);
  EXPECT_THAT(*judged.failure, HasSubstr("a source is shorted through"));
  EXPECT_THAT(*judged.failure, HasSubstr("strap"));
  EXPECT_FALSE(judged.keeps_limits());
}

TEST(Assess, ABreakerIsRatedLikeAFuse) {
  test::Systems make(5);
  make.battery("bank", "b+", "b-");
  make.run("feed", "k", "l+", 1), make.run("back", "l-", "b-", 1);
  make.load("lamp", "l+", "l-").takes = units::Current{20};
  netlist::System system = make.done();
  netlist::Switch breaker;
  breaker.id = "breaker", breaker.from = "b+", breaker.to = "k";
  breaker.kind = trade::SwitchKind::breaker, breaker.rating = units::Current{5};
  system.switches.push_back(breaker);
  const SizingRig rig(system);
  const Assessment judged = rig.judged(rig.thickest());
  EXPECT_GE(judged.system.switches[0].rating->si(), 1.25 * 20) << "5 A was far too little";
  EXPECT_FALSE(breaks(judged, What::fuse));
}

}  // namespace
}  // namespace ohmtrail::plan
