#include "ohmtrail/trade/battery_short.hpp"

#include <gtest/gtest.h>

namespace ohmtrail::trade {
namespace {

using units::Charge;
using units::Current;
using units::Resistance;
using units::Voltage;

BatteryFacts starting_battery() {
  BatteryFacts facts;
  facts.nominal = Voltage{12};
  facts.cca = Current{600};
  return facts;
}

/// 3/CCA = 5 mΩ over seconds (common practice), a third of it ohmic; full 12.72 V.
TEST(BatteryShort, AThirdOfWhatTheLabelImplies) {
  const auto found = short_circuit(starting_battery());
  EXPECT_NEAR(found.resistance.si(), 0.005 / 3, 1e-9);
  EXPECT_NEAR(found.emf.si(), 12.72, 1e-9);
  EXPECT_NEAR(found.current().si(), 7632, 1);
  EXPECT_FALSE(found.from.empty());
}

TEST(BatteryShort, AWornBatteryIsReplacedByAGoodOne) {
  auto facts = starting_battery();
  facts.resistance = Resistance{0.02};
  EXPECT_NEAR(short_circuit(facts).resistance.si(), 0.005 / 3, 1e-9);
}

TEST(BatteryShort, LessThanTheLabelImpliesIsBelieved) {
  auto facts = starting_battery();
  facts.resistance = Resistance{0.003};
  EXPECT_NEAR(short_circuit(facts).resistance.si(), 0.001, 1e-9);
}

TEST(BatteryShort, ATestersResistanceIsOhmicAsItStands) {
  auto facts = starting_battery();
  facts.tester = TesterFact{};
  facts.tester->resistance = Resistance{0.0028};
  const auto found = short_circuit(facts);
  EXPECT_NEAR(found.resistance.si(), 0.0028, 1e-9);
  EXPECT_EQ(found.from, "the tester's reading");
}

/// A discharged battery is charged tomorrow.
TEST(BatteryShort, TheBankIsFull) {
  auto facts = starting_battery();
  facts.emf = Voltage{11.5};
  EXPECT_NEAR(short_circuit(facts).emf.si(), 12.72, 1e-9);
}

TEST(BatteryShort, LithiumFromItsCellsWhateverTheLabelSays) {
  BatteryFacts facts;
  facts.nominal = Voltage{12.8};
  facts.chemistry = Chemistry::lfp;
  facts.capacity = Charge{200 * 3600.0};
  facts.resistance = Resistance{0.04};
  const auto found = short_circuit(facts);
  EXPECT_NEAR(found.resistance.si(), 4 * 0.0002, 1e-12);
  EXPECT_NEAR(found.current().si(), 17000, 1);
}

TEST(BatteryShort, KnowsSomethingOfABatteryWithoutALabel) {
  BatteryFacts facts;
  facts.nominal = Voltage{12};
  EXPECT_GT(short_circuit(facts).current().si(), 500);
}

}  // namespace
}  // namespace ohmtrail::trade
