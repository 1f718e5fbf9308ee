// Motors held fast. Common practice: a bilge pump draws three to five times its running current when stalled,
// and its fuse must open on that.
#include <gtest/gtest.h>

#include "protection_rig.hpp"

namespace ohmtrail::plan {
namespace {

using test::Rig;
using units::Current;
using units::Resistance;

constexpr const char* rule = "fuse-above-stall";

/// 12 V behind `feed_ohms`, a fuse, and a pump of 5 A that draws 25 A at 12 V when held: 0.48 Ω.
Rig pump(double fuse_amperes, double feed_ohms = 0) {
  Rig rig;
  auto& battery = rig.battery("bank", "b+", "b-");
  battery.emf = units::Voltage{12};
  battery.resistance = Resistance{0.0001};
  rig.run("feed", "b+", "f", 10, 1).wire.sound = Resistance{feed_ohms};
  rig.fuse("fuse", "f", "p+", fuse_amperes);
  rig.load("pump", "p+", "p-", 5).stall = Current{25};
  rig.run("back", "p-", "b-", 10, 1);
  return rig;
}

TEST(FuseAboveStall, ASmallFuseOpens) {
  EXPECT_TRUE(pump(10).of_rule(rule).empty());
}

TEST(FuseAboveStall, ALargeOneLetsItBurn) {
  const auto found = pump(30).of_rule(rule);
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].subject, "pump");
  EXPECT_NE(found[0].text.find("30 A"), std::string::npos) << found[0].text;
  EXPECT_NE(found[0].text.find("fuse"), std::string::npos);
  test::expect_whole(found);
}

/// Label and fuse would be right, but 0.8 Ω of thin cable leave less than 10 A.
TEST(FuseAboveStall, WhatTheCablesLetThroughCounts) {
  const auto found = pump(10, 0.8).of_rule(rule);
  ASSERT_EQ(found.size(), 1U);
  EXPECT_NE(found[0].text.find("held fast it draws 9."), std::string::npos) << found[0].text;
}

TEST(FuseAboveStall, TheSmallestDeviceInTheFeedDecides) {
  auto rig = pump(60);
  rig.system.loads[0].plus = "q+";
  rig.breaker("breaker", "p+", "q+", 15);
  EXPECT_TRUE(rig.of_rule(rule).empty());
  rig.system.switches[0].rating = Current{50};
  const auto found = rig.of_rule(rule);
  ASSERT_EQ(found.size(), 1U);
  EXPECT_NE(found[0].text.find("breaker of 50 A"), std::string::npos) << found[0].text;
}

TEST(FuseAboveStall, WithoutAStallCurrentNothingIsSaid) {
  auto rig = pump(30);
  rig.system.loads[0].stall.reset();
  EXPECT_TRUE(rig.of_rule(rule).empty());
}

TEST(FuseAboveStall, WithoutAFuseAnotherRuleSpeaks) {
  auto rig = pump(30);
  rig.system.fuses.clear();
  rig.joint("post", "f", "p+", trade::JointKind::stud);
  EXPECT_TRUE(rig.of_rule(rule).empty());
}

TEST(FuseAboveStall, AFuseThatOthersShareIsNoneOfItsOwn) {
  auto rig = pump(30);
  rig.load("lamp", "p+", "p-", 20);
  ASSERT_EQ(rig.of_rule(rule).size(), 1U) << "the lamp is off when the motor is judged";
}

}  // namespace
}  // namespace ohmtrail::plan
