// 33 CFR 183.455(c)(1): 150 % of the allowable current below 50 V, (c)(2) 100 % or the next rating from 50 V
// up; (d): made for the nominal voltage. 33 CFR 183.425 Table 5: 10 AWG at 105 °C 60 A, 16 AWG 25 A.
#include <gtest/gtest.h>

#include "protection_rig.hpp"

namespace ohmtrail::plan {
namespace {

using diagnose::Severity;
using test::fused_at;
using test::inch;
using test::Rig;

constexpr const char* rule = "fuse-over-ampacity";

TEST(FuseOverAmpacity, UpToTheAmpacityNothingIsSaid) {
  EXPECT_TRUE(fused_at(0.1, 60).of_rule(rule).empty());
}

TEST(FuseOverAmpacity, UpToAHundredAndFiftyPercentIsAllowedButNotGood) {
  for (const double rating : {61.0, 90.0}) {
    const auto found = fused_at(0.1, rating).of_rule(rule);
    ASSERT_EQ(found.size(), 1U);
    EXPECT_EQ(found[0].subject, "fuse");
    EXPECT_EQ(found[0].severity, Severity::improvement);
    EXPECT_NE(found[0].text.find("60 A"), std::string::npos);
    test::expect_whole(found);
  }
}

TEST(FuseOverAmpacity, BeyondItIsIllegal) {
  const auto found = fused_at(0.1, 91).of_rule(rule);
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].severity, Severity::before_further_use);
  EXPECT_NE(found[0].source.find("183.455(c)(1)"), std::string::npos);
  EXPECT_NE(found[0].text.find("at most 90 A"), std::string::npos);
}

TEST(FuseOverAmpacity, ABreakerIsJudgedAsAFuse) {
  auto rig = fused_at(0.1);
  rig.system.fuses.clear();
  rig.breaker("breaker", "f", "g", 100);
  const auto found = rig.of_rule(rule);
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].subject, "breaker");
  EXPECT_NE(found[0].text.find("100 A breaker"), std::string::npos);
}

/// Behind a branching the fuse guards every wire up to the next one; the worst is named, the others too.
TEST(FuseOverAmpacity, EveryWireUpToTheNextDeviceCounts) {
  auto rig = fused_at(0.1, 40);
  rig.run("thin", "g", "m+", 16, 3);
  rig.load("radio", "m+", "l-", 2);
  rig.run("also thin", "g", "k+", 14, 3);
  rig.load("fan", "k+", "l-", 2);
  const auto found = rig.of_rule(rule);
  ASSERT_EQ(found.size(), 1U);
  EXPECT_NE(found[0].text.find("on thin"), std::string::npos);
  EXPECT_NE(found[0].text.find("too large for also thin as well"), std::string::npos);
  EXPECT_EQ(found[0].severity, Severity::before_further_use);
}

TEST(FuseOverAmpacity, AThinBranchWithItsOwnFuseNearbyIsProtected) {
  auto rig = fused_at(0.1, 60);
  rig.run("tap", "g", "t", 16, 7 * inch);
  rig.fuse("own", "t", "u", 5);
  rig.load("radio", "u", "l-", 2);
  EXPECT_TRUE(rig.of_rule(rule).empty());
  rig.system.runs.back().length = units::Length{20 * inch};  // allowed in a sheath only
  auto found = rig.of_rule(rule);
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].severity, Severity::improvement);
  EXPECT_NE(found[0].text.find("sheathed"), std::string::npos);
  rig.system.runs.back().length = units::Length{50 * inch};
  found = rig.of_rule(rule);
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].severity, Severity::before_further_use);
}

/// The cable between battery and fuse is limited by that fuse alone.
TEST(FuseOverAmpacity, TheCableBeforeTheFirstFuseCountsToo) {
  auto rig = fused_at(0.5, 60);
  rig.system.runs[0].gauge = trade::awg(16);
  const auto found = rig.of_rule(rule);
  ASSERT_EQ(found.size(), 1U);
  EXPECT_NE(found[0].text.find("on feed"), std::string::npos);
}

TEST(FuseOverAmpacity, BundlesAndEngineSpacesLowerIt) {
  auto rig = fused_at(0.1, 55);
  EXPECT_TRUE(rig.of_rule(rule).empty());
  rig.system.runs[1].in = "engine-space";  // 60 A × 0.85 = 51 A
  EXPECT_EQ(rig.of_rule(rule).size(), 1U);
}

TEST(FuseOverAmpacity, FromFiftyVoltsTheNextRatingIsTheCeiling) {
  Rig rig(51.2);
  rig.battery("bank", "b+", "b-");
  rig.run("feed", "b+", "f", 10, 0.1);
  rig.fuse("fuse", "f", "g", 70);
  rig.run("branch", "g", "l+", 10, 2);
  rig.load("lamp", "l+", "b-", 10);
  auto found = rig.of_rule(rule);  // 60 A is a standard rating
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].severity, Severity::before_further_use);
  EXPECT_NE(found[0].source.find("183.455(c)(2)"), std::string::npos);
}

/// From memory: NEC 551.10(E)(1): 16 AWG 8 A.
TEST(FuseOverAmpacity, VehiclesHaveATableByGauge) {
  auto rig = fused_at(0.1, 10);
  for (auto& run : rig.system.runs) run.gauge = trade::awg(16);
  EXPECT_TRUE(rig.of_rule(rule).empty());
  const auto found = rig.of_rule(rule, RuleSet::road_vehicle);
  ASSERT_EQ(found.size(), 1U);
  EXPECT_NE(found[0].text.find("at most 8 A"), std::string::npos);
  rig.system.fuses[0].rating = units::Current{8};
  EXPECT_TRUE(rig.of_rule(rule, RuleSet::road_vehicle).empty());
}

TEST(FuseOverAmpacity, Iso10133KnowsNoHundredAndFiftyPercent) {
  const auto found = fused_at(0.1, 70).of_rule(rule, RuleSet::iso_10133);
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].severity, Severity::before_further_use);
}

TEST(FuseVoltage, AFuseIsMadeForTheSystem) {
  Rig rig(48);
  rig.battery("bank", "b+", "b-");
  rig.fuse("fuse", "b+", "g", 30).volts = units::Voltage{32};
  rig.run("branch", "g", "l+", 10, 2);
  rig.load("lamp", "l+", "b-", 10);
  auto found = rig.of_rule("fuse-voltage");
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].severity, Severity::before_further_use);
  EXPECT_NE(found[0].source.find("183.455(d)"), std::string::npos);
  test::expect_whole(found);
  rig.system.fuses[0].volts = units::Voltage{48};
  EXPECT_TRUE(rig.of_rule("fuse-voltage").empty());
  // ISO 8820-3:2015 scope: blade fuses of 32 V and of 58 V; where the file is silent the body must be read.
  rig.system.fuses[0].volts.reset();
  rig.system.fuses[0].form = trade::FuseForm::blade;
  found = rig.of_rule("fuse-voltage");
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].severity, Severity::soon);
}

}  // namespace
}  // namespace ohmtrail::plan
