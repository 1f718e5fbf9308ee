// FAA AC 43.13-1B Change 1 (2001), chapter 11 section 5: worked examples of wire size and drop, Table 11-9
// (greatest resistance of tinned wire at 20 °C) and the rule for hot wires. All lengths are of the whole
// conductor, out and back. Errors of the printed tables are in misprints_test.cpp.
#include "ohmtrail/trade/ampacity.hpp"
#include "ohmtrail/trade/conductor.hpp"
#include "ohmtrail/trade/gauge.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace ohmtrail::trade {
namespace {

using units::Current;
using units::Length;
using units::Temperature;

constexpr double foot = 0.3048;

struct Table119Row {
  int awg;
  double ohm_per_1000_ft, circular_mils;  ///< greatest resistance; nominal area
};

const Table119Row greatest[] = {
    {22, 16.20, 755},  {20, 9.88, 1216},   {18, 6.23, 1900},   {16, 4.81, 2426},
    {14, 3.06, 3831},  {12, 2.02, 5874},   {10, 1.26, 9354},   {8, 0.70, 16983},
    {6, 0.44, 26818},  {4, 0.28, 42615},   {2, 0.18, 66500},   {1, 0.15, 81700},
    {0, 0.12, 104500}, {-1, 0.09, 133000}, {-2, 0.07, 166500}, {-3, 0.06, 210900},
};

double drop(int number, double feet, double amps) {
  const auto ohm = wire_resistance_at_20C(awg(number), Length{feet * foot}, ConductorKind::tinned_copper);
  return (ohm * Current{amps}).si();
}

// Aircraft wire of 22 to 18 AWG has more copper than its gauge, so the comparison is by area. Limits, not
// values: from 8 AWG up their two decimals alone are worth up to 8 %.
TEST(Table11_9, our_tinned_wire_is_below_its_limits) {
  for (const auto& row : greatest) {
    const auto ohm = wire_resistance_at_20C(awg(row.awg), Length{1000 * foot}, ConductorKind::tinned_copper);
    const double ours = ohm.si() * circular_mils(awg(row.awg).area);
    EXPECT_LT(ours, row.ohm_per_1000_ft * row.circular_mils) << row.awg;
  }
}

struct SizeExample {
  double limit_volts, feet, amps;
  int awg;           ///< printed answer
  int next_smaller;  ///< must not do
};

// Table 11-7 rows 1 to 4, and paragraph 11-67 example 1 (page 11-26). The answers are readings of a chart,
// the next larger even size.
const SizeExample size_examples[] = {
    {1, 107, 20, 6, 8}, {0.5, 90, 20, 4, 6}, {4, 88, 20, 12, 14}, {7, 100, 20, 14, 16}, {1, 50, 20, 8, 10}};

TEST(Table11_7, wire_sizes) {
  for (const auto& example : size_examples) {
    EXPECT_LE(drop(example.awg, example.feet, example.amps), example.limit_volts) << example.awg << " AWG";
    EXPECT_GT(drop(example.next_smaller, example.feet, example.amps), example.limit_volts)
        << example.awg << " AWG";
  }
}

// Table 11-8: longest runs of 10 AWG at 20 A by its chart; the wire in it may resist as much as Table 11-9
// allows (1.26 ohm per 1000 ft, 19 % over ours), so ours stay inside the drop with room.
TEST(Table11_8, longest_runs) {
  const struct { double limit_volts, feet; } examples[] = {{1, 39}, {0.5, 19.5}, {4, 156}, {7, 273}};
  for (const auto& example : examples) {
    EXPECT_LE(drop(10, example.feet, 20), example.limit_volts);
    EXPECT_GT(drop(10, example.feet * 1.26 / 1.0, 20), example.limit_volts);
  }
}

// Paragraph 11-66: L2 = 254.5 L1 / (234.5 + T2) for copper, 258.1 L1 / (238.1 + T2) for aluminium.
TEST(Paragraph11_66, hot_wire_shortens_the_run) {
  for (const double hot : {20.0, 50.0, 105.0, 150.0, 182.0, 200.0}) {
    const double copper = 1 / resistance_factor(ConductorKind::bare_copper, Temperature{hot});
    EXPECT_NEAR(copper, 254.5 / (234.5 + hot), 0.0005) << hot;
    // The circular's aluminium has 0.00387 per kelvin, ours 0.00403: they part by 1.7 % at 200 °C.
    const double aluminium = 1 / resistance_factor(ConductorKind::aluminium, Temperature{hot});
    EXPECT_NEAR(aluminium / (258.1 / (238.1 + hot)), 1, 0.018) << hot;
  }
}

// Paragraph 11-67 example 2, from memory: page 11-28: a 15.5 ft run at 182 °C may be 9.5 ft long.
TEST(Paragraph11_67, derated_length_of_example_2) {
  EXPECT_NEAR(15.5 / resistance_factor(ConductorKind::bare_copper, Temperature{182}), 9.5, 0.05);
}

}  // namespace
}  // namespace ohmtrail::trade
