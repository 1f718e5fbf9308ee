// Strings side by side with real cables between them: what flows at rest, and how they share a load.
#include <gtest/gtest.h>

#include "diagnose/bank_currents.hpp"
#include "unit/diagnose/bank_support.hpp"
#include "unit/diagnose/rank_rig.hpp"

namespace ohmtrail::diagnose {
namespace {

using namespace bank_test;
using ::testing::DoubleNear;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;
using ::testing::SizeIs;

/// Two batteries of 5 mΩ; the second joined to the posts of the first by a cable of this resistance on each
/// side.
netlist::System pair(double first_volts, double second_volts, double cable_ohms) {
  auto system = test::empty_system();
  test::add_battery(system, "first", "f+", "f-", first_volts, 0.005);
  test::add_battery(system, "second", "s+", "s-", second_volts, 0.005);
  test::add_run(system, "plus", "f+", "s+", cable_ohms, 0);
  test::add_run(system, "minus", "s-", "f-", cable_ohms, 0);
  return system;
}

netlist::System pair_with_load(double cable_ohms, double amperes) {
  auto system = pair(12.6, 12.6, cable_ohms);
  test::add_load(system, "inverter", "f+", "f-", units::Current{amperes});
  return system;
}

BatteryGroup group_of(const netlist::System& system) {
  const auto groups = judge_bank(system).groups;
  EXPECT_THAT(groups, SizeIs(1));
  return groups.empty() ? BatteryGroup{} : groups.front();
}

/// 0.5 V over 10 mΩ inside and 10 mΩ of cable: 25 A, where the batteries alone would make it 50.
TEST(BankAtRest, TheCablesHoldTheCirculatingCurrentDown) {
  const auto group = group_of(pair(12.7, 12.2, 0.005));
  EXPECT_THAT(group.at_rest, ElementsAre(DoubleNear(25, 1e-6), DoubleNear(-25, 1e-6)));
  ASSERT_THAT(group, HasFinding("circulating-current"));
  const auto* found = find(group.findings, "circulating-current");
  EXPECT_THAT(found->text, HasSubstr("25 A flow into second"));
  EXPECT_THAT(found->source, HasSubstr("cables and connections between them included"));
}

TEST(BankAtRest, AnAlmostOpenCableKeepsThemApart) {
  EXPECT_THAT(group_of(pair(12.7, 12.2, 1)), Not(HasFinding("circulating-current")));
}

TEST(BankAtRest, ReadingsThatDifferByLittleAreNotWorthAWord) {
  EXPECT_THAT(group_of(pair(12.62, 12.60, 0.0001)), Not(HasFinding("circulating-current")));
}

TEST(BankAtRest, NothingElseMayBeOn) {
  auto system = pair_with_load(0.001, 100);
  netlist::Charger charger;
  charger.id = "shore";
  charger.plus = "f+";
  charger.minus = "f-";
  charger.setpoint = units::Voltage{14.4};
  charger.limit = units::Current{40};
  system.chargers = {charger};
  system.cases[0].chargers = {"shore"};
  EXPECT_THAT(group_of(system).at_rest, ElementsAre(DoubleNear(0, 1e-6), DoubleNear(0, 1e-6)));
}

/// 5 mΩ against 5 + 2 · 2.5 mΩ: two thirds and one third.
TEST(BankUnderLoad, AThinCableMakesTheFartherOneLazy) {
  const auto group = group_of(pair_with_load(0.0025, 90));
  const auto* found = find(group.findings, "unequal-sharing");
  ASSERT_NE(found, nullptr);
  EXPECT_THAT(found->text, HasSubstr("second carries 33 % where 50 %"));
  EXPECT_THAT(found->remedy, HasSubstr("see to the cables and lugs"));
  EXPECT_EQ(group.weakest, "") << "the battery is not to blame";
}

TEST(BankUnderLoad, StoutCablesShareWell) {
  EXPECT_THAT(group_of(pair_with_load(0.0001, 90)).findings, IsEmpty());
}

TEST(BankUnderLoad, AWeakBatteryIsToBlameItself) {
  auto system = pair_with_load(0.0001, 90);
  system.batteries[1].resistance = units::Resistance{0.015};
  const auto group = group_of(system);
  EXPECT_THAT(find(group.findings, "unequal-sharing")->text, HasSubstr("second carries 25 %"));
  EXPECT_EQ(group.weakest, "second");
}

/// What flows at rest is no part of how a load divides.
TEST(BankUnderLoad, TheCirculatingCurrentIsTakenOut) {
  auto system = pair_with_load(0.0001, 90);
  system.batteries[1].emf = units::Voltage{12.3};
  EXPECT_THAT(group_of(system), HasFinding("circulating-current"));
  EXPECT_THAT(group_of(system), Not(HasFinding("unequal-sharing")));
}

TEST(BankUnderLoad, TheLargestLoadDecides) {
  auto system = pair_with_load(0.0025, 90);
  test::add_load(system, "lamp", "s+", "s-", units::Current{5});
  test::add_case(system, "lamp only", {"lamp"});
  EXPECT_THAT(find(group_of(system).findings, "unequal-sharing")->source, HasSubstr("largest load"));
}

TEST(BankCurrents, OfEveryCaseWithoutItsChargers) {
  auto system = pair_with_load(0.0025, 90);
  test::add_case(system, "off", {});
  const auto currents = bank::bank_currents(system);
  ASSERT_TRUE(currents.at_rest);
  EXPECT_THAT(*currents.at_rest, ElementsAre(DoubleNear(0, 1e-9), DoubleNear(0, 1e-9)));
  ASSERT_THAT(currents.under_load, SizeIs(2));
  EXPECT_THAT(currents.under_load[0], ElementsAre(DoubleNear(60, 1e-6), DoubleNear(30, 1e-6)));
  EXPECT_THAT(currents.under_load[1], ElementsAre(DoubleNear(0, 1e-9), DoubleNear(0, 1e-9)));
}

TEST(BankCurrents, AConverterRestsWithEverythingElse) {
  auto system = pair(12.6, 12.6, 0.001);
  system.converters.push_back({"lights",
                               "f+",
                               "f-",
                               "o+",
                               "f-",
                               units::Voltage{5},
                               units::Current{20},
                               units::Fraction{0.9},
                               units::Power{12},
                               {},
                               {}});
  test::add_load(system, "lamp", "o+", "f-", units::Current{10});
  EXPECT_THAT(*bank::bank_currents(system).at_rest, ElementsAre(DoubleNear(0, 1e-9), DoubleNear(0, 1e-9)));
}

}  // namespace
}  // namespace ohmtrail::diagnose
