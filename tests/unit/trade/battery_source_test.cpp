#include "ohmtrail/trade/battery_source.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "ohmtrail/trade/battery_charge.hpp"
#include "ohmtrail/trade/battery_resistance.hpp"

namespace ohmtrail::trade {
namespace {

using ::testing::Contains;
using ::testing::Field;
using ::testing::HasSubstr;
using namespace units;

constexpr double hour = 3600;

BatteryFacts starting_battery() {
  BatteryFacts facts;
  facts.nominal = Voltage{12};
  facts.cca = Current{600};
  return facts;
}

CellFact cell_of(double gravity) {
  CellFact cell;
  cell.specific_gravity = gravity;
  cell.temperature = reference_electrolyte_temperature;
  return cell;
}

void expect_note(const BatterySource& source, const std::string& name) {
  EXPECT_THAT(source.notes, Contains(Field(&SourceNote::name, name)));
}

TEST(BatterySource, GivenEmfAndResistanceStandAsTheyAre) {
  auto facts = starting_battery();
  facts.emf = Voltage{12.9};
  facts.resistance = Resistance{0.004};
  facts.rest = RestFact{Voltage{12.4}, Time{8 * hour}, {}};
  const auto source = estimate_source(facts);
  EXPECT_EQ(source.open_circuit, Voltage{12.9});
  EXPECT_EQ(source.open_circuit_from, "given");
  EXPECT_EQ(source.resistance, Resistance{0.004});
  EXPECT_TRUE(source.resistance_measured);
}

TEST(BatterySource, ChargeBesideAGivenEmfIsStillTheMeasuredOne) {
  auto facts = starting_battery();
  facts.emf = Voltage{12.9};
  facts.rest = RestFact{Voltage{12.24}, Time{8 * hour}, Temperature{26.7}};
  EXPECT_NEAR(estimate_source(facts).charge.percent(), 50, 1e-9);
}

TEST(BatterySource, ALongRestComesBeforeGravity) {
  auto facts = starting_battery();
  facts.rest = RestFact{Voltage{12.45}, Time{6 * hour}, Temperature{26.7}};
  facts.cells.assign(6, cell_of(1.265));
  const auto source = estimate_source(facts);
  EXPECT_EQ(source.open_circuit, Voltage{12.45});
  EXPECT_NEAR(source.charge.percent(), 75, 1e-9);
}

TEST(BatterySource, AnEarlyRestGivesWayToGravityAndSaysSo) {
  auto facts = starting_battery();
  facts.rest = RestFact{Voltage{12.9}, Time{2 * hour}, Temperature{26.7}};
  facts.cells.assign(6, cell_of(1.225));
  const auto source = estimate_source(facts);
  EXPECT_NEAR(source.open_circuit.si(), 12.45, 1e-9);
  EXPECT_THAT(source.open_circuit_from, HasSubstr("1.225"));
  expect_note(source, "surface-charge");
}

TEST(BatterySource, AnEarlyRestAloneIsUsedButNeverAboveAFullBattery) {
  auto facts = starting_battery();
  facts.rest = RestFact{Voltage{13.2}, Time{1 * hour}, Temperature{26.7}};
  const auto source = estimate_source(facts);
  EXPECT_NEAR(source.open_circuit.si(), 12.73, 1e-9);
  expect_note(source, "surface-charge");
}

TEST(BatterySource, AnAgmIsRestedAfterThreeHours) {
  auto facts = starting_battery();
  facts.chemistry = Chemistry::agm;
  facts.rest = RestFact{Voltage{12.6}, Time{3 * hour}, Temperature{26.7}};
  const auto source = estimate_source(facts);
  EXPECT_TRUE(source.notes.empty());
  EXPECT_NEAR(source.charge.percent(), 75, 1e-9);
}

TEST(BatterySource, ReadingsWithAChargerOnAreRefused) {
  auto facts = starting_battery();
  facts.rest = RestFact{Voltage{14.2}, Time{8 * hour}, {}, true};
  facts.load_test = LoadTestFact{Voltage{14.2}, Current{300}, Voltage{12.6}, {}, {}, true};
  const auto source = estimate_source(facts);
  expect_note(source, "charger-on");
  EXPECT_NEAR(source.open_circuit.si(), 12.65, 0.01);
  EXPECT_NEAR(source.resistance.si(), 0.005, 1e-9);
  EXPECT_FALSE(source.resistance_measured);
}

TEST(BatterySource, ALoadTestComesBeforeTheLabelAndKeepsTheSoundValueBesideIt) {
  auto facts = starting_battery();
  facts.load_test = LoadTestFact{Voltage{12.6}, Current{300}, Voltage{9.6}, Time{15}, {}};
  const auto source = estimate_source(facts);
  EXPECT_NEAR(source.resistance.si(), 0.010, 1e-12);
  ASSERT_TRUE(source.sound_resistance);
  EXPECT_NEAR(source.sound_resistance->si(), 0.005, 1e-12);
}

TEST(BatterySource, ALoadTestThatRisesUnderLoadIsPassedOver) {
  auto facts = starting_battery();
  facts.load_test = LoadTestFact{Voltage{12.0}, Current{300}, Voltage{12.3}, Time{15}, {}};
  const auto source = estimate_source(facts);
  expect_note(source, "impossible-load-test");
  EXPECT_NEAR(source.resistance.si(), 0.005, 1e-12);
}

TEST(BatterySource, ALoadTestWithoutBeforeStartsFromTheRestVoltage) {
  auto facts = starting_battery();
  facts.rest = RestFact{Voltage{12.6}, Time{9 * hour}, {}};
  facts.load_test = LoadTestFact{{}, Current{300}, Voltage{11.1}, Time{15}, {}};
  EXPECT_NEAR(estimate_source(facts).resistance.si(), 0.005, 1e-12);
}

TEST(BatterySource, ATesterIsUsedWhereThereIsNoLoadTest) {
  auto facts = starting_battery();
  facts.tester = TesterFact{Current{300}, {}, {}};
  EXPECT_NEAR(estimate_source(facts).resistance.si(), 0.010, 1e-12);
  facts.tester = TesterFact{{}, Resistance{0.004}, {}};
  EXPECT_NEAR(estimate_source(facts).resistance.si(), 0.007, 1e-12);
}

TEST(BatterySource, WithoutAnythingItIsFullAndSaysSo) {
  BatteryFacts facts;
  facts.nominal = Voltage{12};
  const auto source = estimate_source(facts);
  EXPECT_NEAR(source.open_circuit.si(), 12.65, 0.01);
  EXPECT_EQ(source.charge, Fraction{1});
  EXPECT_FALSE(source.sound_resistance);
  EXPECT_GT(source.resistance.si(), 0.001);
  expect_note(source, "size-unknown");
}

TEST(BatterySource, AHalfChargedBatteryHasLowerVoltsAndMoreResistance) {
  auto facts = starting_battery();
  facts.state_of_charge = Fraction{0.5};
  facts.temperature = Temperature{25};
  const auto source = estimate_source(facts);
  EXPECT_NEAR(source.open_circuit.si(), 12.24, 0.005);
  EXPECT_NEAR(source.resistance.si(), 0.005 * 1.2, 1e-12);
}

TEST(BatterySource, AColdBatteryHasMoreResistanceAndFewerVolts) {
  auto warm = starting_battery(), cold = starting_battery();
  warm.temperature = Temperature{25};
  cold.temperature = Temperature{-10};
  EXPECT_LT(estimate_source(cold).open_circuit, estimate_source(warm).open_circuit);
  EXPECT_GT(estimate_source(cold).resistance, estimate_source(warm).resistance);
}

TEST(BatteryFacts, CellsByNominal) {
  EXPECT_EQ(cells_in(Chemistry::flooded, Voltage{6}), 3);
  EXPECT_EQ(cells_in(Chemistry::agm, Voltage{12}), 6);
  EXPECT_EQ(cells_in(Chemistry::flooded, Voltage{2}), 1);
  EXPECT_EQ(cells_in(Chemistry::lfp, Voltage{12}), 4);
  EXPECT_EQ(cells_in(Chemistry::lfp, Voltage{12.8}), 4);
  EXPECT_EQ(cells_in(Chemistry::lfp, Voltage{25.6}), 8);
  EXPECT_EQ(cells_in(Chemistry::lfp, Voltage{48}), 16);
  EXPECT_EQ(cells_in(Chemistry::lfp, Voltage{51.2}), 16);
  EXPECT_EQ(cells_in(Chemistry::lfp, Voltage{3.2}), 1);
}

TEST(BatteryFacts, TemperatureIsThatOfTheLoadTestFirst) {
  BatteryFacts facts;
  EXPECT_EQ(temperature_of(facts), Temperature{25});
  facts.temperature = Temperature{10};
  EXPECT_EQ(temperature_of(facts), Temperature{10});
  facts.cells = {CellFact{{}, {}, Temperature{12}, {}}, CellFact{{}, {}, Temperature{14}, {}}};
  EXPECT_EQ(temperature_of(facts), Temperature{13});
  facts.rest = RestFact{Voltage{12.6}, {}, Temperature{15}};
  EXPECT_EQ(temperature_of(facts), Temperature{15});
  facts.load_test = LoadTestFact{{}, Current{100}, Voltage{11}, {}, Temperature{18}};
  EXPECT_EQ(temperature_of(facts), Temperature{18});
}

TEST(BatteryResistance, ACartBatteryByItsCapacityAndByItsCcaAgree) {
  // common practice: a 6 V cart battery of about 225 Ah has about 650 CCA and 2.3 mΩ
  const auto by_capacity = resistance_of_capacity(Charge{225 * hour}, Chemistry::flooded, Voltage{6});
  const auto by_cca = resistance_of_cca(Current{650}, Voltage{6});
  EXPECT_NEAR(by_capacity.si(), 0.0023, 1e-6);
  EXPECT_NEAR(ratio(by_capacity, by_cca), 1, 0.02);
}

TEST(BatteryResistance, AColdLithiumHasTwiceItsResistanceAtFreezing) {
  EXPECT_DOUBLE_EQ(resistance_by_temperature(Chemistry::lfp, Temperature{0}), 2);
  EXPECT_DOUBLE_EQ(resistance_by_charge(Chemistry::lfp, Fraction{0.3}), 1);
}

}  // namespace
}  // namespace ohmtrail::trade
