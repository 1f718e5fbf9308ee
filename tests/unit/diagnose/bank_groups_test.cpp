#include <gtest/gtest.h>

#include "diagnose/bank_groups.hpp"
#include "ohmtrail/trade/gauge.hpp"
#include "unit/diagnose/bank_support.hpp"

namespace ohmtrail::diagnose {
namespace {

using namespace bank_test;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;
using ::testing::SizeIs;

void cable(netlist::System& system, const std::string& from, const std::string& to) {
  netlist::Run run;
  run.id = from + " to " + to;
  run.from = from;
  run.to = to;
  run.gauge = trade::awg(-1);
  run.length = units::Length{0.5};
  run.wire.sound = units::Resistance{0};
  run.end_from.resistances.sound = run.end_to.resistances.sound = units::Resistance{0};
  system.runs.push_back(run);
}

netlist::System series(const std::vector<netlist::Battery>& batteries) {
  auto system = system_of(batteries);
  for (std::size_t i = 1; i < batteries.size(); ++i) cable(system, batteries[i - 1].plus, batteries[i].minus);
  return system;
}

netlist::System parallel(const std::vector<netlist::Battery>& batteries) {
  auto system = system_of(batteries);
  for (std::size_t i = 1; i < batteries.size(); ++i) {
    cable(system, batteries[0].plus, batteries[i].plus);
    cable(system, batteries[0].minus, batteries[i].minus);
  }
  return system;
}

netlist::Battery sound(const std::string& id) {
  auto made = battery(id, 6, 650);
  rested(made, 6.3, 8);
  return made;
}

TEST(BankTopology, ALoneBatteryIsNoGroup) {
  EXPECT_THAT(judge_bank(system_of({sound("a")})).groups, IsEmpty());
}

TEST(BankTopology, SeriesFromMinusToPlusWhateverTheFileOrder) {
  auto system = system_of({sound("top"), sound("bottom"), sound("middle")});
  cable(system, "bottom +", "middle -");
  cable(system, "top -", "middle +");
  const auto groups = judge_bank(system).groups;
  ASSERT_THAT(groups, SizeIs(1));
  EXPECT_EQ(groups[0].kind, BatteryGroup::Kind::series);
  EXPECT_THAT(groups[0].members,
              ElementsAre(ElementsAre("bottom"), ElementsAre("middle"), ElementsAre("top")));
}

TEST(BankTopology, TwoStringsOfTwoSideBySide) {
  auto system = series({sound("a1"), sound("a2")});
  for (const auto* id : {"b1", "b2"}) system.batteries.push_back(sound(id));
  cable(system, "b1 +", "b2 -");
  cable(system, "a1 -", "b1 -");
  cable(system, "b2 +", "a2 +");
  const auto groups = judge_bank(system).groups;
  ASSERT_THAT(groups, SizeIs(3));
  EXPECT_EQ(groups[2].kind, BatteryGroup::Kind::parallel);
  EXPECT_THAT(groups[2].members, ElementsAre(ElementsAre("a1", "a2"), ElementsAre("b1", "b2")));
}

TEST(BankTopology, CrossLinkedPairsAreStepsOfOneString) {
  auto system = parallel({sound("a1"), sound("b1")});
  for (const auto* id : {"a2", "b2"}) system.batteries.push_back(sound(id));
  cable(system, "a1 +", "a2 -");
  cable(system, "b1 +", "b2 -");
  cable(system, "a2 +", "b2 +");
  const auto groups = judge_bank(system).groups;
  ASSERT_THAT(groups, SizeIs(3));
  EXPECT_THAT(groups[0].members, ElementsAre(ElementsAre("a1", "b1"), ElementsAre("a2", "b2")));
}

TEST(BankTopology, AnOpenSwitchAndAnIsolatorPartBatteries) {
  auto system = system_of({sound("a"), sound("b")});
  cable(system, "a -", "b -");
  netlist::Switch join;
  join.id = "join";
  join.from = "a +";
  join.to = "b +";
  join.kind = trade::SwitchKind::battery_switch;
  join.closed = false;
  system.switches = {join};
  system.isolators = {netlist::Isolator{"diode", "a +", "b +", units::Voltage{0.7}, {}, {}}};
  EXPECT_THAT(judge_bank(system).groups, IsEmpty());
  system.switches[0].closed = true;
  EXPECT_THAT(judge_bank(system).groups, SizeIs(1));
}

TEST(BankTopology, ARingOfBatteriesLosesNone) {
  auto system = series({sound("a"), sound("b")});
  cable(system, "b +", "a -");
  std::size_t count = 0;
  for (const auto& string : bank::strings_of(system))
    for (const auto& step : string.steps) count += step.size();
  EXPECT_EQ(count, 2u);
}

TEST(BankSeries, TheWeakestIsNamed) {
  auto weak = sound("weak");
  loaded(weak, 6.3, 300, 4.4);
  const auto groups = judge_bank(series({sound("1"), sound("2"), weak, sound("4")})).groups;
  ASSERT_THAT(groups, SizeIs(1));
  EXPECT_EQ(groups[0].weakest, "weak");
  EXPECT_THAT(find(groups[0].findings, "weakest-of-string")->text, HasSubstr("sulphated or worn"));
}

TEST(BankSeries, TheLeastChargedIsTheWeakest) {
  auto low = sound("low");
  rested(low, 6.22, 8);
  EXPECT_EQ(judge_bank(series({sound("1"), low, sound("3")})).groups[0].weakest, "low");
}

TEST(BankSeries, EqualBatteriesHaveNoWeakest) {
  const auto group = judge_bank(series({sound("1"), sound("2"), sound("3")})).groups[0];
  EXPECT_EQ(group.weakest, "");
  EXPECT_THAT(group.findings, IsEmpty());
}

TEST(BankSeries, UnlikeCapacityAgeAndChemistry) {
  auto small = sound("small"), other = sound("other");
  small.capacity = units::Charge{150 * 3600.0};
  other.capacity = units::Charge{225 * 3600.0};
  small.made = "2019";
  other.made = "2024-02";
  other.chemistry = trade::Chemistry::agm;
  const auto group = judge_bank(series({small, other})).groups[0];
  EXPECT_THAT(find(group.findings, "unlike-capacity")->text, HasSubstr("small has 150 Ah, other 225 Ah"));
  EXPECT_THAT(group, HasFinding("unlike-age"));
  EXPECT_THAT(find(group.findings, "unlike-chemistry")->text, HasSubstr("flooded and AGM"));
}

TEST(BankParallel, UnlikeNominalsArePartedAtOnce) {
  auto twelve = battery("twelve", 12, 600);
  const auto group = judge_bank(parallel({sound("six"), twelve})).groups[0];
  ASSERT_THAT(group, HasFinding("unlike-nominal"));
  EXPECT_EQ(find(group.findings, "unlike-nominal")->severity, Severity::before_further_use);
}

TEST(BankParallel, LithiumBesideLeadIsPartedAtOnce) {
  auto lithium = battery("lithium", 12.8, 600), lead = battery("lead", 12, 600);
  lithium.chemistry = trade::Chemistry::lfp;
  const auto group = judge_bank(parallel({lead, lithium})).groups[0];
  EXPECT_EQ(find(group.findings, "unlike-chemistry")->severity, Severity::before_further_use);
}

TEST(BankParallel, CirculatingCurrentIsTheGapOverBothResistances) {
  auto high = battery("high", 12, 600), low = battery("low", 12, 600);
  high.emf = units::Voltage{12.7};
  low.emf = units::Voltage{12.2};
  high.resistance = low.resistance = units::Resistance{0.005};
  const auto group = judge_bank(parallel({high, low})).groups[0];
  EXPECT_THAT(find(group.findings, "circulating-current")->text,
              HasSubstr("with nothing on 50 A flow into low"));
  EXPECT_EQ(find(group.findings, "circulating-current")->severity, Severity::soon);
}

TEST(BankParallel, SharingGoesAsOneOverResistance) {
  auto good = battery("good", 12, 600), bad = battery("bad", 12, 600);
  good.resistance = units::Resistance{0.004};
  bad.resistance = units::Resistance{0.012};
  const auto group = judge_bank(parallel({good, bad})).groups[0];
  EXPECT_THAT(find(group.findings, "unequal-sharing")->text, HasSubstr("bad carries 25 % where 50 %"));
  EXPECT_EQ(group.weakest, "bad");
}

TEST(BankParallel, LikeBatteriesGetNoFinding) {
  const auto group = judge_bank(parallel({sound("a"), sound("b"), sound("c")})).groups[0];
  EXPECT_THAT(group.findings, IsEmpty());
  EXPECT_THAT(group, Not(HasFinding("circulating-current")));
}

}  // namespace
}  // namespace ohmtrail::diagnose
