// Wing nuts and studs (from memory: ABYC E-10, E-11), negative as thick as the positive (NEC 552.10(C)(4)),
// unlike batteries side by side (common practice).
#include <gtest/gtest.h>

#include "protection_rig.hpp"

namespace ohmtrail::plan {
namespace {

using diagnose::Severity;
using test::fused_at;
using test::Rig;
using trade::Observation;

TEST(WingNuts, AreNamedWhereTheyWereSeen) {
  auto rig = fused_at(0.1);
  rig.system.batteries[0].seen = {Observation::wing_nut};
  rig.system.runs[0].gauge = trade::awg(2);
  rig.system.runs[0].end_from.resistances.seen = {Observation::darkened, Observation::wing_nut};
  rig.system.runs[2].end_to.resistances.seen = {Observation::wing_nut};  // 10 AWG
  const auto found = rig.of_rule("wing-nut");
  ASSERT_EQ(found.size(), 3U);
  EXPECT_EQ(found[0].subject, "bank");
  EXPECT_EQ(found[0].severity, Severity::soon);
  EXPECT_EQ(found[1].subject, "feed/from");
  EXPECT_EQ(found[1].severity, Severity::soon);
  EXPECT_EQ(found[2].subject, "back/to");
  EXPECT_EQ(found[2].severity, Severity::improvement);
  test::expect_whole(found);
}

TEST(WingNuts, OtherThingsSeenAreNone) {
  auto rig = fused_at(0.1);
  rig.system.runs[0].end_from.resistances.seen = {Observation::loose_nut};
  EXPECT_TRUE(rig.of_rule("wing-nut").empty());
}

/// So many runs at the fuse's far side, with the first.
Rig star(int lugs) {
  auto rig = fused_at(0.1);
  for (int k = 1; k < lugs; ++k) {
    const auto name = std::to_string(k);
    rig.run("branch " + name, "g", "m" + name, 10, 1);
    rig.load("lamp " + name, "m" + name, "b-", 1);
  }
  return rig;
}

TEST(CrowdedStud, FourLugsMayMeet) {
  EXPECT_TRUE(star(4).of_rule("crowded-stud").empty());
  const auto found = star(5).of_rule("crowded-stud");
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].subject, "g");
  EXPECT_NE(found[0].text.find("5 lugs"), std::string::npos);
  test::expect_whole(found);
}

TEST(CrowdedStud, ABusBarHasAStudForEach) {
  auto rig = star(6);
  rig.joint("bar", "g", "h", trade::JointKind::bus_bar);
  rig.load("fan", "h", "b-", 1);
  EXPECT_TRUE(rig.of_rule("crowded-stud").empty());
}

TEST(CrowdedStud, AnOpenedEndIsStillOneLug) {
  auto rig = star(4);
  rig.system.info.terminations = netlist::Terminations::contact_and_crimp;
  EXPECT_TRUE(rig.of_rule("crowded-stud").empty());
}

TEST(UnlikeGauge, AThinnerNegativeAtALoad) {
  auto rig = fused_at(0.1);
  rig.system.runs[2].gauge = trade::awg(14);
  rig.run("second", "l+", "m+", 10, 1);  // so that the battery's own cables are told apart from the load's
  const auto found = rig.of_rule("unlike-gauge");
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].subject, "back");
  EXPECT_EQ(found[0].severity, Severity::soon);
  EXPECT_NE(found[0].source.find("552.10(C)(4)"), std::string::npos);
  test::expect_whole(found);
}

TEST(UnlikeGauge, AThinnerPositiveIsOnlyOdd) {
  auto rig = fused_at(0.1);
  rig.system.runs[2].gauge = trade::awg(2);
  for (const auto& one : rig.of_rule("unlike-gauge")) EXPECT_EQ(one.severity, Severity::improvement);
  EXPECT_FALSE(rig.of_rule("unlike-gauge").empty());
}

