// FAA-H-8083 series aviation maintenance handbook, figure "American wire gauge for standard annealed solid
// copper wire": resistance per 1000 ft at 25 and 65 °C, three figures. The value of 1/0 at 65 °C is
// misprinted there and no check value; see misprints_test.cpp.
#include "ohmtrail/trade/conductor.hpp"
#include "ohmtrail/trade/gauge.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace ohmtrail::trade {
namespace {

struct WireRow {
  int awg;
  double mils, circular_mils;
  double at_25, at_65;  ///< ohm per 1000 ft; 0: misprinted
};

const WireRow wires[] = {
    {-3, 460.0, 212000, 0.0500, 0.0577}, {-2, 410.0, 168000, 0.0630, 0.0727},
    {-1, 365.0, 133000, 0.0795, 0.0917}, {0, 325.0, 106000, 0.100, 0},
    {1, 289.0, 83700, 0.126, 0.146},     {2, 258.0, 66400, 0.159, 0.184},
    {3, 229.0, 52600, 0.201, 0.232},     {4, 204.0, 41700, 0.253, 0.292},
    {5, 182.0, 33100, 0.319, 0.369},     {6, 162.0, 26300, 0.403, 0.465},
    {7, 144.0, 20800, 0.508, 0.586},     {8, 128.0, 16500, 0.641, 0.739},
    {9, 114.0, 13100, 0.808, 0.932},     {10, 102.0, 10400, 1.02, 1.18},
    {11, 91.0, 8230, 1.28, 1.48},        {12, 81.0, 6530, 1.62, 1.87},
    {13, 72.0, 5180, 2.04, 2.36},        {14, 64.0, 4110, 2.58, 2.97},
    {15, 57.0, 3260, 3.25, 3.75},        {16, 51.0, 2580, 4.09, 4.73},
    {17, 45.0, 2050, 5.16, 5.96},        {18, 40.0, 1620, 6.51, 7.51},
    {19, 36.0, 1290, 8.21, 9.48},        {20, 32.0, 1020, 10.40, 11.90},
    {21, 28.5, 810, 13.10, 15.10},       {22, 25.3, 642, 16.50, 19.00},
};

double ohm_per_1000_ft(int number, double celsius) {
  const auto cold =
      wire_resistance_at_20C(awg(number), units::Length{304.8}, ConductorKind::bare_copper, Stranding::solid);
  return cold.si() * resistance_factor(ConductorKind::bare_copper, units::Temperature{celsius});
}

// The table's own rounding: up to 0.47 % where its last figure is coarse.
TEST(AircraftHandbook, resistances_at_25_C) {
  for (const auto& row : wires) EXPECT_NEAR(ohm_per_1000_ft(row.awg, 25) / row.at_25, 1, 0.0048) << row.awg;
}

TEST(AircraftHandbook, resistances_at_65_C) {
  int checked = 0;
  for (const auto& row : wires) {
    if (row.at_65 == 0) continue;
    EXPECT_NEAR(ohm_per_1000_ft(row.awg, 65) / row.at_65, 1, 0.0048) << row.awg;
    ++checked;
  }
  EXPECT_EQ(checked, 25);
}

TEST(AircraftHandbook, diameters_and_areas) {
  for (const auto& row : wires) {
    EXPECT_NEAR(awg_diameter(row.awg).si() / 25.4e-6, row.mils, row.mils < 30 ? 0.06 : 0.9) << row.awg;
    EXPECT_NEAR(circular_mils(awg_area(row.awg)) / row.circular_mils, 1, 0.005) << row.awg;
  }
}

}  // namespace
}  // namespace ohmtrail::trade
