#include <gtest/gtest.h>

#include "unit/diagnose/bank_support.hpp"

namespace ohmtrail::diagnose {
namespace {

using namespace bank_test;
using netlist::ElectrolyteLevel;
using ::testing::HasSubstr;
using ::testing::Not;
using trade::Observation;
using units::Temperature;
using units::Voltage;

netlist::Battery cart(const std::vector<double>& readings) {
  auto made = battery("cart", 6, 650);
  rested(made, 6.28, 10);
  gravities(made, readings);
  return made;
}

// Common practice: cells between 1.250 and 1.275 with a small spread are healthy.
TEST(BankCells, GoodEvenGravitiesAreHealthyThoughNotLoaded) {
  for (const auto& readings :
       {std::vector{1.250, 1.255, 1.260}, {1.275, 1.270, 1.272}, {1.262, 1.262, 1.262}}) {
    const auto verdict = judged(cart(readings));
    EXPECT_EQ(verdict.verdict, BatteryState::healthy);
    EXPECT_THAT(verdict.in_words, HasSubstr("not tested under load"));
    EXPECT_THAT(verdict, HasFinding("next-load-test"));
  }
}

TEST(BankCells, OneCellMissingFromTheListIsNotCalledHealthy) {
  const auto verdict = judged(cart({1.262, 1.262}));
  EXPECT_EQ(verdict.verdict, BatteryState::not_enough_checks);
  EXPECT_THAT(verdict, HasFinding("cell-count"));
}

TEST(BankCells, SpreadAboveFiveHundredthsIsAWeakCellAndNamesIt) {
  const auto verdict = judged(cart({1.262, 1.210, 1.262}));
  EXPECT_EQ(verdict.verdict, BatteryState::weak_cell);
  EXPECT_THAT(find(verdict.findings, "weak-cell")->text, HasSubstr("cell 2 reads 1.210"));
}

TEST(BankCells, SpreadBetweenTheTwoLimitsIsUneven) {
  EXPECT_EQ(judged(cart({1.262, 1.232, 1.262})).verdict, BatteryState::uneven_cells);
  EXPECT_NE(judged(cart({1.262, 1.237, 1.262})).verdict, BatteryState::uneven_cells);  // 0.025 exactly
  EXPECT_EQ(judged(cart({1.262, 1.212, 1.262})).verdict, BatteryState::uneven_cells);  // 0.050 exactly
}

TEST(BankCells, UnevenAndFailingUnderLoadIsAWeakCell) {
  auto failing = cart({1.252, 1.205, 1.250});
  loaded(failing, 6.24, 200, 4.35);
  EXPECT_EQ(judged(failing).verdict, BatteryState::weak_cell);
}

TEST(BankCells, ACellBelowOnePointOneFiveAmongChargedOnesIsReplaced) {
  const auto verdict = judged(cart({1.205, 1.149, 1.205}));
  EXPECT_EQ(verdict.verdict, BatteryState::weak_cell);
}

TEST(BankCells, EvenlyLowCellsAreMerelyDischarged) {
  auto flat = battery("flat", 6, 650);
  gravities(flat, {1.140, 1.142, 1.141});
  EXPECT_EQ(judged(flat).verdict, BatteryState::discharged);
}

TEST(BankCells, ColdAcidReadsHighAndIsCorrectedBeforeTheGate) {
  auto cold = battery("cold", 6, 650);
  gravities(cold, {1.235, 1.235, 1.235});
  for (auto& cell : cold.checks.cells) cell.temperature = Temperature{0};  // 1.216 at 26.7 °C
  EXPECT_EQ(judged(cold).verdict, BatteryState::discharged);
}

TEST(BankCells, CellVoltsTellAWeakCellToo) {
  auto stepped = battery("stepped", 6, 650);
  for (const double volts : {2.11, 1.85, 2.10}) stepped.checks.cells.push_back({{}, Voltage{volts}, {}, {}});
  EXPECT_EQ(judged(stepped).verdict, BatteryState::weak_cell);
  stepped.checks.cells[1].volts = Voltage{2.04};
  EXPECT_EQ(judged(stepped).verdict, BatteryState::uneven_cells);
  stepped.checks.cells[1].volts = Voltage{2.07};
  EXPECT_NE(judged(stepped).verdict, BatteryState::uneven_cells);
}

TEST(BankCells, ImpossibleGravityIsNamedAndNotCounted) {
  const auto verdict = judged(cart({1.262, 1262, 1.262}));
  ASSERT_THAT(verdict, HasFinding("impossible-gravity"));
  EXPECT_THAT(find(verdict.findings, "impossible-gravity")->remedy, HasSubstr("1.250"));
  EXPECT_THAT(find(verdict.findings, "gravity")->text, HasSubstr("1.262"));
  EXPECT_THAT(verdict, Not(HasFinding("weak-cell")));
}

TEST(BankCells, StrongAcidIsPointedOut) {
  EXPECT_THAT(judged(cart({1.32, 1.32, 1.32})), HasFinding("strong-acid"));
}

TEST(BankLevels, ExposedPlatesAreToppedUpAndNeverLoadTested) {
  auto low = cart({1.262, 1.260, 1.262});
  low.checks.cells[1].level = ElectrolyteLevel::below;
  const auto verdict = judged(low);
  EXPECT_EQ(verdict.verdict, BatteryState::exposed_plates);
  EXPECT_THAT(verdict, Not(HasFinding("next-load-test")));
  EXPECT_THAT(find(verdict.findings, "exposed-plates")->text, HasSubstr("cell 2"));
  EXPECT_THAT(find(verdict.findings, "exposed-plates")->remedy, HasSubstr("quarter inch"));
}

TEST(BankLevels, DryPlatesAreReplaced) {
  auto dry = cart({1.262, 1.260, 1.262});
  dry.checks.cells[0].level = ElectrolyteLevel::dry;
  EXPECT_EQ(judged(dry).verdict, BatteryState::dry_plates);
}

TEST(BankLevels, HighAcidIsOnlyAWord) {
  auto high = cart({1.262, 1.260, 1.262});
  high.checks.cells[0].level = ElectrolyteLevel::above;
  EXPECT_EQ(judged(high).verdict, BatteryState::healthy);
  EXPECT_THAT(judged(high), HasFinding("overfilled"));
}

TEST(BankSafety, FrozenBulgedMeltedAndHotAreNeitherChargedNorLoaded) {
  for (const auto what : {Observation::frozen, Observation::bulged_case, Observation::melted}) {
    auto bad = battery("bad", 12, 600);
    rested(bad, 12.6, 8);
    bad.seen = {what};
    const auto verdict = judged(bad);
    EXPECT_EQ(verdict.verdict, BatteryState::do_not_test);
    EXPECT_THAT(verdict, Not(HasFinding("next-load-test")));
  }
  auto hot = battery("hot", 12, 600);
  rested(hot, 12.6, 8, 55);
  EXPECT_EQ(judged(hot).verdict, BatteryState::do_not_test);
}

TEST(BankSafety, AFlatBatteryInHardFrostMayBeFrozen) {
  auto flat = battery("flat", 12, 600), full = battery("full", 12, 600);
  rested(flat, 11.9, 8, -15);
  rested(full, 12.55, 8, -15);
  EXPECT_THAT(judged(flat), HasFinding("may-be-frozen"));
  EXPECT_EQ(judged(flat).verdict, BatteryState::do_not_test);
  EXPECT_THAT(judged(full), Not(HasFinding("may-be-frozen")));
}

TEST(BankLithium, RestVoltageTellsLittleAndNoLoadTestIsAdvised) {
  auto lithium = battery("lithium", 12.8, 0);
  lithium.cca.reset();
  lithium.capacity = units::Charge{100 * 3600.0};
  lithium.chemistry = trade::Chemistry::lfp;
  rested(lithium, 13.15, 8);
  const auto verdict = judged(lithium);
  EXPECT_EQ(verdict.verdict, BatteryState::not_enough_checks);
  EXPECT_THAT(find(verdict.findings, "lithium-rest-voltage")->text, HasSubstr("leaves anything from"));
  EXPECT_THAT(verdict, Not(HasFinding("next-load-test")));
  EXPECT_THAT(verdict, Not(HasFinding("rest-voltage")));
}

TEST(BankLithium, AHalfCcaLoadTestIsNotJudged) {
  auto lithium = battery("lithium", 12.8, 800);
  lithium.chemistry = trade::Chemistry::lfp;
  rested(lithium, 13.2, 8);
  loaded(lithium, 13.2, 400, 9.0);
  const auto verdict = judged(lithium);
  EXPECT_THAT(verdict, HasFinding("not-a-lithium-test"));
  EXPECT_THAT(verdict, Not(HasFinding("load-test-failed")));
}

TEST(BankLithium, AnOpenProtectionIsSaid) {
  auto lithium = battery("lithium", 12.8, 800);
  lithium.chemistry = trade::Chemistry::lfp;
  rested(lithium, 8.9, 8);
  EXPECT_THAT(judged(lithium), HasFinding("protection-open"));
  EXPECT_EQ(judged(lithium).verdict, BatteryState::discharged);
}

TEST(BankCase, LeakageAndAge) {
  auto old = battery("old", 12, 600);
  old.made = "2019-05";
  old.checks.top_leak = Voltage{1.2};
  auto system = system_of({old});
  system.info.job.date = "2026-08-20";
  const auto verdict = judge_bank(system).batteries[0];
  EXPECT_THAT(verdict, HasFinding("leakage"));
  EXPECT_THAT(find(verdict.findings, "old")->text, HasSubstr("7.2 years"));
}

TEST(BankCase, AgeNeedsBothDatesAndASmallLeakIsNothing) {
  auto some = battery("some", 12, 600);
  some.made = "last spring";
  some.checks.top_leak = Voltage{0.4};
  auto system = system_of({some});
  system.info.job.date = "2026-08-20";
  EXPECT_THAT(judge_bank(system).batteries[0], Not(HasFinding("old")));
  EXPECT_THAT(judge_bank(system).batteries[0], Not(HasFinding("leakage")));
}

}  // namespace
}  // namespace ohmtrail::diagnose
