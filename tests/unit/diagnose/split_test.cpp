#include "ohmtrail/diagnose/split.hpp"

#include <gtest/gtest.h>

#include "rank_rig.hpp"

namespace ohmtrail::diagnose {
namespace {

using namespace test;
using units::Current;

constexpr double exact = 1e-11;

TEST(Split, OfOutAndBackIsOhmsLaw) {
  const auto system = out_and_back(10);
  const auto rows = split(solve_one(system, system.cases[0]));
  ASSERT_EQ(rows.size(), 1U);
  EXPECT_EQ(rows[0].in_case, "all-on");
  EXPECT_EQ(rows[0].load, "lamp");
  EXPECT_NEAR(rows[0].parts.battery, 10 * 0.010, exact);
  EXPECT_NEAR(rows[0].parts.wires, 10 * 0.040, exact);
  EXPECT_NEAR(rows[0].parts.terminations, 10 * 0.004, exact);
  EXPECT_EQ(rows[0].parts.joints, 0);
  EXPECT_EQ(rows[0].parts.switchgear, 0);
  EXPECT_EQ(rows[0].parts.isolators, 0);
  EXPECT_NEAR(rows[0].sag, 10 * 0.054, exact);
  EXPECT_NEAR(rows[0].parts.sum(), rows[0].sag, exact);
}

TEST(Split, CountsSwitchesFusesAndShuntsAsSwitchgear) {
  auto system = empty_system();
  add_battery(system, "house", "b+", "b-", 12, 0.010);
  add_switch(system, "main", "b+", "s", 0.001);
  add_fuse(system, "fuse", "s", "f", 0.002);
  add_joint(system, "stud", "f", "l+", 0.003);
  system.shunts.push_back({"shunt", "l-", "b-", Current{100}, units::Voltage{0.05}, {}});
  add_load(system, "lamp", "l+", "l-", Current{10});
  const auto rows = split(solve_one(system, system.cases[0]));
  ASSERT_EQ(rows.size(), 1U);
  EXPECT_NEAR(rows[0].parts.switchgear, 10 * (0.001 + 0.002 + 0.0005), exact);
  EXPECT_NEAR(rows[0].parts.joints, 10 * 0.003, exact);
  EXPECT_EQ(rows[0].parts.wires, 0);
  EXPECT_NEAR(rows[0].parts.sum(), rows[0].sag, exact);
}

TEST(Split, CountsAnIsolatorByItself) {
  auto system = empty_system();
  add_battery(system, "house", "b+", "b-", 12, 0.010);
  netlist::Isolator diode;
  diode.id = "diode";
  diode.from = "b+";
  diode.to = "l+";
  diode.rating = Current{100};
  system.isolators.push_back(diode);
  add_run(system, "back", "l-", "b-", 0.020, 0.001);
  add_load(system, "lamp", "l+", "l-", Current{100});
  const auto rows = split(solve_one(system, system.cases[0]));
  ASSERT_EQ(rows.size(), 1U);
  EXPECT_NEAR(rows[0].parts.isolators, 0.7, 0.05);  // 0.7 V at its rating
  EXPECT_NEAR(rows[0].parts.sum(), rows[0].sag, exact);
}

TEST(Split, SkipsLoadsThatAreOff) {
  auto system = out_and_back(10);
  add_load(system, "spare", "l+", "l-", Current{3});
  add_case(system, "lamp alone", {"lamp"});
  EXPECT_EQ(split(solve_one(system, system.cases[0])).size(), 2U);
  const auto rows = split(solve_one(system, system.cases[1]));
  ASSERT_EQ(rows.size(), 1U);
  EXPECT_EQ(rows[0].load, "lamp");
}

TEST(Split, ASoundElementAgainstTheArrowLosesVoltsAllTheSame) {
  auto system = empty_system();
  add_battery(system, "house", "b+", "b-", 12, 0.010);
  add_run(system, "out", "l+", "b+", 0.020, 0.001);  // drawn from the load to the battery
  add_run(system, "back", "b-", "l-", 0.020, 0.001);
  add_load(system, "lamp", "l+", "l-", Current{10});
  const auto rows = split(solve_one(system, system.cases[0]));
  ASSERT_EQ(rows.size(), 1U);
  EXPECT_NEAR(rows[0].parts.wires, 0.4, exact);
  EXPECT_NEAR(rows[0].parts.terminations, 0.04, exact);
}

/// A charger at its limit gives all it can: what it lacks of its set point stands in the supply's part, and
/// the row says whose that is.
TEST(Split, SaysThatAChargerFeeds) {
  auto system = out_and_back(10);
  EXPECT_EQ(split(solve_one(system, system.cases[0]))[0].supply, network::Role::battery);
  add_charger(system, "mains charger", "b+", "b-", 14.4, 50);
  const auto solved = solve_one(system, system.cases[0]);
  const auto rows = split(solved);
  ASSERT_FALSE(rows.empty());
  EXPECT_EQ(rows[0].supply, network::Role::charger);
  ASSERT_EQ(solved.supplies.size(), 2U);
  const double terminal = std::max(solved.supplies[0].terminal, solved.supplies[1].terminal);
  EXPECT_NEAR(rows[0].parts.battery, 14.4 - terminal, exact);
  EXPECT_NEAR(rows[0].parts.sum(), rows[0].sag, exact);
}

/// Two 6 V batteries and their link: the string is the supply, its link counts as wire and terminations.
TEST(Split, OfAStringCountsItsLinksAsCables) {
  auto system = empty_system();
  add_battery(system, "top", "b+", "mid+", 6.3, 0.004);
  add_battery(system, "bottom", "mid-", "b-", 6.2, 0.006);
  add_run(system, "link", "mid+", "mid-", 0.0005, 0.0001);
  add_run(system, "out", "b+", "l+", 0.020, 0.001);
  add_run(system, "back", "l-", "b-", 0.020, 0.001);
  add_load(system, "lamp", "l+", "l-", Current{10});
  const auto rows = split(solve_one(system, system.cases[0]));
  ASSERT_EQ(rows.size(), 1U);
  EXPECT_NEAR(rows[0].parts.battery, 10 * 0.010, exact);
  EXPECT_NEAR(rows[0].parts.wires, 10 * (0.040 + 0.0005), exact);
  EXPECT_NEAR(rows[0].parts.terminations, 10 * (0.004 + 0.0002), exact);
  EXPECT_NEAR(rows[0].sag, 12.5 - (12.5 - 10 * (0.010 + 0.0405 + 0.0042)), exact);
  EXPECT_NEAR(rows[0].parts.sum(), rows[0].sag, exact);
}

/// Of two parallel ways the one that carries more is followed; its parts alone already make up the sag.
TEST(Split, FollowsTheWayThatCarriesMore) {
  auto system = out_and_back(30);
  add_joint(system, "bypass", "b+", "l+", 0.011);  // half of the 22 mΩ beside it: carries two thirds
  const auto rows = split(solve_one(system, system.cases[0]));
  ASSERT_EQ(rows.size(), 1U);
  EXPECT_NEAR(rows[0].parts.joints, 20 * 0.011, 1e-9);
  EXPECT_NEAR(rows[0].parts.wires, 30 * 0.020, 1e-9);
  EXPECT_NEAR(rows[0].parts.sum(), rows[0].sag, exact);
}

}  // namespace
}  // namespace ohmtrail::diagnose
