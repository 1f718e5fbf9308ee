// Limits: 33 CFR 183.455(b)(1) 7 in, (b)(2) 40 in sheathed, 183.460(a) 72 in at the battery with the cranking
// feed exempt; ISO 10133:2000 8.1 200 mm (from memory); NEC 552.10(E)(4) 18 in.
#include <gtest/gtest.h>

#include <cmath>

#include "plan/feed.hpp"
#include "protection_rig.hpp"

namespace ohmtrail::plan {
namespace {

using diagnose::Severity;
using test::fused_at;
using test::inch;
using test::Rig;

constexpr const char* rule = "no-fuse-in-reach";

TEST(FuseInReach, SeventyTwoInchesAtTheBattery) {
  EXPECT_TRUE(fused_at(72 * inch).of_rule(rule).empty());
  const auto found = fused_at(73 * inch).of_rule(rule);
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].subject, "feed");
  EXPECT_EQ(found[0].severity, Severity::soon);
  EXPECT_NE(found[0].source.find("183.460(a)"), std::string::npos);
  EXPECT_NE(found[0].text.find("73 in"), std::string::npos);
  EXPECT_NE(found[0].text.find("after \"b+\""), std::string::npos);
  test::expect_whole(found);
}

TEST(FuseInReach, NoneAtAllIsWorse) {
  auto rig = fused_at(1);
  rig.run("spare", "b+", "s+", 10, 3);
  rig.load("pump", "s+", "l-", 1);
  const auto found = rig.of_rule(rule);
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].subject, "spare");
  EXPECT_EQ(found[0].severity, Severity::before_further_use);
  EXPECT_NE(found[0].text.find("no fuse or breaker at all"), std::string::npos);
}

TEST(FuseInReach, TheDistanceAddsUpOverRuns) {
  auto rig = fused_at(40 * inch);
  rig.system.runs[0].to = "mid";
  rig.run("second", "mid", "f", 10, 40 * inch);
  const auto found = rig.of_rule(rule);
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].subject, "second");
  EXPECT_NE(found[0].text.find("80 in"), std::string::npos);
}

TEST(FuseInReach, ASwitchIsNoFuse) {
  auto rig = fused_at(40 * inch);
  rig.system.runs[0].to = "in";
  netlist::Switch one;
  one.id = "master", one.from = "in", one.to = "out", one.kind = trade::SwitchKind::battery_switch;
  rig.system.switches.push_back(one);
  rig.run("second", "out", "f", 10, 40 * inch);
  EXPECT_EQ(rig.of_rule(rule).size(), 1U);
}

TEST(FuseInReach, ABreakerCountsAsAFuseWithOrWithoutItsRating) {
  for (const std::optional<double> rating : {std::optional<double>(30), std::optional<double>()}) {
    auto rig = fused_at(1);
    rig.system.fuses.clear();
    rig.breaker("breaker", "f", "g", rating);
    EXPECT_TRUE(rig.of_rule(rule).empty());
  }
}

/// A thinner conductor starts anew where it branches off: 7 in, 40 in when sheathed.
Rig with_tap(double metres) {
  auto rig = fused_at(12 * inch);
  rig.system.runs[0].gauge = trade::awg(2);
  rig.run("tap", "f", "t", 16, metres);
  rig.fuse("tap fuse", "t", "u", 5);
  rig.run("radio feed", "u", "m+", 16, 3);
  rig.load("radio", "m+", "l-", 2);
  return rig;
}

TEST(FuseInReach, AThinnerBranchMayGoSevenInches) {
  EXPECT_TRUE(with_tap(7 * inch).of_rule(rule).empty());
}

TEST(FuseInReach, FortyInchesOnlyIfSheathed) {
  const auto found = with_tap(20 * inch).of_rule(rule);
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].subject, "tap");
  EXPECT_EQ(found[0].severity, Severity::improvement);
  EXPECT_NE(found[0].text.find("(7 in)"), std::string::npos);
  EXPECT_NE(found[0].text.find("(40 in) if it is sheathed"), std::string::npos);
  EXPECT_NE(found[0].source.find("183.455(b)(1)"), std::string::npos);
  EXPECT_NE(found[0].source.find("183.455(b)(2)"), std::string::npos);
}

