#include "ohmtrail/diagnose/charging.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "rank_rig.hpp"

namespace ohmtrail::diagnose {
namespace {

using namespace test;
using ::testing::ElementsAre;
using ::testing::IsEmpty;
using ::testing::SizeIs;
using units::Current;
using units::Resistance;
using units::Voltage;

netlist::Charger& add_charger(netlist::System& system, const std::string& id, const std::string& plus,
                              double set_point, double limit) {
  netlist::Charger charger;
  charger.id = id;
  charger.plus = plus;
  charger.minus = "b-";
  charger.setpoint = Voltage{set_point};
  charger.limit = Current{limit};
  system.chargers.push_back(charger);
  system.cases[0].chargers.push_back(id);
  return system.chargers.back();
}

/// 14.4 V into 12.6 V behind 10 mΩ, through a post whose sound value is 1 mΩ: 60 A where it has 20 mΩ.
netlist::System charged_through(double ohms, double limit = 100) {
  auto system = empty_system();
  add_battery(system, "house", "b+", "b-", 12.6, 0.010);
  add_joint(system, "post", "c+", "b+", 0.001).resistances.as_found = Resistance{ohms};
  add_charger(system, "alternator", "c+", 14.4, limit);
  return system;
}

std::vector<ChargeSplit> charging_of(const netlist::System& system) {
  return charging(system, solve_one(system, system.cases[0]));
}

/// The one row of a system that has one.
ChargeSplit split_of(const netlist::System& system) {
  const auto rows = charging_of(system);
  EXPECT_THAT(rows, SizeIs(1));
  return rows.empty() ? ChargeSplit{} : rows.front();
}

double sum_of(const ChargeSplit& split) {
  double volts = 0;
  for (const auto& loss : split.elements) volts += loss.lost;
  return volts;
}

TEST(ChargeSplit, TellsWhoChargesWhomAndWhatIsLost) {
  const auto split = split_of(charged_through(0.020));
  EXPECT_EQ(split.in_case, "all-on");
  EXPECT_EQ(split.charger, "alternator");
  EXPECT_THAT(split.batteries, ElementsAre("house"));
  EXPECT_NEAR(split.current, 60, 1e-9);
  EXPECT_NEAR(split.set_point, 14.4, 1e-12);
  EXPECT_NEAR(split.charger_volts, 14.4, 1e-9);
  EXPECT_NEAR(split.battery_volts, 13.2, 1e-9);
  EXPECT_NEAR(split.lost, 1.2, 1e-9);
  EXPECT_NEAR(split.fraction, 0.1, 1e-9);
}

TEST(ChargeSplit, IsHeldAgainstThreePercentOfNominal) {
  EXPECT_FALSE(split_of(charged_through(0.020)).within);
  // 0.36 V of 1.8 V: a quarter of what the battery has inside.
  EXPECT_FALSE(split_of(charged_through(0.0026, 500)).within);
  EXPECT_TRUE(split_of(charged_through(0.0024, 500)).within);
}

/// With cables, lugs, a fuse and a post on both sides, the elements' losses add up to the whole.
TEST(ChargeSplit, ElementByElementItAddsUp) {
  auto system = charged_through(0.004);
  add_run(system, "lead", "a+", "f", 0.003, 0.0002);
  add_fuse(system, "fuse", "f", "c+", 0.0007);
  add_run(system, "strap", "b-", "a-", 0.001, 0.0001);
  system.chargers[0].plus = "a+";
  system.chargers[0].minus = "a-";
  const auto split = split_of(system);
  EXPECT_THAT(split.elements, SizeIs(8));
  EXPECT_NEAR(sum_of(split), split.lost, 1e-12);
  EXPECT_NEAR(split.parts.sum(), split.lost, 1e-12);
  EXPECT_NEAR(split.parts.wires, split.current * 0.004, 1e-9);
  EXPECT_NEAR(split.parts.terminations, split.current * 0.0006, 1e-9);
  EXPECT_NEAR(split.parts.switchgear, split.current * 0.0007, 1e-9);
  EXPECT_EQ(split.parts.battery, 0);
}

TEST(ChargeSplit, LargestLossFirst) {
  auto system = charged_through(0.004);
  add_run(system, "lead", "a+", "c+", 0.003, 0.0002);
  system.chargers[0].plus = "a+";
  const auto split = split_of(system);
  EXPECT_EQ(split.elements[0].element, "post");
  EXPECT_EQ(split.elements[1].element, "lead/wire");
  for (std::size_t i = 1; i < split.elements.size(); ++i)
    EXPECT_GE(split.elements[i - 1].lost, split.elements[i].lost);
}

/// 1.8 V over 30 mΩ, then over 11 mΩ: 1.2 V become 0.164 V.
TEST(ChargeSplit, SaysWhatComesBackWithOneThingMadeGood) {
  const auto split = split_of(charged_through(0.020, 500));
  ASSERT_TRUE(split.elements[0].comes_back);
  EXPECT_NEAR(*split.elements[0].comes_back, 1.2 - 1.8 / 11, 1e-9);
}

/// A charger at its limit pushes the same current through: what comes back is I times the excess.
TEST(ChargeSplit, OfAChargerAtItsLimitToo) {
  const auto split = split_of(charged_through(0.020, 30));
  EXPECT_NEAR(split.current, 30, 1e-9);
  EXPECT_NEAR(*split.elements[0].comes_back, 30 * 0.019, 1e-9);
}

TEST(ChargeSplit, WhatIsSoundHasNothingToGiveBack) {
  auto system = charged_through(0.001);
  system.joints[0].resistances.as_found.reset();
  EXPECT_FALSE(split_of(system).elements[0].comes_back);
}

TEST(ChargeSplit, TheLinksOfAStringAreOnTheWay) {
  auto system = charged_through(0.001);
  system.batteries.clear();
  add_battery(system, "upper", "b+", "mid+", 6.3, 0.005);
  add_battery(system, "lower", "mid-", "b-", 6.3, 0.005);
  for (auto& battery : system.batteries) battery.nominal = Voltage{6};
  add_run(system, "link", "mid-", "mid+", 0.002, 0.0005);
  const auto split = split_of(system);
  EXPECT_THAT(split.batteries, ElementsAre("upper", "lower"));
  EXPECT_NEAR(split.lost, split.current * 0.004, 1e-9);
  EXPECT_NEAR(sum_of(split), split.lost, 1e-12);
  EXPECT_EQ(split.elements[0].element, "link/wire");
  EXPECT_GT(split.elements[0].lost, 0);
  EXPECT_NEAR(split.fraction, split.lost / 12, 1e-12);
}

TEST(ChargeSplit, AnIsolatorHasItsPart) {
  auto system = charged_through(0.001);
  system.joints.clear();
  system.isolators = {netlist::Isolator{"diode", "c+", "b+", Voltage{0.7}, {}, {}}};
  const auto split = split_of(system);
  EXPECT_NEAR(split.parts.isolators, 0.7, 1e-9);
  EXPECT_FALSE(split.elements[0].comes_back);
}

TEST(ChargeSplit, EveryChargerThatDeliversHasARow) {
  auto system = charged_through(0.010, 30);
  add_charger(system, "solar", "b+", 14.2, 10);
  const auto rows = charging_of(system);
  ASSERT_THAT(rows, SizeIs(2));
  EXPECT_EQ(rows[0].charger, "alternator") << "the larger loss first";
  EXPECT_NEAR(rows[0].lost, 0.3, 1e-9);
  EXPECT_EQ(rows[1].charger, "solar");
  EXPECT_NEAR(rows[1].lost, 0, 1e-12);
  EXPECT_THAT(rows[1].elements, IsEmpty());
}

/// At 14.3 V the weaker one waits; it has nothing to lose.
TEST(ChargeSplit, OneThatWaitsHasNone) {
  auto system = charged_through(0.0001);
  system.chargers[0].limit = Current{500};
  add_charger(system, "shore", "b+", 13.8, 40);
  EXPECT_EQ(split_of(system).charger, "alternator");
}

TEST(ChargeSplit, ABatteryThatGivesInSpiteOfItIsNotJudgedByTheDrop) {
  auto system = charged_through(0.020, 10);
  add_load(system, "inverter", "b+", "b-", Current{80});
  const auto split = split_of(system);
  EXPECT_NEAR(split.current, -70, 1e-9);
  EXPECT_TRUE(split.within);
}

TEST(ChargeSplit, AChargerOfAnotherVoltageIsNotMeantForIt) {
  auto system = charged_through(0.001);
  system.chargers[0].setpoint = Voltage{28.8};
  EXPECT_THAT(charging_of(system), IsEmpty());
}

TEST(ChargeSplit, WithoutARunningChargerThereIsNone) {
  auto system = charged_through(0.020);
  system.cases[0].chargers.clear();
  EXPECT_THAT(charging_of(system), IsEmpty());
}

TEST(EndOfCharging, ABatteryAloneComesToTheSetPointThroughAnyLead) {
  const auto split = split_of(charged_through(0.020));
  ASSERT_TRUE(split.reaches);
  EXPECT_NEAR(*split.reaches, 14.4, 0.03);
  EXPECT_TRUE(split.full);
}

/// 20 A for the lamp through 20 mΩ are lost for ever.
TEST(EndOfCharging, ALoadOnTheWayKeepsItBelow) {
  auto system = charged_through(0.020);
  add_load(system, "lamp", "b+", "b-", Current{20});
  const auto split = split_of(system);
  EXPECT_NEAR(*split.reaches, 14.4 - 0.4, 0.03);
  EXPECT_FALSE(split.full);
  EXPECT_FALSE(split.charger_is_spent);
}

TEST(EndOfCharging, AChargerTooSmallForTheLoadsIsSpent) {
  auto system = charged_through(0.001, 20);
  add_load(system, "heater", "b+", "b-", Resistance{0.5});
  const auto split = split_of(system);
  EXPECT_FALSE(split.full);
  EXPECT_TRUE(split.charger_is_spent);
  EXPECT_EQ(split.limit, 20);
}

TEST(EndOfCharging, OnlyTheHighestSetPointIsExpected) {
  auto system = charged_through(0.001, 30);
  add_charger(system, "solar", "b+", 13.4, 10);
  system.isolators = {netlist::Isolator{"diode", "c+", "b+", Voltage{0.7}, {}, {}}};
  system.joints.clear();
  const auto rows = charging_of(system);
  ASSERT_THAT(rows, SizeIs(2));
  for (const auto& row : rows) {
    EXPECT_EQ(row.reaches.has_value(), row.charger == "alternator");
    EXPECT_EQ(row.full, row.charger == "solar");
  }
}

/// A larger battery takes a larger tail: 1 % of its Ah.
TEST(EndOfCharging, TheTailGoesWithTheCapacity) {
  auto small = charged_through(0.020), large = charged_through(0.020);
  small.batteries[0].capacity = units::Charge{100 * 3600.0};
  large.batteries[0].capacity = units::Charge{800 * 3600.0};
  EXPECT_NEAR(14.4 - *split_of(small).reaches, 1 * 14.4 / 13.8 * 0.020, 1e-3);
  EXPECT_NEAR(14.4 - *split_of(large).reaches, 8 * 14.4 / 13.8 * 0.020, 4e-3);
}

}  // namespace
}  // namespace ohmtrail::diagnose
