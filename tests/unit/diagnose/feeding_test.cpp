#include "ohmtrail/diagnose/feeding.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "rank_rig.hpp"

namespace ohmtrail::diagnose {
namespace {

using namespace test;
using ::testing::IsEmpty;
using ::testing::SizeIs;
using units::Current;
using units::Voltage;

std::vector<Fed> feeding_of(const netlist::System& system) {
  return feeding(solve_one(system, system.cases[0]));
}

const Fed& fed(const std::vector<Fed>& rows, const std::string& taker) {
  const auto found =
      std::find_if(rows.begin(), rows.end(), [&](const Fed& one) { return one.taker == taker; });
  if (found == rows.end()) throw std::runtime_error("nothing feeds " + taker);
  return *found;
}

double given(const Fed& row, const std::string& source) {
  for (const auto& one : row.from)
    if (one.source == source) return one.current;
  return 0;
}

/// What the sources give and the takers take, in all.
void expect_balanced(const std::vector<Fed>& rows) {
  for (const auto& row : rows) {
    double amperes = 0, share = 0;
    for (const auto& one : row.from) amperes += one.current, share += one.share;
    EXPECT_NEAR(amperes, row.current, 1e-9 * row.current) << row.taker;
    EXPECT_NEAR(share, 1, 1e-9) << row.taker;
  }
}

TEST(Feeding, OneSourceFeedsAll) {
  const auto rows = feeding_of(out_and_back(10));
  ASSERT_THAT(rows, SizeIs(1));
  EXPECT_EQ(rows[0].taker, "lamp");
  EXPECT_EQ(rows[0].role, network::Role::load);
  EXPECT_NEAR(rows[0].current, 10, 1e-9);
  ASSERT_THAT(rows[0].from, SizeIs(1));
  EXPECT_EQ(rows[0].from[0].source, "house");
  EXPECT_NEAR(rows[0].from[0].share, 1, 1e-12);
}

/// 12 V behind 10 and 30 mΩ side by side: 30 A and 10 A of 40 A.
TEST(Feeding, TwoBatteriesShareByTheirResistance) {
  auto system = empty_system();
  add_battery(system, "good", "+", "-", 12, 0.010);
  add_battery(system, "weak", "+", "-", 12, 0.030);
  add_load(system, "lamp", "+", "-", Current{40});
  const auto rows = feeding_of(system);
  ASSERT_THAT(rows, SizeIs(1));
  ASSERT_THAT(rows[0].from, SizeIs(2));
  EXPECT_EQ(rows[0].from[0].source, "good") << "largest first";
  EXPECT_NEAR(rows[0].from[0].current, 30, 1e-9);
  EXPECT_NEAR(rows[0].from[1].share, 0.25, 1e-9);
}

/// Along a bar: a source at each end, a load beside each. Each feeds its own; what the smaller load leaves
/// over goes on, mixed with nothing.
TEST(Feeding, WhatLeavesAPointIsMixedAsWhatArrives) {
  auto system = empty_system();
  add_battery(system, "left", "l", "-", 12.2, 0.010);
  add_battery(system, "right", "r", "-", 12, 0.010);
  add_joint(system, "bar", "l", "r", 0.010);
  add_load(system, "near", "l", "-", Current{10});
  add_load(system, "far", "r", "-", Current{40});
  const auto rows = feeding_of(system);
  expect_balanced(rows);
  EXPECT_NEAR(given(fed(rows, "near"), "left"), 10, 1e-9) << "nothing comes from the right";
  const auto& far = fed(rows, "far");
  EXPECT_GT(given(far, "left"), 1);
  EXPECT_GT(given(far, "right"), 1);
}

TEST(Feeding, ABatteryOnChargeIsFedToo) {
  auto system = empty_system();
  add_battery(system, "house", "b+", "b-", 12.6, 0.010);
  add_charger(system, "alternator", "b+", "b-", 14.4, 50);
  add_load(system, "lamp", "b+", "b-", Current{10});
  const auto rows = feeding_of(system);
  expect_balanced(rows);
  EXPECT_EQ(fed(rows, "house").role, network::Role::battery);
  EXPECT_NEAR(given(fed(rows, "house"), "alternator"), 40, 1e-9);
  EXPECT_NEAR(given(fed(rows, "lamp"), "alternator"), 10, 1e-9);
}

TEST(Feeding, AChargerTooSmallIsHelpedByTheBattery) {
  auto system = empty_system();
  add_battery(system, "house", "b+", "b-", 12.6, 0.010);
  add_charger(system, "solar", "b+", "b-", 14.4, 5);
  add_load(system, "fridge", "b+", "b-", Current{20});
  const auto rows = feeding_of(system);
  const auto& row = fed(rows, "fridge");
  EXPECT_NEAR(given(row, "solar"), 5, 1e-9);
  EXPECT_NEAR(given(row, "house"), 15, 1e-9);
}

TEST(Feeding, AStringIsOneSourceUnderTheNameOfItsFirst) {
  auto system = empty_system();
  add_battery(system, "upper", "b+", "m+", 6.3, 0.005);
  add_battery(system, "lower", "m-", "b-", 6.3, 0.005);
  add_joint(system, "link", "m-", "m+", 0.001);
  add_load(system, "lamp", "b+", "b-", Current{10});
  const auto rows = feeding_of(system);
  ASSERT_THAT(rows, SizeIs(1));
  ASSERT_THAT(rows[0].from, SizeIs(1));
  EXPECT_EQ(rows[0].from[0].source, "upper");
}

TEST(Feeding, AStringOnChargeIsFedOnce) {
  auto system = empty_system();
  add_battery(system, "upper", "b+", "m+", 6.3, 0.005);
  add_battery(system, "lower", "m-", "b-", 6.3, 0.005);
  add_joint(system, "link", "m-", "m+", 0.001);
  add_charger(system, "shore", "b+", "b-", 14.4, 30);
  const auto rows = feeding_of(system);
  ASSERT_THAT(rows, SizeIs(1));
  EXPECT_EQ(rows[0].taker, "upper");
  EXPECT_NEAR(rows[0].current, 30, 1e-9);
}

TEST(Feeding, AConverterIsATakerOnOneSideAndASourceOnTheOther) {
  auto system = empty_system();
  add_battery(system, "house", "b+", "b-", 24, 0.010);
  system.converters.push_back({"lights",
                               "b+",
                               "b-",
                               "o+",
                               "b-",
                               Voltage{12},
                               Current{20},
                               units::Fraction{0.9},
                               units::Power{0},
                               {},
                               {}});
  add_load(system, "lamp", "o+", "b-", Current{9});
  const auto rows = feeding_of(system);
  expect_balanced(rows);
  EXPECT_NEAR(given(fed(rows, "lamp"), "lights/out"), 9, 1e-9);
  EXPECT_NEAR(given(fed(rows, "lights/in"), "house"), fed(rows, "lights/in").current, 1e-9);
}

TEST(Feeding, WhatIsOffOrDeadTakesNothing) {
  auto system = out_and_back(10);
  add_case(system, "off", {});
  EXPECT_THAT(feeding(solve_one(system, system.cases[1])), IsEmpty());
}

/// 12.7 and 12.4 V behind 10 mΩ each: 15 A from one into the other.
TEST(Circulating, BetweenBatteriesThatStandApart) {
  auto system = empty_system();
  add_battery(system, "high", "+", "-", 12.7, 0.010);
  add_battery(system, "low", "+", "-", 12.4, 0.010);
  const auto solved = solve_one(system, system.cases[0]);
  const auto found = circulating(solved, feeding(solved));
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_EQ(found[0].from, "high");
  EXPECT_EQ(found[0].to, "low");
  EXPECT_NEAR(found[0].current, 15, 1e-9);
}

/// 5 mΩ of cable between them: 12 A.
TEST(Circulating, TheCablesBetweenThemCount) {
  auto system = empty_system();
  add_battery(system, "high", "h+", "-", 12.7, 0.010);
  add_battery(system, "low", "l+", "-", 12.4, 0.010);
  add_joint(system, "cable", "h+", "l+", 0.005);
  const auto solved = solve_one(system, system.cases[0]);
  EXPECT_NEAR(circulating(solved, feeding(solved)).at(0).current, 12, 1e-9);
}

TEST(Circulating, ALoadThatBothFeedStopsIt) {
  auto system = empty_system();
  add_battery(system, "high", "+", "-", 12.7, 0.010);
  add_battery(system, "low", "+", "-", 12.4, 0.010);
  add_load(system, "lamp", "+", "-", Current{100});
  const auto solved = solve_one(system, system.cases[0]);
  EXPECT_THAT(circulating(solved, feeding(solved)), IsEmpty());
}

TEST(Circulating, ChargingIsNone) {
  auto system = empty_system();
  add_battery(system, "house", "b+", "b-", 12.6, 0.010);
  add_charger(system, "shore", "b+", "b-", 14.4, 30);
  const auto solved = solve_one(system, system.cases[0]);
  EXPECT_THAT(circulating(solved, feeding(solved)), IsEmpty());
}

}  // namespace
}  // namespace ohmtrail::diagnose
