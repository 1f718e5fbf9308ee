// 46 CFR 183.340(p), Table (2015 annual edition; the same cells in 46 CFR 120.340(p)): wire sizes for 12 V
// circuits and 10 % drop, by current and one-way length. The rule: circular mils = K · I · L · 2 / e with K
// = 10.75 ohm circular mil per foot and e the permitted drop in volts, then the next larger size; and never a
// size whose breaker would be too small (15, 20 and 30 A on 14, 12 and 10 AWG), which governs two of the 55
// cells.
#include "ohmtrail/trade/conductor.hpp"
#include "ohmtrail/trade/gauge.hpp"
#include "published/cells_46cfr183.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace ohmtrail::trade {
namespace {

const int sizes[] = {14, 12, 10, 8, 6, 4};

double breaker_limit(int awg) {
  if (awg == 14) return 15;
  if (awg == 12) return 20;
  return awg == 10 ? 30 : 1000;
}

int size_for(double k, double amps, double feet) {
  const double wanted = k * amps * feet * 2 / 1.2;
  for (const int size : sizes)
    if (circular_mils(awg_area(size)) >= wanted && breaker_limit(size) >= amps) return size;
  return -99;
}

int cells_met(double k) {
  int met = 0;
  for (const auto& cell : test::cells_46cfr183)
    met += size_for(k, cell.amperes, cell.feet) == cell.awg ? 1 : 0;
  return met;
}

TEST(Cfr183_340, all_55_cells_follow_from_its_rule) {
  ASSERT_EQ(std::size(test::cells_46cfr183), 55u);
  for (const auto& cell : test::cells_46cfr183)
    EXPECT_EQ(size_for(10.75, cell.amperes, cell.feet), cell.awg)
        << cell.amperes << " A over " << cell.feet << " ft";
}

TEST(Cfr183_340, the_two_ways_of_the_circuit_are_in_it) {
  EXPECT_LT(cells_met(10.75 / 2), 20);
}

double our_k(double celsius) {
  const auto ohm = wire_resistance_at_20C(awg(10), units::Length{0.3048}, ConductorKind::bare_copper);
  return ohm.si() * circular_mils(awg_area(10)) *
         resistance_factor(ConductorKind::bare_copper, units::Temperature{celsius});
}

// The resistance that we give a stranded plain wire is the rule's K at 24 °C: its constant is no worst case.
TEST(Cfr183_340, its_constant_is_our_stranded_copper_at_24_C) {
  EXPECT_NEAR(our_k(24.1), 10.75, 0.005);
}

// Any K from 10.50 to 10.95 gives the same cells, so a plain wire anywhere from 20 to 28 °C meets the table.
TEST(Cfr183_340, our_own_resistance_gives_the_same_sizes) {
  for (const double celsius : {20.0, 22.0, 24.0, 26.0, 28.0})
    EXPECT_EQ(cells_met(our_k(celsius)), 55) << celsius;
}

}  // namespace
}  // namespace ohmtrail::trade
