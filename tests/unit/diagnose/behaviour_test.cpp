#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "ohmtrail/diagnose/check_system.hpp"
#include "rank_rig.hpp"

// Cut-outs, hunting and charging as `check` tells them.
namespace ohmtrail::diagnose {
namespace {

using namespace test;
using ::testing::HasSubstr;
using ::testing::Not;
using units::Current;
using units::Voltage;

std::vector<Finding> of_rule(const netlist::System& system, const std::string& rule) {
  std::vector<Finding> some;
  for (const auto& one : check_system(system, solve_all(system)))
    if (one.rule == rule) some.push_back(one);
  return some;
}

/// 12 V behind 54 mΩ in all: 60 A leave 8.76 V.
netlist::System fridge_that_stops_below(double volts) {
  auto system = out_and_back(60);
  system.loads[0].id = "fridge";
  system.loads[0].stops_below = Voltage{volts};
  return system;
}

TEST(Hunting, ALoadThatRecoversAboveItsCutOutHunts) {
  const auto found = of_rule(fridge_that_stops_below(10), "hunting");
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].subject, "fridge");
  EXPECT_EQ(found[0].in_case, "all-on");
  EXPECT_THAT(found[0].text, HasSubstr("stopped it has 12 V"));
  EXPECT_THAT(found[0].text, HasSubstr("8.76 V"));
  EXPECT_THAT(found[0].text, Not(HasSubstr("swings")));
}

TEST(Hunting, ARestartAboveWhatTheBatteryGivesStaysOff) {
  auto system = fridge_that_stops_below(10);
  system.loads[0].restarts_above = Voltage{12.5};
  EXPECT_TRUE(of_rule(system, "hunting").empty());
  EXPECT_EQ(of_rule(system, "dropped-out").size(), 1U);
}

TEST(Hunting, WhatRunsWithEnoughVoltsDoesNot) {
  EXPECT_TRUE(of_rule(fridge_that_stops_below(8.7), "hunting").empty());
}

TEST(Hunting, TheLightsThatPulseWithItAreNamed) {
  auto system = fridge_that_stops_below(10);
  add_load(system, "lamp", "l+", "l-", Current{2});
  const auto found = of_rule(system, "hunting");
  ASSERT_EQ(found.size(), 1U);
  EXPECT_THAT(found[0].text, HasSubstr("lamp swings by 3.24 V"));
  EXPECT_THAT(found[0].text, HasSubstr("2 %"));
}

TEST(Hunting, ASwingWithinTheFilesLimitIsNotNamed) {
  auto system = fridge_that_stops_below(10);
  add_load(system, "lamp", "l+", "l-", Current{2});
  system.info.limits.swing = units::Fraction{0.5};
  EXPECT_THAT(of_rule(system, "hunting")[0].text, Not(HasSubstr("swings")));
}

TEST(HalfCharge, ACutOutThatWouldTripIsToldBeforeItDoes) {
  auto system = fridge_that_stops_below(9.2);
  system.batteries[0].emf.reset();  // full: 12.65 V; half: 12.24 V and a fifth more resistance
  const auto found = of_rule(system, "cut-out-at-half-charge");
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].severity, Severity::improvement);
  EXPECT_THAT(found[0].text, HasSubstr("half charge"));
  EXPECT_TRUE(of_rule(system, "hunting").empty());
}

TEST(HalfCharge, ALowCutOutIsLeftInPeace) {
  auto system = fridge_that_stops_below(8);
  system.batteries[0].emf.reset();
  EXPECT_TRUE(of_rule(system, "cut-out-at-half-charge").empty());
}

TEST(HalfCharge, ABatteryAlreadyBelowHalfIsNotRaised) {
  auto system = fridge_that_stops_below(8.5);
  system.batteries[0].emf.reset();
  system.batteries[0].state_of_charge = units::Fraction{0.4};
  EXPECT_TRUE(of_rule(system, "cut-out-at-half-charge").empty());
}

