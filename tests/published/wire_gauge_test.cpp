// Diameters, areas and resistances of solid copper wire by American wire gauge.
//
// ASTM B258: d = 0.127 mm · 92^((36 − n)/39); the formula is what the standard rounds.
// ASTM B33-04 Table 1: areas in mm² and, from 17 to 9 and from 1/0 up, diameters in mils.
// NBS Handbook 100 (1966) Table 5: resistance at 20 °C; from memory, as are the diameters of the other sizes.
// It computes from diameters rounded to 0.1 mil and prints three or four figures, hence the tolerances.
// Floyd, Electric Circuit Fundamentals, wire table: resistance at 20 °C in an older rounding.
#include "ohmtrail/trade/conductor.hpp"
#include "ohmtrail/trade/gauge.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace ohmtrail::trade {
namespace {

using units::Length;

struct Handbook100Row {
  int awg;
  double mils;                 ///< diameter
  double ohm_per_1000_ft;      ///< Handbook 100
  double ohm_per_1000_ft_old;  ///< Floyd
  double mm2;                  ///< ASTM B33; 0: not listed
};

const Handbook100Row handbook_100[] = {
    {22, 25.3, 16.2, 16.14, 0},
    {21, 28.5, 12.8, 12.8, 0},
    {20, 32.0, 10.1, 10.15, 0},
    {19, 35.9, 8.05, 8.051, 0},
    {18, 40.3, 6.39, 6.385, 0},
    {17, 45.3, 5.05, 5.064, 1.0398},
    {16, 50.8, 4.02, 4.016, 1.3076},
    {15, 57.1, 3.18, 3.184, 1.6521},
    {14, 64.1, 2.52, 2.525, 2.0820},
    {13, 72.0, 2.00, 2.003, 2.6268},
    {12, 80.8, 1.59, 1.588, 3.3081},
    {11, 90.7, 1.26, 1.26, 4.1684},
    {10, 101.9, 0.9988, 0.9989, 5.2615},
    {9, 114.4, 0.7925, 0.7921, 6.6315},
    {8, 128.5, 0.6281, 0.6282, 0},
    {7, 144.3, 0.4981, 0.4982, 0},
    {6, 162.0, 0.3952, 0.3951, 0},
    {5, 181.9, 0.3134, 0.3133, 0},
    {4, 204.3, 0.2485, 0.2485, 0},
    {3, 229.4, 0.1971, 0.197, 0},
    {2, 257.6, 0.1563, 0.1563, 0},
    {1, 289.3, 0.1239, 0.124, 0},
    {0, 324.9, 0.09825, 0.0983, 53.4880},
    {-1, 364.8, 0.07793, 0.078, 67.4321},
    {-2, 409.6, 0.06182, 0.0618, 85.0114},
    {-3, 460.0, 0.04901, 0.049, 107.2193},
};

double ohm_per_1000_ft(int number) {
  return wire_resistance_at_20C(awg(number), Length{304.8}, ConductorKind::bare_copper, Stranding::solid)
      .si();
}

TEST(AstmB258, diameters_round_to_the_printed_mils) {
  for (const auto& row : handbook_100)
    EXPECT_NEAR(awg_diameter(row.awg).si() / 25.4e-6, row.mils, 0.0501) << row.awg;
}

TEST(AstmB258, four_sizes_stand_at_their_defining_values) {
  EXPECT_NEAR(awg_diameter(36).si(), 0.127e-3, 1e-12);  // 5 mil by definition
  EXPECT_NEAR(awg_diameter(-3).si(), 11.684e-3, 1e-9);  // 460 mil by definition
  EXPECT_NEAR(circular_mils(awg_area(-3)), 211600, 1e-3);
  EXPECT_NEAR(circular_mils(awg_area(10)), 10383, 0.5);  // ASTM B258
}

TEST(AstmB33, areas_agree) {
  int checked = 0;
  for (const auto& row : handbook_100) {
    if (row.mm2 == 0) continue;
    EXPECT_NEAR(awg(row.awg).area.si() * 1e6 / row.mm2, 1, 0.0021)
        << row.awg;  // diameters rounded to 0.1 mil
    ++checked;
  }
  EXPECT_EQ(checked, 13);
}

TEST(Handbook100, resistances_agree) {
  for (const auto& row : handbook_100) {
    // The handbook's own departures from its formula: 0.05 % from 11 AWG up, 0.52 % for the thinnest.
    const double tolerance = row.awg <= 10 ? 0.0006 : 0.0053;
    EXPECT_NEAR(ohm_per_1000_ft(row.awg) / row.ohm_per_1000_ft, 1, tolerance) << row.awg;
  }
}

TEST(OlderWireTable, resistances_agree) {
  for (const auto& row : handbook_100)
    EXPECT_NEAR(ohm_per_1000_ft(row.awg) / row.ohm_per_1000_ft_old, 1, 0.0011) << row.awg;
}

TEST(Iec60028, annealed_copper_is_10_371_ohm_circular_mil_per_foot) {
  EXPECT_NEAR(ohm_per_1000_ft(-3) * 211600 / 1000, 10.371, 0.0005);
}

}  // namespace
}  // namespace ohmtrail::trade
