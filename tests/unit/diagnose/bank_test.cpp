#include "ohmtrail/diagnose/bank.hpp"

#include <gtest/gtest.h>

#include "unit/diagnose/bank_support.hpp"

namespace ohmtrail::diagnose {
namespace {

using namespace bank_test;
using ::testing::HasSubstr;
using ::testing::Not;
using units::Temperature;
using units::Voltage;

TEST(Bank, FullAndPassingIsHealthyAndToldWhatThatProves) {
  auto good = battery("start", 12, 600);
  rested(good, 12.62, 8);
  loaded(good, 12.6, 300, 10.9);
  const auto verdict = judged(good);
  EXPECT_EQ(verdict.verdict, BatteryState::healthy);
  EXPECT_THAT(verdict, HasFinding("load-test-passed"));
  EXPECT_THAT(verdict, HasFinding("starting-only"));
  EXPECT_NEAR(verdict.lost_per_100_amperes.si(), 0.567, 0.001);
  EXPECT_THAT(verdict.in_words, HasSubstr("0.57 V lost for every 100 A"));
}

TEST(Bank, FullAtRestButFailingUnderLoadIsSulphatedOrWorn) {
  auto worn = battery("worn", 12, 600);
  rested(worn, 12.60, 8);
  loaded(worn, 12.6, 300, 9.0);
  const auto verdict = judged(worn);
  EXPECT_EQ(verdict.verdict, BatteryState::sulphated_or_worn);
  EXPECT_THAT(verdict, HasFinding("load-test-failed"));
  EXPECT_THAT(verdict, HasFinding("resistance-raised"));
}

TEST(Bank, LowChargeGivesNoVerdictToALoadTest) {
  auto flat = battery("flat", 12, 600);
  rested(flat, 12.3, 8);
  loaded(flat, 12.3, 300, 8.6);
  const auto verdict = judged(flat);
  EXPECT_EQ(verdict.verdict, BatteryState::charge_first);
  EXPECT_THAT(verdict, HasFinding("load-test-not-judged"));
  EXPECT_THAT(verdict, Not(HasFinding("load-test-failed")));
  EXPECT_THAT(verdict, Not(HasFinding("resistance-raised")));
}

TEST(Bank, TheGateStandsAtTwelvePointFourToTheHundredth) {
  auto at = battery("at", 12, 600), below = battery("below", 12, 600);
  rested(at, 12.40, 8);
  loaded(at, 12.4, 300, 9.0);
  rested(below, 12.39, 8);
  loaded(below, 12.39, 300, 9.0);
  EXPECT_EQ(judged(at).verdict, BatteryState::sulphated_or_worn);
  EXPECT_EQ(judged(below).verdict, BatteryState::charge_first);
}

TEST(Bank, TheGateOfASixVoltBatteryIsHalf) {
  auto at = battery("at", 6, 650), below = battery("below", 6, 650);
  rested(at, 6.20, 8);
  rested(below, 6.19, 8);
  EXPECT_NE(judged(at).verdict, BatteryState::discharged);
  EXPECT_EQ(judged(below).verdict, BatteryState::discharged);
}

TEST(Bank, TheGateByGravity) {
  auto at = battery("at", 6, 650), below = battery("below", 6, 650);
  gravities(at, {1.225, 1.225, 1.225});
  gravities(below, {1.224, 1.224, 1.224});
  EXPECT_NE(judged(at).verdict, BatteryState::discharged);
  EXPECT_EQ(judged(below).verdict, BatteryState::discharged);
}

TEST(Bank, TheGateHonoursTheCold) {
  // 12.35 V at −10 °C is more than 12.4 V at 26.7 °C.
  auto cold = battery("cold", 12, 600);
  rested(cold, 12.35, 8, -10);
  EXPECT_NE(judged(cold).verdict, BatteryState::discharged);
}

TEST(Bank, LowAtRestAndNothingElseIsDischarged) {
  auto flat = battery("flat", 12, 600);
  rested(flat, 12.06, 8);
  const auto verdict = judged(flat);
  EXPECT_EQ(verdict.verdict, BatteryState::discharged);
  EXPECT_NEAR(verdict.charge.percent(), 25, 1e-9);
  EXPECT_THAT(verdict, Not(HasFinding("next-load-test")));
}

TEST(Bank, AFailedTestOfUnknownChargeIsNoVerdict) {
  auto unknown = battery("unknown", 12, 600);
  loaded(unknown, 12.6, 300, 8.6);
  unknown.checks.load_test->before.reset();
  EXPECT_EQ(judged(unknown).verdict, BatteryState::charge_first);
}

TEST(Bank, RestAloneDoesNotProveABatteryAndNamesTheLoadTest) {
  auto full = battery("full", 12, 600);
  rested(full, 12.65, 8);
  const auto verdict = judged(full);
  EXPECT_EQ(verdict.verdict, BatteryState::not_enough_checks);
  const auto* next = find(verdict.findings, "next-load-test");
  ASSERT_NE(next, nullptr);
  EXPECT_THAT(next->remedy, HasSubstr("300 A"));
  EXPECT_THAT(next->remedy, HasSubstr("15 s"));
}

TEST(Bank, NothingMeasuredAsksForARestVoltage) {
  const auto verdict = judged(battery("new", 12, 600));
  EXPECT_EQ(verdict.verdict, BatteryState::not_enough_checks);
  EXPECT_THAT(verdict, HasFinding("next-rest"));
  EXPECT_THAT(verdict.in_words, HasSubstr("not measured"));
}

TEST(Bank, ASixthOfAVoltBelowEmptyIsNotACellButTwoVoltsAre) {
  auto cell = battery("cell", 12, 600), empty = battery("empty", 12, 600);
  rested(cell, 10.5, 8);
  rested(empty, 11.7, 8);
  EXPECT_EQ(judged(cell).verdict, BatteryState::weak_cell);
  EXPECT_THAT(judged(cell), HasFinding("dead-cell"));
  EXPECT_THAT(find(judged(cell).findings, "dead-cell")->text, HasSubstr("1 of its 6 cells"));
  EXPECT_EQ(judged(empty).verdict, BatteryState::discharged);
}

TEST(Bank, GoodGravityBesideRestTwoVoltsLowIsADeadCell) {
  auto cell = battery("cell", 6, 650);
  rested(cell, 4.2, 8);
  gravities(cell, {1.262, 1.260, 1.258});
  EXPECT_EQ(judged(cell).verdict, BatteryState::weak_cell);
}

TEST(Bank, HighGravityBesideALowRestVoltageIsAContradiction) {
  auto odd = battery("odd", 12, 600);
  rested(odd, 12.1, 8);
  gravities(odd, {1.262, 1.260, 1.258, 1.260, 1.261, 1.260});
  const auto verdict = judged(odd);
  EXPECT_EQ(verdict.verdict, BatteryState::contradictory);
  EXPECT_THAT(verdict, HasFinding("gravity-above-volts"));
}

TEST(Bank, LowGravityBesideAHighRestVoltagePointsToMixing) {
  auto odd = battery("odd", 12, 600);
  rested(odd, 12.7, 8);
  gravities(odd, std::vector<double>(6, 1.190));
  const auto verdict = judged(odd);
  EXPECT_EQ(verdict.verdict, BatteryState::contradictory);
  EXPECT_THAT(find(verdict.findings, "volts-above-gravity")->remedy, HasSubstr("mixes"));
}

TEST(Bank, AgreeingGravityAndVoltsAreNoContradiction) {
  auto fine = battery("fine", 12, 600);
  rested(fine, 12.45, 8);
  gravities(fine, std::vector<double>(6, 1.225));
  EXPECT_THAT(judged(fine), Not(HasFinding("gravity-above-volts")));
  EXPECT_NE(judged(fine).verdict, BatteryState::contradictory);
}

TEST(Bank, ARestWithAChargerOnIsRefused) {
  auto charging = battery("charging", 12, 600);
  rested(charging, 14.2, 8);
  charging.checks.rest->charging = true;
  const auto verdict = judged(charging);
  EXPECT_THAT(verdict, HasFinding("charger-on"));
  EXPECT_THAT(verdict, Not(HasFinding("rest-voltage")));
  EXPECT_LT(verdict.emf, Voltage{12.8});
  EXPECT_EQ(verdict.verdict, BatteryState::not_enough_checks);
}

TEST(Bank, ALoadTestWithAChargerOnIsRefused) {
  auto charging = battery("charging", 12, 600);
  rested(charging, 12.6, 8);
  loaded(charging, 13.4, 300, 8.0);
  charging.checks.load_test->charging = true;
  const auto verdict = judged(charging);
  EXPECT_THAT(verdict, HasFinding("charger-on"));
  EXPECT_THAT(verdict, Not(HasFinding("load-test-failed")));
}

TEST(Bank, FourteenVoltsAtRestAreNotBelieved) {
  auto high = battery("high", 12, 600);
  rested(high, 14.1, 8);
  const auto verdict = judged(high);
  EXPECT_THAT(verdict, HasFinding("not-at-rest"));
  EXPECT_LT(verdict.emf, Voltage{12.8});
}

TEST(Bank, SurfaceChargeIsSaid) {
  auto early = battery("early", 12, 600);
  rested(early, 12.9, 1);
  EXPECT_THAT(judged(early), HasFinding("surface-charge"));
}

TEST(Bank, VoltsThatRiseUnderLoadAreAContradiction) {
  auto odd = battery("odd", 12, 600);
  rested(odd, 12.6, 8);
  loaded(odd, 12.4, 300, 12.5);
  const auto verdict = judged(odd);
  EXPECT_EQ(verdict.verdict, BatteryState::contradictory);
  EXPECT_THAT(verdict, HasFinding("impossible-load-test"));
}

TEST(Bank, AChargedBeforeAboveRestIsPointedOut) {
  auto odd = battery("odd", 12, 600);
  rested(odd, 12.5, 8);
  loaded(odd, 13.1, 300, 11.0);
  EXPECT_THAT(judged(odd), HasFinding("before-above-rest"));
}

TEST(Bank, ScalingIsSaid) {
  auto scaled = battery("scaled", 12, 600);
  rested(scaled, 12.6, 8);
  loaded(scaled, 12.6, 200, 11.4, 10);
  const auto verdict = judged(scaled);
  const auto* finding = find(verdict.findings, "load-test-passed");
  ASSERT_NE(finding, nullptr);
  EXPECT_THAT(finding->text, HasSubstr("scaled from 200 A to 300 A"));
  EXPECT_THAT(finding->text, HasSubstr("held only 10 s"));
}

TEST(Bank, ALightLoadNeitherCondemnsNorAcquits) {
  auto light = battery("light", 12, 600);
  rested(light, 12.6, 8);
  loaded(light, 12.6, 30, 12.25);
  const auto verdict = judged(light);
  EXPECT_THAT(verdict, HasFinding("load-test-too-light"));
  EXPECT_NE(verdict.verdict, BatteryState::healthy);
  EXPECT_THAT(verdict, Not(HasFinding("load-test-failed")));
}

TEST(Bank, AConductanceTesterStandsInForALoadTest) {
  for (const auto& [cca, state] : {std::pair{560.0, BatteryState::healthy},
                                   {380.0, BatteryState::suspect},
                                   {250.0, BatteryState::sulphated_or_worn}}) {
    auto tested = battery("tested", 12, 600);
    rested(tested, 12.62, 8);
    tested.checks.tester = netlist::TesterCheck{units::Current{cca}, {}, {}};
    EXPECT_EQ(judged(tested).verdict, state) << cca;
  }
}

TEST(Bank, ResistanceBetweenOnePointFiveAndTwiceIsSuspect) {
  auto between = battery("between", 12, 600);
  rested(between, 12.62, 8, 25);
  between.resistance = units::Resistance{0.0085};
  EXPECT_EQ(judged(between).verdict, BatteryState::suspect);
  between.resistance = units::Resistance{0.0110};
  EXPECT_EQ(judged(between).verdict, BatteryState::sulphated_or_worn);
}

TEST(Bank, AssumptionsNameWhatWasNotMeasured) {
  const auto bank = judge_bank(system_of({battery("new", 12, 600)}));
  ASSERT_EQ(bank.assumptions.size(), 2u);
  EXPECT_EQ(bank.assumptions[0].id, "new");
  EXPECT_THAT(bank.assumptions[0].text, HasSubstr("100 %"));
  EXPECT_THAT(bank.assumptions[1].text, HasSubstr("CCA"));
}

TEST(Bank, EveryStateHasItsOwnWord) {
  std::vector<std::string_view> words;
  for (int i = 0; i <= static_cast<int>(BatteryState::not_enough_checks); ++i)
    words.push_back(word(static_cast<BatteryState>(i)));
  std::sort(words.begin(), words.end());
  EXPECT_EQ(std::unique(words.begin(), words.end()), words.end());
}

}  // namespace
}  // namespace ohmtrail::diagnose
