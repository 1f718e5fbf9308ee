#include <gtest/gtest.h>

#include <limits>
#include <string>

#include "ohmtrail/trade/battery_charge.hpp"
#include "ohmtrail/trade/battery_limits.hpp"
#include "ohmtrail/trade/battery_load_test.hpp"
#include "ohmtrail/trade/battery_resistance.hpp"
#include "ohmtrail/trade/table.hpp"

// What is listed and what is computed with must be the same numbers.
namespace ohmtrail::trade {
namespace {

using namespace units;

double number(const Cell& cell) {
  return std::holds_alternative<double>(cell) ? std::get<double>(cell)
                                              : std::numeric_limits<double>::quiet_NaN();
}
std::string text(const Cell& cell) {
  return std::holds_alternative<std::string>(cell) ? std::get<std::string>(cell) : "";
}

const Table& table(const char* name) {
  const auto* found = find_table(name);
  if (found == nullptr) throw std::runtime_error(name);
  return *found;
}

TEST(BatteryTables, EveryRowSaysHowItIsKnownAndFromWhere) {
  for (const auto* name :
       {"battery-gravity", "battery-gravity-volts", "battery-hydrometer", "battery-rest-temperature",
        "battery-rest-sealed", "battery-rest-lithium", "battery-load-test", "battery-limits",
        "battery-ratings", "battery-conversions", "battery-capacity", "battery-resistance",
        "battery-resistance-factors", "load-behaviour"}) {
    const auto& listed = table(name);
    EXPECT_GE(listed.rows.size(), 9u) << name;
    for (const auto& row : listed.rows) {
      ASSERT_EQ(row.size(), listed.columns.size()) << name;
      EXPECT_FALSE(text(row[row.size() - 1]).empty()) << name;
      EXPECT_FALSE(text(row[row.size() - 2]).empty()) << name;
    }
  }
}

TEST(BatteryTables, GravityAsListedIsGravityAsComputed) {
  int checked = 0;
  for (const auto& row : table("battery-gravity").rows) {
    if (number(row[0]) != 1.265) continue;
    const Fraction charge{number(row[2]) / 100};
    EXPECT_NEAR(gravity_at_charge(charge), number(row[3]), 1e-9);
    EXPECT_NEAR(rested_cell(Chemistry::flooded, charge, reference_electrolyte_temperature).si() * 6,
                number(row[5]), 1e-9);
    EXPECT_NEAR(freezing_point(number(row[3])).celsius(), number(row[6]), 1e-9);
    ++checked;
  }
  EXPECT_EQ(checked, 5);
}

TEST(BatteryTables, LoadTestAsListedIsLoadTestAsComputed) {
  int checked = 0;
  for (const auto& row : table("battery-load-test").rows) {
    if (text(row[0]) != "Table 5") continue;
    EXPECT_NEAR(load_test_minimum(Voltage{12}, Temperature{number(row[2])}).si(), number(row[3]), 1e-9);
    EXPECT_NEAR(load_test_minimum(Voltage{6}, Temperature{number(row[2])}).si(), number(row[4]), 1e-9);
    ++checked;
  }
  EXPECT_EQ(checked, 8);
}

TEST(BatteryTables, EveryRestVoltageAgainstTemperatureIsComputed) {
  int checked = 0;
  for (const auto& row : table("battery-rest-temperature").rows) {
    const Temperature battery{number(row[0])};
    const Fraction charge{number(row[2]) / 100};
    EXPECT_NEAR(rested_cell(Chemistry::flooded, charge, battery).si() * 6, number(row[4]), 1e-9);
    EXPECT_NEAR(rested_cell(Chemistry::gel, charge, battery).si() * 6, number(row[5]), 1e-9);
    EXPECT_NEAR(gravity_at_reference(number(row[3]), battery), gravity_at_charge(charge), 1e-4);
    ++checked;
  }
  EXPECT_EQ(checked, 65);
}

TEST(BatteryTables, TheSealedAndLithiumSetsThatAreComputedWith) {
  int agm = 0, lithium = 0;
  for (const auto& row : table("battery-rest-sealed").rows) {
    if (text(row[0]) != "AGM" || text(row[row.size() - 2]) != "from memory") continue;
    const Fraction charge{number(row[1]) / 100};
    EXPECT_NEAR(rested_cell(Chemistry::agm, charge, reference_electrolyte_temperature).si() * 6,
                number(row[3]), 1e-9);
    ++agm;
  }
  for (const auto& row : table("battery-rest-lithium").rows) {
    if (text(row[0]) != "C/32" || number(row[1]) > 98.4) continue;
    EXPECT_NEAR(rested_cell(Chemistry::lfp, Fraction{number(row[1]) / 100}, Temperature{25}).si(),
                number(row[2]), 1e-9);
    ++lithium;
  }
  EXPECT_EQ(agm, 5);
  EXPECT_EQ(lithium, 8);
}

TEST(BatteryTables, TheChargeFactorsThatAreComputedWith) {
  int checked = 0;
  for (const auto& row : table("battery-resistance-factors").rows) {
    if (text(row[1]) != "soc percent") continue;
    EXPECT_NEAR(resistance_by_charge(Chemistry::flooded, Fraction{number(row[2]) / 100}), number(row[3]),
                1e-9);
    ++checked;
  }
  EXPECT_EQ(checked, 3);
}

TEST(BatteryTables, NothingOfTheirOriginLeaksIntoTheWords) {
  int cells = 0;
  for (const auto& listed : all_tables()) {
    if (listed.name.rfind("battery", 0) != 0) continue;
    for (const auto& row : listed.rows)
      for (const auto& cell : row) {
        EXPECT_EQ(text(cell).find(".csv"), std::string::npos) << text(cell);
        ++cells;
      }
  }
  EXPECT_GT(cells, 100);
}

}  // namespace
}  // namespace ohmtrail::trade
