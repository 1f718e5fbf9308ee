// Connections under loads of short duty.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "ohmtrail/diagnose/check_system.hpp"
#include "ohmtrail/diagnose/joint_temperature.hpp"
#include "ohmtrail/trade/fin_turns.hpp"
#include "rank_rig.hpp"

namespace ohmtrail::diagnose {
namespace {

using namespace test;
using ::testing::HasSubstr;
using ::testing::Not;
using units::Current;
using units::Power;
using units::Resistance;
using units::Temperature;
using units::Time;

/// A windlass of 100 A through one bad lug of 3 mΩ between two 35 mm² cables: 30 W while it runs.
netlist::System windlass(std::optional<double> on, std::optional<double> rest) {
  auto system = empty_system(24);
  add_battery(system, "house", "b+", "b-", 25, 0.001);
  add_run(system, "first", "b+", "stud", 1e-9, 1e-12);
  add_run(system, "second", "stud", "l+", 1e-9, 1e-12);
  system.runs[0].end_to.resistances.as_found = Resistance{0.003};
  auto& load = add_load(system, "windlass", "l+", "b-", Current{100});
  if (on) load.on_for = Time{*on};
  if (rest) load.rest_for = Time{*rest};
  return system;
}

JointTemperature at_lug(const netlist::System& system) {
  const auto solved = solve_one(system, system.cases[0]);
  const auto joint = joint_temperature(system, solved, *solved.network.element("first/to"));
  EXPECT_TRUE(joint.has_value());
  return joint.value_or(JointTemperature{});
}

TEST(JointInTurns, IsTheFinWarmedForItsTurn) {
  const auto system = windlass(30, 600);
  const std::vector<trade::Fin> fins(2, trade::fin_of(system.runs[0].gauge, system.runs[0].conductor));
  const auto by_hand =
      trade::joint_rise_in_turns({Power{0}, Power{30}, Time{30}, Time{600}}, fins, Temperature{25});
  EXPECT_NEAR(at_lug(system).rise, by_hand.si(), 0.01 * by_hand.si());
}

TEST(JointInTurns, IsCoolerThanOneThatStaysOn) {
  const double lasting = at_lug(windlass({}, {})).rise, turn = at_lug(windlass(30, 600)).rise;
  EXPECT_LT(turn, 0.6 * lasting);
  EXPECT_GT(at_lug(windlass(30, 60)).rise, turn);
  EXPECT_LT(at_lug(windlass(30, {})).rise, turn);
}

TEST(JointInTurns, SaysHowLongTheTurnIs) {
  const auto joint = at_lug(windlass(60, 600));
  ASSERT_TRUE(joint.turn);
  EXPECT_EQ(*joint.turn, 60);
  EXPECT_THAT(heat_warning(joint).value(), HasSubstr("after its turn of 1 min"));
  EXPECT_FALSE(at_lug(windlass({}, {})).turn);
  EXPECT_THAT(heat_warning(at_lug(windlass({}, {}))).value(), HasSubstr("if it stays on"));
}

TEST(JointInTurns, WhatLastsBesideItCountsInFull) {
  auto system = windlass(0.01, 1e5);
  add_load(system, "heater", "l+", "b-", Current{80});
  auto only = windlass(0.01, 1e5);
  only.loads[0] = system.loads[1];
  EXPECT_GT(at_lug(system).rise, at_lug(only).rise);
  EXPECT_NEAR(at_lug(system).rise, at_lug(only).rise, 0.1 * at_lug(only).rise);
}

TEST(JointInTurns, AnInrushIsATurnOfHalfASecond) {
  auto system = windlass({}, {});
  system.loads[0].takes = Current{10};
  system.cases[0].set["windlass"] = Current{100};
  system.cases[0].starting = {"windlass"};
  const auto joint = at_lug(system);
  ASSERT_TRUE(joint.turn);
  EXPECT_EQ(*joint.turn, 0.5);
  EXPECT_LT(joint.rise, 20);
}

TEST(CharredJoint, HasNoSillyFigureButIsStillComputed) {
  auto system = windlass({}, {});
  system.runs[0].end_to.resistances.as_found = Resistance{0.02};
  const auto joint = at_lug(system);
  EXPECT_GT(joint.celsius, 500);
  const auto words = heat_warning(joint).value();
  EXPECT_THAT(words,
              HasSubstr("over 250 °C by the numbers if it stays on: it would char before it got there"));
  EXPECT_THAT(words, HasSubstr("105 °C"));
  EXPECT_THAT(words, Not(HasSubstr(std::to_string(static_cast<int>(joint.celsius)))));
}

std::vector<Finding> of_rule(const netlist::System& system, const std::string& rule) {
  std::vector<Finding> some;
  for (const auto& one : check_system(system, solve_all(system)))
    if (one.rule == rule) some.push_back(one);
  return some;
}

/// 35 mm² with insulation for 105 °C may carry some 200 A for long; 400 A is twice that.
netlist::System thruster(std::optional<double> on, std::optional<double> rest) {
  auto system = windlass(on, rest);
  system.runs[0].end_to.resistances.as_found.reset();
  system.loads[0].takes = Current{400};
  return system;
}

TEST(Ampacity, ShortTurnsAreJudgedByTheHeatNotTheAmperes) {
  EXPECT_EQ(of_rule(thruster({}, {}), "over-ampacity").size(), 2U);
  EXPECT_TRUE(of_rule(thruster(10, 600), "over-ampacity").empty());
  EXPECT_TRUE(of_rule(thruster(10, 600), "insulation-temperature").empty());
}

TEST(Ampacity, LongTurnsAreTooMuchAndSaidSo) {
  const auto found = of_rule(thruster(600, 60), "over-ampacity");
  ASSERT_EQ(found.size(), 2U);
  EXPECT_THAT(found[0].text, HasSubstr("carries 400 A in turns that heat it as"));
}

TEST(Ampacity, TheTurnsAgreeWithTheTemperature) {
  for (const double on : {5.0, 30.0, 60.0, 120.0, 300.0, 900.0})
    EXPECT_EQ(of_rule(thruster(on, 300), "over-ampacity").size(),
              of_rule(thruster(on, 300), "insulation-temperature").size())
        << on;
}

}  // namespace
}  // namespace ohmtrail::diagnose