TEST(UnlikeGauge, LikeOnesAndNeighbouringStandardsPass) {
  auto rig = fused_at(0.1);
  EXPECT_TRUE(rig.of_rule("unlike-gauge").empty());
  for (std::size_t k = 0; k < 2; ++k) rig.system.runs[k].gauge = trade::awg(2);  // 33.6 mm²
  rig.system.runs[2].gauge = trade::metric(35);
  EXPECT_TRUE(rig.of_rule("unlike-gauge").empty());
}

/// The way back is the body, and a lamp's thin cable ends on it beside the battery's post.
TEST(UnlikeGauge, WhatCarriesAnotherCurrentIsNotCompared) {
  auto rig = fused_at(0.1);
  rig.joint("body", "l-", "b-", trade::JointKind::chassis);
  rig.run("lamp", "g", "x+", 18, 2);
  rig.load("small lamp", "x+", "x-", 1);
  rig.run("lamp back", "x-", "b-", 18, 2);
  rig.system.runs.erase(rig.system.runs.begin() + 2);  // "back"
  EXPECT_TRUE(rig.of_rule("unlike-gauge").empty());
}

TEST(UnlikeBatteries, SideBySide) {
  auto rig = fused_at(0.1);
  rig.system.batteries[0].capacity = units::Charge{100 * 3600.0};
  auto& second = rig.battery("old", "b+", "b-");
  second.capacity = units::Charge{60 * 3600.0};
  second.chemistry = trade::Chemistry::agm;
  second.made = "2019-01";
  rig.system.batteries[0].made = "2024-05";
  EXPECT_EQ(rig.of_rule("unlike-chemistry").size(), 1U);
  EXPECT_EQ(rig.of_rule("unlike-capacity").size(), 1U);
  EXPECT_EQ(rig.of_rule("unlike-age").size(), 1U);
  EXPECT_EQ(rig.of_rule("unlike-chemistry")[0].subject, "bank");
  EXPECT_NE(rig.of_rule("unlike-chemistry")[0].text.find("old"), std::string::npos);
  test::expect_whole(rig.of_rule("unlike-age"));
}

TEST(UnlikeBatteries, LikeOnesPass) {
  auto rig = fused_at(0.1);
  rig.battery("twin", "b+", "b-");
  for (const auto& one : rig.check()) EXPECT_NE(one.rule.substr(0, 7), "unlike-");
}

/// Two more batteries beside the first, each by cables of its own.
Rig side_by_side(int plus_awg, int minus_awg) {
  auto rig = fused_at(0.1);
  rig.battery("second", "s+", "s-");
  rig.run("second plus", "s+", "b+", plus_awg, 0.5);
  rig.run("second minus", "s-", "b-", minus_awg, 0.5);
  rig.battery("third", "t+", "t-");
  rig.run("third plus", "t+", "b+", 2, 0.5);
  rig.run("third minus", "t-", "b-", 2, 0.5);
  return rig;
}

TEST(UnlikeLinks, TheThinnerOfBatteriesSideBySide) {
  const auto found = side_by_side(2, 10).of_rule("unlike-links");
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].subject, "second minus");
  EXPECT_EQ(found[0].severity, Severity::soon);
  EXPECT_NE(found[0].text.find("10 AWG"), std::string::npos);
  EXPECT_NE(found[0].text.find("2 AWG"), std::string::npos);
  test::expect_whole(found);
}

TEST(UnlikeLinks, EveryThinOneIsNamed) {
  EXPECT_EQ(side_by_side(8, 10).of_rule("unlike-links").size(), 2U);
}

TEST(UnlikeLinks, LikeOnesPass) {
  EXPECT_TRUE(side_by_side(2, 2).of_rule("unlike-links").empty());
}

TEST(UnlikeLinks, CablesThatCarryTheWholeBankAreNoLinks) {
  EXPECT_TRUE(fused_at(0.1).of_rule("unlike-links").empty());
}

}  // namespace
}  // namespace ohmtrail::plan
