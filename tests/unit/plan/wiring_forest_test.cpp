#include "plan/wiring_forest.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "unit/plan/protection_rig.hpp"

namespace ohmtrail::plan {
namespace {

/// Battery, a feed to a bus bar, two branches, and one way back for both.
test::Rig branched() {
  test::Rig rig;
  rig.battery("bank", "b+", "b-");
  rig.run("feed", "b+", "bus", 6, 2);
  rig.run("left", "bus", "l+", 10, 2);
  rig.run("right", "bus", "r+", 10, 2);
  rig.load("lamp", "l+", "l-", 5);
  rig.load("pump", "r+", "l-", 5);
  rig.run("back", "l-", "b-", 6, 2);
  return rig;
}

network::Network built(const test::Rig& rig) {
  return network::build(rig.system, rig.system.cases.front());
}

int point(const network::Network& network, const std::string& name) {
  const auto found = std::find(network.points.begin(), network.points.end(), name);
  return static_cast<int>(found - network.points.begin());
}

/// Ids of the runs along a path, in order, once each.
std::vector<std::string> runs_along(const test::Rig& rig, const network::Network& network,
                                    const std::vector<int>& path) {
  std::vector<std::string> ids;
  for (const int e : path) {
    const auto& id = rig.system.runs[network.elements[static_cast<std::size_t>(e)].origin.index].id;
    if (ids.empty() || ids.back() != id) ids.push_back(id);
  }
  return ids;
}

TEST(WiringForest, PlusAndMinusAreTreesOfTheirOwn) {
  const network::Network network = built(branched());
  const WiringForest forest(network);
  EXPECT_FALSE(forest.has_ring());
  EXPECT_EQ(forest.tree(point(network, "b+")), forest.tree(point(network, "r+")));
  EXPECT_EQ(forest.tree(point(network, "l-")), forest.tree(point(network, "b-")));
  EXPECT_NE(forest.tree(point(network, "b+")), forest.tree(point(network, "b-")))
      << "batteries and loads are no wiring";
}

TEST(WiringForest, APathNamesEveryElementOnceFromItsEndBack) {
  const test::Rig rig = branched();
  const network::Network network = built(rig);
  const WiringForest forest(network);
  EXPECT_EQ(runs_along(rig, network, forest.path(point(network, "l+"), point(network, "r+"))),
            (std::vector<std::string>{"right", "left"}));
  const auto feed = forest.path(point(network, "b+"), point(network, "bus"));
  EXPECT_EQ(feed.size(), 3U) << "lug, wire, lug";
  EXPECT_TRUE(forest.path(point(network, "bus"), point(network, "bus")).empty());
  EXPECT_TRUE(forest.path(point(network, "b+"), point(network, "b-")).empty()) << "no wiring joins them";
}

TEST(WiringForest, OutwardsEveryPointOfTheTreeIsReachedOnceFromNearerTheRoot) {
  const network::Network network = built(branched());
  const WiringForest forest(network);
  const auto steps = forest.outwards(point(network, "bus"));
  std::vector<int> met;
  for (const auto& step : steps) {
    EXPECT_EQ(std::count(met.begin(), met.end(), step.point), 0);
    if (step.by >= 0) {
      EXPECT_EQ(std::count(met.begin(), met.end(), step.before), 1);
    }
    met.push_back(step.point);
  }
  const auto in_tree =
      std::count_if(network.points.begin(), network.points.end(), [&](const std::string& name) {
        return forest.tree(point(network, name)) == forest.tree(point(network, "bus"));
      });
  EXPECT_EQ(static_cast<std::ptrdiff_t>(met.size()), in_tree);
}

TEST(WiringForest, ASecondWayMakesARingUnlessASwitchOpensIt) {
  test::Rig rig = branched();
  rig.breaker("tie", "l+", "r+", 20);
  EXPECT_TRUE(WiringForest(built(rig)).has_ring());
  rig.system.switches.back().closed = false;
  EXPECT_FALSE(WiringForest(built(rig)).has_ring());
}

}  // namespace
}  // namespace ohmtrail::plan