TEST(FuseInReach, BeyondFortyInchesNoSheathHelps) {
  const auto found = with_tap(41 * inch).of_rule(rule);
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].severity, Severity::soon);
}

Rig cranking(const char* id) {
  auto rig = fused_at(1);
  rig.run("starter cable", "b+", "s+", 0, 3);
  rig.load(id, "s+", "s-", 200).inrush = units::Current{500};
  rig.run("block strap", "s-", "b-", 0, 1);
  return rig;
}

TEST(FuseInReach, TheCrankingFeedIsExempt) {
  EXPECT_TRUE(cranking("Starter motor").of_rule(rule).empty());
  EXPECT_TRUE(cranking("engine cranking").of_rule(rule).empty());
}

TEST(FuseInReach, AWindlassIsNoStarter) {
  const auto found = cranking("windlass").of_rule(rule);
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].subject, "starter cable");
  EXPECT_NE(found[0].remedy.find("cranking feed is exempt"), std::string::npos);
}

TEST(FuseInReach, ABranchOffTheCrankingFeedIsNotExempt) {
  auto rig = cranking("starter");
  rig.run("branch off", "s+", "r+", 16, 2);
  rig.load("radio", "r+", "l-", 1);
  const auto found = rig.of_rule(rule);
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].subject, "branch off");
  EXPECT_EQ(found[0].severity, Severity::before_further_use);
}

TEST(FuseInReach, TwoHundredMillimetresByIso10133) {
  EXPECT_TRUE(fused_at(0.2).of_rule(rule, RuleSet::iso_10133).empty());
  const auto found = fused_at(0.21).of_rule(rule, RuleSet::iso_10133);
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].severity, Severity::improvement);  // allowed in a sheath
  EXPECT_NE(found[0].source.find("ISO 10133"), std::string::npos);
}

TEST(FuseInReach, EighteenInchesOnTheRoad) {
  EXPECT_TRUE(fused_at(18 * inch).of_rule(rule, RuleSet::road_vehicle).empty());
  const auto found = fused_at(19 * inch).of_rule(rule, RuleSet::road_vehicle);
  ASSERT_EQ(found.size(), 1U);
  EXPECT_NE(found[0].source.find("552.10(E)(4)"), std::string::npos);
}

TEST(FuseInReach, LinksOfAStringAreExemptTapsAreNot) {
  Rig rig(24);
  rig.battery("low", "1+", "1-").nominal = units::Voltage{12};
  rig.battery("high", "2+", "2-").nominal = units::Voltage{12};
  rig.run("link", "1+", "2-", 2, 3);
  rig.fuse("main", "2+", "f", 100);
  rig.load("motor", "f", "1-", 50);
  EXPECT_TRUE(rig.of_rule(rule).empty());
  rig.run("tap", "1+", "t+", 14, 3);
  rig.load("radio", "t+", "1-", 2);
  const auto found = rig.of_rule(rule);
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].subject, "tap");
}

TEST(FuseInReach, GroundedConductorsNeedNone) {
  auto rig = fused_at(0.1);
  rig.system.runs[2].length = units::Length{30};
  EXPECT_TRUE(rig.of_rule(rule).empty());
}

TEST(Feed, MeasuresFromTheNearestPost) {
  auto rig = fused_at(2);
  rig.battery("second", "f", "b-");
  const auto network = network::build(rig.system, rig.system.cases.front());
  const auto guards = find_guards(rig.system, network);
  const Feed feed(rig.system, network, guards);
  EXPECT_EQ(feed.metres(*network.point("f")), 0);
  EXPECT_TRUE(std::isinf(feed.metres(*network.point("g"))));
}

}  // namespace
}  // namespace ohmtrail::plan
