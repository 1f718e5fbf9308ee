// What a bank drives through a dead short: Ohm's law on ohmic resistances, worked out by hand beside each
// test.
#include <gtest/gtest.h>

#include "protection_rig.hpp"

namespace ohmtrail::plan {
namespace {

using diagnose::Severity;
using test::Rig;

constexpr const char* rule = "interrupting-capacity";
constexpr const char* by_table = "interrupting-capacity-by-table";

/// 600 CCA at 12 V: 3/600 = 5 mΩ over seconds, a third of it ohmic: 1.667 mΩ; 12.72 V full: 7632 A at the
/// post.
Rig at_the_post(double breaks) {
  Rig rig;
  rig.battery("bank", "b+", "b-", 600);
  rig.fuse("main", "b+", "f", 100).interrupts = units::Current{breaks};
  rig.run("feed", "f", "l+", 4, 2);
  rig.load("lamp", "l+", "b-", 10);
  return rig;
}

TEST(Interrupting, AThirdOfTheSecondsScaleResistance) {
  EXPECT_TRUE(at_the_post(7640).of_rule(rule).empty());
  const auto found = at_the_post(7620).of_rule(rule);
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].subject, "main");
  EXPECT_EQ(found[0].severity, Severity::before_further_use);
  EXPECT_NE(found[0].text.find("7630 A"), std::string::npos);
  test::expect_whole(found);
}

TEST(Interrupting, StringsSideBySideAddUp) {
  auto rig = at_the_post(15000);
  rig.battery("second", "b+", "b-", 600);
  const auto found = rig.of_rule(rule);
  ASSERT_EQ(found.size(), 1U);  // 15.3 kA
  rig.system.fuses[0].interrupts = units::Current{15300};
  EXPECT_TRUE(rig.of_rule(rule).empty());
}

/// In series volts and resistance double alike.
TEST(Interrupting, AStringDrivesNoMoreThanOneOfItsBatteries) {
  Rig rig(24);
  rig.battery("low", "1+", "b-", 600).nominal = units::Voltage{12};
  rig.battery("high", "b+", "1+", 600).nominal = units::Voltage{12};
  rig.fuse("main", "b+", "f", 100).interrupts = units::Current{7640};
  rig.load("lamp", "f", "b-", 10);
  EXPECT_TRUE(rig.of_rule(rule).empty());
  rig.system.fuses[0].interrupts = units::Current{7620};
  EXPECT_EQ(rig.of_rule(rule).size(), 1U);
}

/// Four cells of 0.4 mΩ at 100 Ah: 13.6 V / 1.6 mΩ = 8500 A, whatever its management switch would do.
TEST(Interrupting, LithiumFromItsCells) {
  auto rig = at_the_post(8490);
  auto& battery = rig.system.batteries[0];
  battery.chemistry = trade::Chemistry::lfp;
  battery.cca.reset();
  battery.capacity = units::Charge{100 * 3600.0};
  battery.resistance = units::Resistance{0.040};  // what a label with its switch in it would say
  EXPECT_EQ(rig.of_rule(rule).size(), 1U);
  rig.system.fuses[0].interrupts = units::Current{8510};
  EXPECT_TRUE(rig.of_rule(rule).empty());
}

/// 10 m of 14 AWG between bank and fuse leave a few hundred amperes: (1.667 mΩ + 84 mΩ and lugs) at 12.72 V.
TEST(Interrupting, TheWayToTheFuseCounts) {
  Rig rig;
  rig.battery("bank", "b+", "b-", 600);
  rig.run("feed", "b+", "f", 14, 10);
  rig.fuse("far", "f", "l+", 15).interrupts = units::Current{200};
  rig.load("lamp", "l+", "b-", 5);
  EXPECT_TRUE(rig.of_rule(rule).empty());
  rig.system.fuses[0].interrupts = units::Current{100};
  EXPECT_EQ(rig.of_rule(rule).size(), 1U);
}

/// As found the lug is bad and would hide the current; it will be made good.
TEST(Interrupting, ABadJointIsNoProtection) {
  auto rig = at_the_post(5000);
  rig.joint("clamp", "b+", "c+", trade::JointKind::post_clamp);
  rig.system.joints[0].resistances.as_found = units::Resistance{0.1};
  rig.system.fuses[0].from = "c+";
  EXPECT_EQ(rig.of_rule(rule).size(), 1U);
}

TEST(Interrupting, BehindAMainFuseItIsLessUrgent) {
  auto rig = at_the_post(20000);
  rig.fuse("branch", "l+", "m+", 20).interrupts = units::Current{200};
  rig.load("radio", "m+", "b-", 5);
  const auto found = rig.of_rule(rule);
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].subject, "branch");
  EXPECT_EQ(found[0].severity, Severity::soon);
}

/// ISO 8820-3:2015: blade fuses break 1000 A.
TEST(Interrupting, WhereTheFileIsSilentTheFormSpeaks) {
  auto rig = at_the_post(0);
  rig.system.fuses[0].interrupts.reset();
  rig.system.fuses[0].form = trade::FuseForm::blade;
  const auto found = rig.of_rule(rule);
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].severity, Severity::soon);
  EXPECT_NE(found[0].text.find("usually breaks 1000 A"), std::string::npos);
  EXPECT_NE(found[0].source.find("ISO 8820-3"), std::string::npos);
}

TEST(Interrupting, BreakersThatAreSilentAreNamedOnce) {
  auto rig = at_the_post(20000);
  rig.breaker("one", "l+", "m+", 20).interrupts.reset();
  rig.breaker("two", "l+", "k+", 20).interrupts.reset();
  rig.load("radio", "m+", "b-", 5);
  rig.load("fan", "k+", "b-", 5);
  const auto found = rig.of_rule("interrupting-capacity-unknown");
  ASSERT_EQ(found.size(), 1U);
  EXPECT_NE(found[0].text.find("one, two"), std::string::npos);
  EXPECT_EQ(found[0].severity, Severity::improvement);
}

/// ABYC E-11 Table V-A (reprint): up to 650 CCA a main breaker breaks 1500 A, a branch breaker 750 A.
TEST(Interrupting, TheTableAsksByColdCranking) {
  Rig rig;
  rig.battery("bank", "b+", "b-", 600);
  rig.run("long", "b+", "f", 10, 12);  // so long that the real current is small
  rig.breaker("main", "f", "g", 30).interrupts = units::Current{1400};
  rig.run("on", "g", "h", 10, 0.5);
  rig.breaker("branch", "h", "l+", 10).interrupts = units::Current{750};
  rig.load("lamp", "l+", "b-", 5);
  auto found = rig.of_rule(by_table);
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].subject, "main");
  EXPECT_NE(found[0].text.find("1500 A"), std::string::npos);
  EXPECT_NE(found[0].source.find("E-11"), std::string::npos);
  rig.system.switches[0].interrupts = units::Current{1500};
  EXPECT_TRUE(rig.of_rule(by_table).empty());
  rig.system.batteries[0].cca = units::Current{700};  // next row: 3000 and 1500 A
  EXPECT_EQ(rig.of_rule(by_table).size(), 2U);
  EXPECT_TRUE(rig.of_rule(by_table, RuleSet::iso_10133).empty());
}

}  // namespace
}  // namespace ohmtrail::plan
