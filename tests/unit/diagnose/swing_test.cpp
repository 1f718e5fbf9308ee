#include "ohmtrail/diagnose/swing.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "rank_rig.hpp"

namespace ohmtrail::diagnose {
namespace {

using namespace test;
using units::Current;
using units::Fraction;

constexpr double exact = 1e-11;

/// Lights and a fridge share battery and feed; the fridge has a branch of its own.
netlist::System lights_and_fridge() {
  auto system = empty_system();
  add_battery(system, "house", "b+", "b-", 12.6, 0.020);
  add_run(system, "feed", "b+", "panel+", 0.030, 0.001);
  add_run(system, "lights-out", "panel+", "li+", 0.050, 0.001);
  add_run(system, "fridge-out", "panel+", "fr+", 0.040, 0.001);
  add_run(system, "back", "panel-", "b-", 0.010, 0.001);
  add_load(system, "lights", "li+", "panel-", Current{5});
  add_load(system, "fridge", "fr+", "panel-", Current{10});
  system.cases.clear();
  add_case(system, "lights", {"lights"});
  add_case(system, "both", {"lights", "fridge"});
  return system;
}

std::vector<Swing> swings(const netlist::System& system) {
  return swing(system, solve_one(system, system.cases[0]), solve_one(system, system.cases[1]));
}

TEST(Swing, SplitsTheDipOverWhatBothLoadsShare) {
  const auto rows = swings(lights_and_fridge());
  ASSERT_EQ(rows.size(), 1U);  // the fridge runs in one case only
  const auto& lights = rows[0];
  EXPECT_EQ(lights.load, "lights");
  EXPECT_EQ(lights.from_case, "lights");
  EXPECT_EQ(lights.to_case, "both");
  EXPECT_NEAR(lights.change, -10 * (0.020 + 0.032 + 0.012), exact);
  EXPECT_NEAR(lights.parts.battery, -0.20, exact);
  EXPECT_NEAR(lights.parts.wires, -0.40, exact);
  EXPECT_NEAR(lights.parts.terminations, -0.04, exact);
  EXPECT_EQ(lights.open_circuit, 0);
  EXPECT_NEAR(lights.after - lights.before, lights.change, exact);
}

TEST(Swing, NamesTheWorstElementFirst) {
  const auto rows = swings(lights_and_fridge());
  ASSERT_FALSE(rows.empty());
  EXPECT_EQ(rows[0].elements[0].element, "feed/wire");
  EXPECT_NEAR(rows[0].elements[0].change, -0.30, exact);
  EXPECT_EQ(rows[0].elements[1].element, "house");
  double sum = 0;
  for (const auto& one : rows[0].elements) sum += one.change;
  EXPECT_NEAR(sum, rows[0].change, exact);
  EXPECT_NEAR(rows[0].parts.sum(), rows[0].change, exact);
}

TEST(Swing, IsHeldAgainstTwoPercentUnlessTheFileSaysOtherwise) {
  auto system = lights_and_fridge();
  auto rows = swings(system);
  EXPECT_DOUBLE_EQ(rows[0].limit_fraction, 0.02);
  EXPECT_FALSE(rows[0].limit_given);
  EXPECT_NEAR(rows[0].fraction, 0.64 / 12, exact);
  EXPECT_FALSE(rows[0].within);
  system.info.limits.swing = Fraction{0.06};
  rows = swings(system);
  EXPECT_TRUE(rows[0].limit_given);
  EXPECT_TRUE(rows[0].within);
}

TEST(Swing, IsTakenAgainstTheLoadsOwnNominal) {
  auto system = lights_and_fridge();
  system.loads[0].nominal = units::Voltage{24};
  EXPECT_NEAR(swings(system)[0].fraction, 0.64 / 24, exact);
}

TEST(Swing, BackwardsIsTheOppositeSign) {
  const auto system = lights_and_fridge();
  const auto first = solve_one(system, system.cases[0]), second = solve_one(system, system.cases[1]);
  EXPECT_NEAR(swing(system, first, second)[0].change, -swing(system, second, first)[0].change, exact);
}

TEST(Swing, LargestFirst) {
  auto system = lights_and_fridge();
  add_load(system, "pump", "b+", "b-", Current{1});  // at the battery: feels its resistance alone
  system.cases.clear();
  add_case(system, "before", {"pump", "lights"});
  add_case(system, "after", {"pump", "lights", "fridge"});
  const auto rows = swings(system);
  ASSERT_EQ(rows.size(), 2U);
  EXPECT_EQ(rows[0].load, "lights");
  EXPECT_EQ(rows[1].load, "pump");
  EXPECT_NEAR(rows[1].change, -0.20, exact);
}

/// The way changes between the cases: the switch by-passes the feed. Still everything adds up.
TEST(Swing, AddsUpWhenTheWayChanges) {
  auto system = lights_and_fridge();
  add_switch(system, "bypass", "b+", "panel+", 0.002);
  system.cases[0].open = {"bypass"};
  system.cases[1].open = {"feed"};
  const auto rows = swings(system);
  ASSERT_EQ(rows.size(), 1U);
  EXPECT_NEAR(rows[0].parts.sum() + rows[0].open_circuit, rows[0].change, exact);
  EXPECT_GT(rows[0].parts.wires, 0 - 0.2);
  EXPECT_NEAR(rows[0].parts.switchgear, -15 * 0.002, exact);
}

/// Another supply in the second case: what its open-circuit voltage differs by is said apart.
TEST(Swing, TellsAnotherSupplyApart) {
  auto system = lights_and_fridge();
  add_charger(system, "charger", "b+", "b-", 14.4, 200);
  system.cases[0].chargers.clear();
  system.cases[1].open = {"house"};
  const auto rows = swings(system);
  ASSERT_EQ(rows.size(), 1U);
  EXPECT_NEAR(rows[0].open_circuit, 14.4 - 12.6, 1e-9);
  EXPECT_NEAR(rows[0].parts.sum() + rows[0].open_circuit, rows[0].change, 1e-9);
}

}  // namespace
}  // namespace ohmtrail::diagnose
