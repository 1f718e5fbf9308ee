#include "diagnose/widest_path.hpp"

#include <gtest/gtest.h>

#include "diagnose/route.hpp"
#include "rank_rig.hpp"

namespace ohmtrail::diagnose {
namespace {

using namespace test;
using units::Current;

std::vector<std::string> names(const solve::CaseSolution& solved, const std::string& from,
                               const std::string& to) {
  std::vector<std::string> ids;
  const auto path = widest_path(solved, *solved.network.point(from), *solved.network.point(to));
  if (!path) return {"none"};
  for (const auto& hop : *path)
    ids.push_back(solved.network.elements[static_cast<std::size_t>(hop.element)].id);
  return ids;
}

/// a—b by two joints in a row of 1 mΩ each, and by one of 3 mΩ: the two carry 60 %.
netlist::System two_ways(double lone_ohms) {
  auto system = empty_system();
  add_battery(system, "house", "a", "m", 12, 0.01);
  add_joint(system, "lone", "a", "b", lone_ohms);
  add_joint(system, "first", "a", "x", 0.001);
  add_joint(system, "second", "x", "b", 0.001);
  add_load(system, "lamp", "b", "m", Current{10});
  return system;
}

TEST(WidestPath, TakesTheWayOfMostCurrent) {
  auto system = two_ways(0.003);
  EXPECT_EQ(names(solve_one(system, system.cases[0]), "a", "b"),
            (std::vector<std::string>{"first", "second"}));
  system = two_ways(0.001);
  EXPECT_EQ(names(solve_one(system, system.cases[0]), "a", "b"), (std::vector<std::string>{"lone"}));
}

TEST(WidestPath, OfEqualWaysTheShorterIsTaken) {
  const auto system = two_ways(0.002);
  EXPECT_EQ(names(solve_one(system, system.cases[0]), "a", "b"), (std::vector<std::string>{"lone"}));
}

TEST(WidestPath, OfEquallyLongWaysTheFirstInTheFile) {
  auto system = two_ways(0.002);
  add_joint(system, "twin", "a", "b", 0.002);
  EXPECT_EQ(names(solve_one(system, system.cases[0]), "a", "b"), (std::vector<std::string>{"lone"}));
}

TEST(WidestPath, GoesAgainstTheFlowWhereNoFlowJoins) {
  const auto system = two_ways(0.001);
  EXPECT_EQ(names(solve_one(system, system.cases[0]), "b", "a"), (std::vector<std::string>{"lone"}));
}

TEST(WidestPath, CrossesNeitherLoadsNorSources) {
  const auto system = two_ways(0.001);
  EXPECT_EQ(names(solve_one(system, system.cases[0]), "a", "m"), (std::vector<std::string>{"none"}));
}

TEST(WidestPath, FromAPointToItselfIsEmpty) {
  const auto system = two_ways(0.001);
  EXPECT_TRUE(names(solve_one(system, system.cases[0]), "a", "a").empty());
}

TEST(WidestPath, AnOpenSwitchIsNoWay) {
  auto system = two_ways(0.001);
  system.cases[0].open = {"lone"};
  EXPECT_EQ(names(solve_one(system, system.cases[0]), "a", "b"),
            (std::vector<std::string>{"first", "second"}));
}

/// Three batteries in a string, written in the wrong order: the route climbs them from minus to plus.
TEST(Route, ClimbsAStringInItsOwnOrder) {
  auto system = empty_system(18);
  add_battery(system, "top", "p", "t-", 6.3, 0.004);
  add_battery(system, "low", "l+", "m", 6.1, 0.006);
  add_battery(system, "mid", "c+", "c-", 6.2, 0.005);
  add_joint(system, "upper", "t-", "c+", 0.001);
  add_joint(system, "lower", "c-", "l+", 0.002);
  add_load(system, "lamp", "p", "m", Current{10});
  const auto solved = solve_one(system, system.cases[0]);
  const auto way = route(solved, solved.loads[0]);
  ASSERT_TRUE(way.has_value());
  std::vector<std::string> ids;
  double lost = 0;
  for (const auto& leg : way->legs()) {
    ids.push_back(solved.network.elements[static_cast<std::size_t>(leg.element)].id);
    lost += leg.lost;
    EXPECT_GT(leg.lost, 0);
  }
  EXPECT_EQ(ids, (std::vector<std::string>{"low", "lower", "mid", "upper", "top"}));
  EXPECT_NEAR(lost, 10 * 0.018, 1e-11);
  EXPECT_NEAR(lost, solved.loads[0].sag, 1e-11);
}

/// A lamp on one battery of two: the other's voltage stands between the supply's plus and it, and the sum is
/// kept.
TEST(Route, OfALoadOnHalfAStringStillAddsUp) {
  auto system = empty_system(24);
  add_battery(system, "top", "p", "mid", 12.6, 0.004);
  add_battery(system, "low", "mid", "m", 12.5, 0.006);
  add_load(system, "drive", "p", "m", Current{20});
  add_load(system, "lamp", "mid", "m", Current{10});
  const auto solved = solve_one(system, system.cases[0]);
  for (const auto& row : split(solved)) EXPECT_NEAR(row.parts.sum(), row.sag, 1e-11) << row.load;
  EXPECT_EQ(split(solved).size(), 2U);
}

}  // namespace
}  // namespace ohmtrail::diagnose
