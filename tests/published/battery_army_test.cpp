// US Army technical manuals on batteries.
//   TM 5-4210-230-14&P-1 (truck service manual): Table 2 gravity, charge and freezing; Table 3 cranking
//   power; Table 5 minimum volts of the half-CCA load test, 12 V and 6 V. TM 5-3805-262-20, para 5-9: rounded
//   open-circuit voltages. TM 10-6140-200-14: capacity of traction batteries when cold.
#include <gtest/gtest.h>

#include "ohmtrail/trade/battery_capacity.hpp"
#include "ohmtrail/trade/battery_charge.hpp"
#include "ohmtrail/trade/battery_limits.hpp"
#include "ohmtrail/trade/battery_load_test.hpp"
#include "ohmtrail/trade/battery_resistance.hpp"

namespace ohmtrail::trade {
namespace {

using namespace units;

constexpr Temperature reference = reference_electrolyte_temperature;

struct Table5Row {
  double celsius, volts_of_12, volts_of_6;
};

// TM 5-4210-230-14&P-1, Table 5, all rows.
constexpr Table5Row table_5[] = {{21, 9.6, 4.80}, {16, 9.5, 4.75}, {10, 9.4, 4.70},  {4, 9.3, 4.60},
                                 {-1, 9.1, 4.50}, {-7, 8.9, 4.40}, {-12, 8.7, 4.30}, {-18, 8.5, 4.20}};

TEST(ArmyLoadTest, Table5BothColumns) {
  for (const auto& row : table_5) {
    EXPECT_NEAR(load_test_minimum(Voltage{12}, Temperature{row.celsius}).si(), row.volts_of_12, 1e-9);
    EXPECT_NEAR(load_test_minimum(Voltage{6}, Temperature{row.celsius}).si(), row.volts_of_6, 1e-9);
  }
}

// The manual prints both scales: 70, 60, … 0 °F belong to the rounded Celsius of the table.
TEST(ArmyLoadTest, Table5InFahrenheitWithinItsRounding) {
  const double fahrenheit[] = {70, 60, 50, 40, 30, 20, 10, 0};
  for (std::size_t i = 0; i < std::size(table_5); ++i)
    EXPECT_NEAR((fahrenheit[i] - 32) * 5 / 9, table_5[i].celsius, 0.5);
}

// Trap: from 4 °C down the 6 V column is NOT half the 12 V column.
TEST(ArmyLoadTest, TheSixVoltColumnIsItsOwn) {
  for (const auto& row : table_5) {
    const auto half = load_test_minimum(Voltage{12}, Temperature{row.celsius}) / 2;
    const auto own = load_test_minimum(Voltage{6}, Temperature{row.celsius});
    if (row.celsius >= 10)
      EXPECT_NEAR(own.si(), half.si(), 1e-9);
    else
      EXPECT_NEAR((half - own).si(), 0.05, 1e-9);
  }
}

// Trap: one passenger-car service manual (2005) prints 8.0 V at −18 °C; every other table has 8.5 V.
TEST(ArmyLoadTest, TheMisprintedColdRowIsNotUsed) {
  EXPECT_GT(load_test_minimum(Voltage{12}, Temperature{-18}), Voltage{8.4});
}

struct Table2Row {
  double charge, gravity, volts_of_12, freezes;
};

// TM 5-4210-230-14&P-1, Table 2; volts of the matching 1.265 open-circuit table.
constexpr Table2Row table_2[] = {{1.00, 1.265, 12.65, -59.5},
                                 {0.75, 1.225, 12.45, -37.2},
                                 {0.50, 1.190, 12.24, -26.1},
                                 {0.25, 1.155, 12.06, -15.0},
                                 {0.00, 1.120, 11.89, -9.4}};

TEST(ArmyGravity, Table2EveryColumn) {
  for (const auto& row : table_2) {
    EXPECT_NEAR(charge_at_gravity(row.gravity).of_one(), row.charge, 1e-9);
    EXPECT_NEAR(gravity_at_charge(Fraction{row.charge}), row.gravity, 1e-9);
    EXPECT_NEAR(cell_volts_at_gravity(row.gravity).si() * 6, row.volts_of_12, 1e-9);
    EXPECT_NEAR(rested_cell(Chemistry::flooded, Fraction{row.charge}, reference).si() * 6, row.volts_of_12,
                1e-9);
    EXPECT_NEAR(freezing_point(row.gravity).celsius(), row.freezes, 1e-9);
  }
}

// Trap: volts = gravity + k has no single k. It is 0.843 when full and 0.862 when empty.
TEST(ArmyGravity, TheDifferenceOfVoltsAndGravityDrifts) {
  const double implied[] = {0.8433, 0.8500, 0.8500, 0.8550, 0.8617};
  for (std::size_t i = 0; i < std::size(table_2); ++i)
    EXPECT_NEAR(cell_volts_at_gravity(table_2[i].gravity).si() - table_2[i].gravity, implied[i], 5e-5);
}

// TM 5-3805-262-20, para 5-9: 12.6, 12.4, 12.2, 12.0, 11.7 V for 100 … 0 %.
TEST(ArmyVoltage, TheRoundedTableAgreesWithinATenthOfCharge) {
  const double volts[] = {12.6, 12.4, 12.2, 12.0};
  const double charge[] = {1.00, 0.75, 0.50, 0.25};
  for (int i = 0; i < 4; ++i)
    EXPECT_NEAR(charge_at_rest(Chemistry::flooded, Voltage{volts[i] / 6}, reference).of_one(), charge[i],
                0.1);
  EXPECT_EQ(charge_at_rest(Chemistry::flooded, Voltage{11.7 / 6}, reference).of_one(), 0);
}

// Table 3: cranking power 100 % at 26.7 °C, 65 % at 0 °C, 40 % at −17.8 °C. Its inverse is an upper bound of
// the resistance ratio; the sag that Table 5 allows is a lower one.
TEST(ArmyCrankingPower, TheResistanceRatioLiesBetweenBothDerivedSeries) {
  const double at_0 = resistance_by_temperature(Chemistry::flooded, Temperature{0});
  const double at_18 = resistance_by_temperature(Chemistry::flooded, Temperature{-18});
  EXPECT_GT(at_0, 1.13);
  EXPECT_LT(at_0, 1 / 0.65);
  EXPECT_GT(at_18, 1.32);
  EXPECT_LT(at_18, 1 / 0.40);
}

// TM 10-6140-200-14, para on low temperatures: 100 % at 25 °C, 75 % at 0 °C, 40 % at −17.8 °C (6 h rate).
TEST(ArmyTraction, CapacityWhenCold) {
  EXPECT_NEAR(capacity_by_temperature(Chemistry::flooded, Temperature{25}).percent(), 100, 1e-9);
  EXPECT_NEAR(capacity_by_temperature(Chemistry::flooded, Temperature{0}).percent(), 75, 1e-9);
  EXPECT_NEAR(capacity_by_temperature(Chemistry::flooded, Temperature{-17.8}).percent(), 40, 1e-9);
}

// Gates: TM 5-3805-281-24-2 (1.225), TM 5-3805-262-20 (12.4 V), TM 9-6140-200-14 para 4-7 (0.025),
// TM 5-3805-281-24-2 (0.050), TM 5-3740-214-14 (1.150).
TEST(ArmyLimits, GatesAndSpreads) {
  EXPECT_EQ(least_gravity_before_load_test, 1.225);
  EXPECT_NEAR(least_cell_before_load_test.si() * 6, 12.4, 1e-12);
  EXPECT_EQ(gravity_spread_uneven, 0.025);
  EXPECT_EQ(gravity_spread_bad, 0.050);
  EXPECT_EQ(gravity_cell_bad, 1.150);
}

}  // namespace
}  // namespace ohmtrail::trade
