#include "plan/ground.hpp"

#include <gtest/gtest.h>

#include <set>

#include "protection_rig.hpp"

namespace ohmtrail::plan {
namespace {

using test::Rig;

struct Grounded {
  network::Network network;
  Ground ground;
  explicit Grounded(const Rig& rig)
      : network(network::build(rig.system, rig.system.cases.front())),
        ground(find_ground(rig.system, network)) {}

  [[nodiscard]] std::string point() const {
    return ground.point < 0 ? "" : network.points[static_cast<std::size_t>(ground.point)];
  }
  /// Those that the file names and that are grounded.
  [[nodiscard]] std::set<std::string> points() const {
    std::set<std::string> out;
    for (std::size_t p = 0; p < ground.points.size(); ++p)
      if (ground.points[p] && network.points[p].find('@') == std::string::npos) out.insert(network.points[p]);
    return out;
  }
};

using Points = std::set<std::string>;

/// Three batteries in series over a load. In which order the file lists them says nothing of what is
/// grounded.
Rig string_of_three(const std::vector<int>& order) {
  Rig rig(36);
  for (const int k : order) {
    const std::string name(1, static_cast<char>('a' + k));
    rig.battery(name, name + "+", name + "-");
  }
  rig.run("upper link", "a-", "b+", 2, 0.3);
  rig.run("lower link", "b-", "c+", 2, 0.3);
  rig.run("feed", "a+", "l+", 2, 3);
  rig.load("motor", "l+", "l-", 50);
  rig.run("back", "l-", "c-", 2, 3);
  return rig;
}

TEST(Ground, IsTheMinusEndOfAStringHoweverItIsListed) {
  for (const auto& order : {std::vector<int>{0, 1, 2}, {1, 2, 0}, {2, 1, 0}}) {
    const Grounded found(string_of_three(order));
    EXPECT_EQ(found.point(), "c-") << order.front();
    EXPECT_EQ(found.points(), (Points{"c-", "l-"})) << order.front();
  }
}

TEST(Ground, IsTheReferenceWhereTheFileNamesOne) {
  Rig rig = string_of_three({0, 1, 2});
  rig.system.reference = "a+";  // plus to the chassis
  const Grounded found(rig);
  EXPECT_EQ(found.point(), "a+");
  EXPECT_EQ(found.points(), (Points{"a+", "l+"}));
}

TEST(Ground, IsTheFirstBatterysMinusInABankOfParallelOnes) {
  Rig rig = test::fused_at(0.1);
  rig.battery("second", "s+", "s-");
  rig.run("plus link", "s+", "b+", 2, 0.3);
  rig.run("minus link", "s-", "b-", 2, 0.3);
  const Grounded found(rig);
  EXPECT_EQ(found.point(), "b-");
  EXPECT_EQ(found.points(), (Points{"b-", "s-", "l-"}));
}

TEST(Ground, EveryIslandHasItsOwn) {
  Rig rig = test::fused_at(0.1);
  rig.battery("starter", "e+", "e-");
  rig.load("engine", "e+", "e-", 100);
  const Grounded found(rig);
  EXPECT_EQ(found.point(), "b-");
  EXPECT_EQ(found.points(), (Points{"b-", "l-", "e-"}));
}

/// A wire from the last minus to the first plus: the search must end.
TEST(Ground, AStringClosedOnItselfEndsSomewhere) {
  Rig rig = string_of_three({0, 1, 2});
  rig.run("mistake", "c-", "a+", 2, 1);
  EXPECT_NE(Grounded(rig).point(), "");
}

TEST(Ground, WithoutASourceThereIsNone) {
  Rig rig;
  rig.run("feed", "x", "l+", 2, 1);
  rig.load("lamp", "l+", "l-", 5);
  const Grounded found(rig);
  EXPECT_EQ(found.point(), "");
  EXPECT_TRUE(found.points().empty());
}

/// The cable from the string to the chassis is a way back: no fuse belongs in it.
TEST(Ground, NoFuseIsAskedForInTheWayBackOfAString) {
  const auto findings = string_of_three({0, 1, 2}).of_rule("no-fuse-in-reach");
  ASSERT_FALSE(findings.empty());
  for (const auto& finding : findings) EXPECT_EQ(finding.subject, "feed") << finding.text;
}

}  // namespace
}  // namespace ohmtrail::plan
