// Short duty against the exponential of a wire's warming, worked out beside the test.
#include <gtest/gtest.h>

#include <cmath>

#include "ohmtrail/diagnose/check_system.hpp"
#include "ohmtrail/trade/ampacity.hpp"
#include "protection_rig.hpp"

namespace ohmtrail::plan {
namespace {

using test::Rig;
using units::Time;

constexpr const char* rule = "short-duty-heat";

Rig windlass(int awg, double amperes, double on, double rest) {
  Rig rig;
  auto& battery = rig.battery("bank", "b+", "b-");
  battery.emf = units::Voltage{12.7};
  battery.resistance = units::Resistance{0.001};
  rig.fuse("fuse", "b+", "f", 500);
  rig.run("cable", "f", "l+", awg, 4);
  auto& load = rig.load("windlass", "l+", "l-", amperes);
  load.on_for = Time{on};
  load.rest_for = Time{rest};
  rig.run("back", "l-", "b-", awg, 4);
  return rig;
}

/// °C at the end of the time on: T = T₀ + ΔT (I/I_a)² (1 − e^(−on/τ)) / (1 − e^(−(on + rest)/τ)).
double by_hand(int awg, double amperes, double on, double rest) {
  const auto rating = trade::ampacity({trade::awg(awg), units::Temperature{105}});
  const auto network = network::build(windlass(awg, amperes, on, rest).system, netlist::Case{});
  const double constant =
      network.elements[static_cast<std::size_t>(*network.element("cable"))].heating->time_constant.si();
  const double share = -std::expm1(-on / constant) / -std::expm1(-(on + rest) / constant);
  const double load = amperes / rating.amps.si();
  return 25 + rating.rise_at_rated.si() * load * load * share;
}

TEST(ShortDutyHeat, AShortTurnOnAThinCableIsNothing) {
  // 6 AWG may carry 120 A for long; 150 A for 20 s of every ten minutes hardly warm it.
  ASSERT_LT(by_hand(6, 150, 20, 580), 60);
  EXPECT_TRUE(windlass(6, 150, 20, 580).of_rule(rule).empty());
}

TEST(ShortDutyHeat, ALongTurnBurnsIt) {
  ASSERT_GT(by_hand(6, 250, 120, 480), 105);
  const auto found = windlass(6, 250, 120, 480).of_rule(rule);
  ASSERT_EQ(found.size(), 2U);  // cable and its way back
  EXPECT_EQ(found[0].subject, "cable");
  EXPECT_EQ(found[0].in_case, "all-on");
  EXPECT_EQ(found[0].severity, diagnose::Severity::before_further_use);
  EXPECT_NE(found[0].text.find("windlass"), std::string::npos);
  test::expect_whole(found);
}

TEST(ShortDutyHeat, TheLimitIsWhereTheExponentialPutsIt) {
  double on = 10;
  while (by_hand(6, 250, on, 600 - on) < 105) on += 1;
  EXPECT_TRUE(windlass(6, 250, on - 1.5, 601.5 - on).of_rule(rule).empty());
  EXPECT_FALSE(windlass(6, 250, on + 0.5, 599.5 - on).of_rule(rule).empty());
}

TEST(ShortDutyHeat, AStarterIsCrankedForThirtySeconds) {
  auto rig = windlass(8, 200, 1, 1);
  rig.system.loads[0].id = "starter";
  rig.system.loads[0].on_for.reset();
  rig.system.loads[0].rest_for.reset();
  EXPECT_FALSE(rig.of_rule(rule).empty());
  for (auto& run : rig.system.runs) run.gauge = trade::awg(0);
  EXPECT_TRUE(rig.of_rule(rule).empty());
}

TEST(ShortDutyHeat, HalfASecondOfInrushWarmsAWireByItsHeatCapacity) {
  auto rig = windlass(18, 10, 1, 1);
  rig.system.loads[0].on_for.reset();
  rig.system.loads[0].rest_for.reset();
  rig.system.loads[0].inrush = units::Current{60};
  EXPECT_TRUE(rig.of_rule(rule).empty());
  // I²R t / C of 18 AWG (0.823 mm², 21 mΩ/m, 2.84 J/(m·K)): 400 A for half a second, hundreds of kelvin.
  rig.system.loads[0].inrush = units::Current{400};
  EXPECT_FALSE(rig.of_rule(rule).empty());
}

TEST(ShortDutyHeat, WhatRunsForEverIsNoMatterOfShortDuty) {
  auto rig = windlass(6, 250, 1, 1);
  rig.system.loads[0].on_for.reset();
  rig.system.loads[0].rest_for.reset();
  EXPECT_TRUE(rig.of_rule(rule).empty());
  const auto all = check_all(rig.system, rig.solved(), RuleSet::us_small_craft);
  EXPECT_TRUE(
      std::any_of(all.begin(), all.end(), [](const auto& one) { return one.rule == "over-ampacity"; }));
}

/// 150 A on 120 A of cable, but for 20 s of ten minutes.
TEST(CheckAll, AWireOfShortDutyIsJudgedByItsHeatAlone) {
  const auto rig = windlass(6, 150, 20, 580);
  const auto solved = rig.solved();
  const auto over = [](const auto& one) { return one.rule == "over-ampacity"; };
  const auto by_heat = diagnose::check_system(rig.system, solved);
  EXPECT_TRUE(std::none_of(by_heat.begin(), by_heat.end(), over));
  const auto all = check_all(rig.system, solved, RuleSet::us_small_craft);
  EXPECT_TRUE(std::none_of(all.begin(), all.end(), over));
}

/// For ten minutes of eleven it is too much by every rule, and told once.
TEST(CheckAll, AWireOfLongTurnsIsTooHotAndToldOnce) {
  const auto rig = windlass(6, 200, 600, 60);
  int told = 0;
  for (const auto& one : check_all(rig.system, rig.solved(), RuleSet::us_small_craft))
    told += one.in_case == "all-on" && one.subject.starts_with("cable") ? 1 : 0;
  EXPECT_EQ(told, 1);
}

TEST(CheckAll, IsWorstFirstWithoutRepeats) {
  auto rig = test::fused_at(3, 100);
  const auto all = check_all(rig.system, rig.solved(), RuleSet::us_small_craft);
  ASSERT_GE(all.size(), 2U);
  EXPECT_TRUE(std::is_sorted(all.begin(), all.end(),
                             [](const auto& a, const auto& b) { return a.severity < b.severity; }));
  for (std::size_t i = 0; i < all.size(); ++i)
    for (std::size_t j = i + 1; j < all.size(); ++j)
      EXPECT_FALSE(all[i].rule == all[j].rule && all[i].subject == all[j].subject &&
                   all[i].in_case == all[j].in_case);
  test::expect_whole(all);
}

TEST(CheckProtection, ASoundSystemHasNoFindings) {
  EXPECT_TRUE(test::fused_at(0.1).check().empty());
}

TEST(RuleSets, TheWordsReadBack) {
  for (const auto rules : {RuleSet::us_small_craft, RuleSet::iso_10133, RuleSet::road_vehicle})
    EXPECT_EQ(rule_set_named(word(rules)), rules);
  EXPECT_FALSE(rule_set_named("none"));
}

TEST(RuleSets, TheKindOfSystemChooses) {
  EXPECT_EQ(usual_rules(netlist::SystemKind::vessel), RuleSet::us_small_craft);
  EXPECT_EQ(usual_rules(netlist::SystemKind::shore), RuleSet::us_small_craft);
  EXPECT_EQ(usual_rules(netlist::SystemKind::vehicle), RuleSet::road_vehicle);
  EXPECT_EQ(usual_rules(netlist::SystemKind::cart), RuleSet::road_vehicle);
}

}  // namespace
}  // namespace ohmtrail::plan
