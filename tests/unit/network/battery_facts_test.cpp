#include "ohmtrail/network/battery_facts.hpp"

#include <gtest/gtest.h>

namespace ohmtrail::network {
namespace {

using namespace units;

netlist::Battery tested_battery() {
  netlist::Battery battery;
  battery.nominal = Voltage{6};
  battery.chemistry = trade::Chemistry::gel;
  battery.capacity = Charge{180 * 3600.0};
  battery.cca = Current{500};
  battery.state_of_charge = Fraction{0.8};
  battery.checks.rest = netlist::RestCheck{Voltage{6.3}, Time{7200}, Temperature{20}, true};
  battery.checks.load_test =
      netlist::LoadTest{Voltage{6.25}, Current{250}, Voltage{5.6}, Time{15}, Temperature{18}, true};
  battery.checks.tester = netlist::TesterCheck{Current{480}, Resistance{0.003}, Temperature{19}};
  battery.checks.cells = {{1.26, Voltage{2.1}, Temperature{22}, netlist::ElectrolyteLevel::dry}, {}};
  return battery;
}

TEST(BatteryFacts, LabelComesAcross) {
  const auto facts = battery_facts(tested_battery(), Temperature{15});
  EXPECT_EQ(facts.nominal, Voltage{6});
  EXPECT_EQ(facts.chemistry, trade::Chemistry::gel);
  EXPECT_EQ(facts.capacity, Charge{180 * 3600.0});
  EXPECT_EQ(facts.cca, Current{500});
  EXPECT_EQ(facts.state_of_charge, Fraction{0.8});
  EXPECT_EQ(facts.temperature, Temperature{15});
  EXPECT_FALSE(facts.emf || facts.resistance);
}

TEST(BatteryFacts, ChecksComeAcrossWithTheirChargerFlag) {
  const auto facts = battery_facts(tested_battery(), Temperature{15});
  ASSERT_TRUE(facts.rest && facts.load_test && facts.tester);
  EXPECT_EQ(facts.rest->rested, Time{7200});
  EXPECT_TRUE(facts.rest->charging);
  EXPECT_EQ(facts.load_test->before, Voltage{6.25});
  EXPECT_EQ(facts.load_test->duration, Time{15});
  EXPECT_TRUE(facts.load_test->charging);
  EXPECT_EQ(facts.tester->resistance, Resistance{0.003});
}

TEST(BatteryFacts, EveryLevelOfACell) {
  auto battery = tested_battery();
  battery.checks.cells.clear();
  for (const auto level : {netlist::ElectrolyteLevel::above, netlist::ElectrolyteLevel::at,
                           netlist::ElectrolyteLevel::below, netlist::ElectrolyteLevel::dry})
    battery.checks.cells.push_back({{}, {}, {}, level});
  battery.checks.cells.emplace_back();
  const auto cells = battery_facts(battery, Temperature{15}).cells;
  ASSERT_EQ(cells.size(), 5u);
  EXPECT_EQ(cells[0].level, trade::CellLevel::above);
  EXPECT_EQ(cells[1].level, trade::CellLevel::at);
  EXPECT_EQ(cells[2].level, trade::CellLevel::below);
  EXPECT_EQ(cells[3].level, trade::CellLevel::dry);
  EXPECT_FALSE(cells[4].level);
}

}  // namespace
}  // namespace ohmtrail::network
