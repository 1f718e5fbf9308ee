// What a wire carries: loads, a string, or both, in which case there is no radial case.
#include "plan/radial.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "ohmtrail/trade/gauge.hpp"
#include "plan/bank_strings.hpp"
#include "plan/box_bounds.hpp"

namespace ohmtrail::plan {
namespace {

/// Invented: batteries, runs and loads by their points.
struct Rig {
  netlist::System system;

  Rig() {
    system.info.name = "rig (invented)";
    system.info.nominal = units::Voltage{12};
    netlist::Case all;
    all.name = "all", all.all_on = true;
    system.cases.push_back(all);
  }
  void battery(const std::string& id, const std::string& plus, const std::string& minus) {
    netlist::Battery one;
    one.id = id, one.plus = plus, one.minus = minus;
    one.nominal = units::Voltage{12}, one.emf = units::Voltage{12.6};
    one.resistance = units::Resistance{0.005};
    system.batteries.push_back(one);
  }
  void run(const std::string& from, const std::string& to) {
    netlist::Run one;
    one.id = from + " " + to, one.from = from, one.to = to;
    one.gauge = trade::awg(6), one.length = units::Length{1};
    system.runs.push_back(one);
  }
  netlist::Load& load(const std::string& id, const std::string& plus, const std::string& minus) {
    netlist::Load one;
    one.id = id, one.plus = plus, one.minus = minus;
    one.takes = units::Current{10};
    system.loads.push_back(one);
    return system.loads.back();
  }
  [[nodiscard]] std::optional<RadialCase> radial() const {
    const DesignSpace space = design_space(system, {});
    return radial_case(space, space.cases[0], find_guards(space.system, space.cases[0].network));
  }
  [[nodiscard]] std::optional<BankWiring> bank() const {
    const auto network = network::build(system, system.cases[0]);
    const WiringForest forest(network);
    std::vector<int> loads;
    for (const auto& one : system.loads) loads.push_back(*network.element(one.id));
    return bank_wiring(network, forest, loads);
  }
};

Rig parallel() {
  Rig rig;
  rig.battery("a", "a+", "a-"), rig.battery("b", "b+", "b-");
  rig.run("b+", "a+"), rig.run("b-", "a-"), rig.run("a+", "l+");
  rig.load("lamp", "l+", "a-");
  return rig;
}

const Arm& arm_of(const RadialCase& radial, int run) {
  return *std::find_if(radial.arms.begin(), radial.arms.end(),
                       [&](const Arm& arm) { return arm.run == run; });
}

TEST(Radial, JumpersCarryTheirString) {
  const auto radial = parallel().radial();
  ASSERT_TRUE(radial);
  ASSERT_EQ(radial->strings.size(), 2U);
  EXPECT_EQ(arm_of(*radial, 0).string, 1);
  EXPECT_EQ(arm_of(*radial, 1).string, 1);
  EXPECT_EQ(arm_of(*radial, 2).string, -1);
  EXPECT_EQ(arm_of(*radial, 2).loads, std::vector<int>{0});
  EXPECT_TRUE(radial->strings[0].arms.empty());
}

TEST(Radial, TakenOffCrosswiseEachBatteryHasAJumper) {
  Rig rig = parallel();
  rig.system.loads[0].minus = "b-";
  const auto radial = rig.radial();
  ASSERT_TRUE(radial);
  EXPECT_EQ(arm_of(*radial, 0).string, 1);
  EXPECT_EQ(arm_of(*radial, 1).string, 0);
}

TEST(Radial, AWireWithALoadLessAStringIsNoCaseForIt) {
  Rig rig = parallel();
  rig.load("radio", "b+", "a-");  // the jumper carries b less the radio
  EXPECT_FALSE(rig.radial());
  EXPECT_FALSE(rig.bank());
}

TEST(Radial, ARingHasNone) {
  Rig rig = parallel();
  rig.run("b+", "l+");
  EXPECT_FALSE(rig.radial());
}

TEST(Radial, LinksOfAnOnlyStringFeedEveryLoad) {
  Rig rig;
  rig.battery("a", "a+", "m1"), rig.battery("b", "m2", "b-");
  rig.run("m1", "m2"), rig.run("a+", "l+");
  rig.load("lamp", "l+", "b-"), rig.load("radio", "a+", "b-");
  const auto radial = rig.radial();
  ASSERT_TRUE(radial);
  ASSERT_EQ(radial->strings.size(), 1U);
  EXPECT_NEAR(radial->strings[0].emf, 25.2, 1e-12);
  EXPECT_EQ(arm_of(*radial, 0).loads, (std::vector<int>{0, 1}));
  EXPECT_EQ(arm_of(*radial, 1).loads, std::vector<int>{0});
}

TEST(Radial, ALoadAcrossPartOfAStringHasNone) {
  Rig rig;
  rig.battery("a", "a+", "m"), rig.battery("b", "m", "b-");
  rig.run("a+", "l+");
  rig.load("lamp", "l+", "b-"), rig.load("radio", "m", "b-");
  EXPECT_FALSE(rig.radial());
}

TEST(Radial, AWireOfShortDutyAloneIsWarmByItsShare) {
  Rig rig;
  rig.battery("a", "a+", "a-");
  rig.run("a+", "p"), rig.run("p", "w+");
  auto& winch = rig.load("winch", "w+", "a-");
  winch.on_for = units::Time{60}, winch.rest_for = units::Time{600};
  rig.load("lamp", "p", "a-");
  const auto radial = rig.radial();
  ASSERT_TRUE(radial);
  for (const Curve& curve : arm_of(*radial, 1).choices) {
    EXPECT_EQ(curve.least, curve.most);
    EXPECT_GT(curve.least, 0);
  }
  // The shared wire keeps the lamp's heat in full: (10 A of 20 A)² of it.
  for (std::size_t c = 0; c < arm_of(*radial, 0).choices.size(); ++c)
    EXPECT_GT(arm_of(*radial, 0).choices[c].least, arm_of(*radial, 1).choices[c].least);
}

TEST(Radial, ADeviceKeepsItsRatingWhereThatServes) {
  Device device;
  device.ladder = {5, 10, 15, 20}, device.ohms = {0.02, 0.01, 0.007, 0.005};
  device.rated = 15, device.found_ohms = 0.008;
  device.most = {4, 4.2};
  const Interval kept = device.resistance({25, 30});
  EXPECT_EQ(kept.low, 0.008);
  EXPECT_EQ(kept.high, 0.008);
  // Wire that may carry 7 A asks for the least that carries 1.25 · 4.2 A: 10 A does not protect it.
  const Interval refitted = device.resistance({7, 7});
  EXPECT_EQ(refitted.low, 0.02);
  EXPECT_EQ(refitted.high, 0.02);
  // Either, where the wire is not chosen yet.
  const Interval open = device.resistance({7, 30});
  EXPECT_LE(open.low, 0.008);
  EXPECT_EQ(open.high, 0.02);
}

}  // namespace
}  // namespace ohmtrail::plan