/// A charger whose lead has this resistance, and a lamp at the battery.
netlist::System charged_through(double ohms, double lamp_amperes) {
  auto system = empty_system();
  add_battery(system, "house", "b+", "b-", 12.6, 0.010);
  add_joint(system, "lead", "c+", "b+", ohms);
  netlist::Charger charger;
  charger.id = "alternator";
  charger.plus = "c+";
  charger.minus = "b-";
  charger.setpoint = Voltage{14.4};
  charger.limit = Current{100};
  system.chargers = {charger};
  add_load(system, "lamp", "b+", "b-", Current{lamp_amperes});
  system.cases[0].chargers = {"alternator"};
  return system;
}

TEST(Charging, TooMuchLostOnTheWayIsAFinding) {
  const auto found = of_rule(charged_through(0.020, 0.1), "charging-drop");
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].subject, "house");
  EXPECT_THAT(found[0].text, HasSubstr("1.2 V"));  // 60 A through 20 mΩ
  EXPECT_THAT(found[0].text, HasSubstr("alternator"));
  EXPECT_TRUE(of_rule(charged_through(0.002, 0.1), "charging-drop").empty());
}

TEST(Charging, ABatteryThatFillsAtLastIsNotUndercharged) {
  EXPECT_TRUE(of_rule(charged_through(0.020, 0.1), "undercharge").empty());
}

TEST(Charging, LoadsOnTheSameLeadKeepABatteryFromItsSetPoint) {
  const auto found = of_rule(charged_through(0.020, 20), "undercharge");
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].subject, "house");
  EXPECT_THAT(found[0].text, HasSubstr("14 V"));
  EXPECT_THAT(found[0].text, HasSubstr("lost in"));
}

TEST(Charging, AnIsolatorKeepsABatteryFromItsSetPoint) {
  auto system = charged_through(0.002, 0.1);
  system.joints.clear();
  system.isolators = {netlist::Isolator{"diode", "c+", "b+", Voltage{0.7}, {}, {}}};
  const auto found = of_rule(system, "undercharge");
  ASSERT_EQ(found.size(), 1U);
  EXPECT_THAT(found[0].text, HasSubstr("13.7 V"));
}

TEST(Charging, AChargerThatGivesAllItCanIsSaid) {
  auto system = charged_through(0.002, 30);
  system.chargers[0].limit = Current{20};
  system.loads[0].takes = units::Resistance{0.5};
  const auto found = of_rule(system, "undercharge");
  ASSERT_EQ(found.size(), 1U);
  EXPECT_THAT(found[0].text, HasSubstr("gives all it can, 20 A"));
}

TEST(Charging, WithoutARunningChargerThereIsNothingToSay) {
  auto system = charged_through(0.020, 20);
  system.cases[0].chargers.clear();
  EXPECT_TRUE(of_rule(system, "undercharge").empty());
  EXPECT_TRUE(of_rule(system, "charging-drop").empty());
}

TEST(Charging, AStringIsHeldAgainstItsWholeVoltage) {
  auto system = charged_through(0.002, 0.1);
  system.batteries[0].nominal = Voltage{6};
  system.batteries[0].emf = Voltage{6.3};
  system.batteries[0].minus = "mid";
  auto lower = system.batteries[0];
  lower.id = "lower";
  lower.plus = "mid2";
  lower.minus = "b-";
  system.batteries.push_back(lower);
  add_joint(system, "link", "mid2", "mid", 0.0005);
  EXPECT_TRUE(of_rule(system, "undercharge").empty());
  system.isolators = {netlist::Isolator{"diode", "c+", "b+", Voltage{0.7}, {}, {}}};
  system.joints.erase(system.joints.begin());
  const auto found = of_rule(system, "undercharge");
  ASSERT_EQ(found.size(), 1U);
  EXPECT_THAT(found[0].text, HasSubstr("13.7 V"));
}

}  // namespace
}  // namespace ohmtrail::diagnose
