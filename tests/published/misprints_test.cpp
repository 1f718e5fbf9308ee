// Numbers that their publications print wrongly. None is a check value anywhere; here it is shown, for each,
// that what we compute is the number meant and not the one printed.
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

// FAA-H-8083 wire table: 1/0 at 65 °C is printed 0.166 ohm per 1000 ft and should read 0.116.
TEST(Misprint, aircraft_handbook_1_0_at_65_C) {
  const auto cold =
      wire_resistance_at_20C(awg(0), Length{304.8}, ConductorKind::bare_copper, Stranding::solid);
  const double ours = cold.si() * resistance_factor(ConductorKind::bare_copper, Temperature{65});
  EXPECT_NEAR(ours, 0.116, 0.0005);
  EXPECT_GT(std::abs(ours - 0.166), 0.04);
}

// 46 CFR 183.340(p) prints K = 3.28 for lengths in metres: that is 10.75 divided by 3.28, where 10.75
// times 3.28 (35.27 ohm circular mil per metre) was meant.
TEST(Misprint, cfr_183_340_metric_constant) {
  const auto ohm = wire_resistance_at_20C(awg(10), Length{1}, ConductorKind::bare_copper);
  const double per_metre = ohm.si() * circular_mils(awg_area(10));
  EXPECT_NEAR(per_metre / 35.27, 1, 0.02);
  EXPECT_GT(per_metre / 3.28, 10);
}

// FAA AC 43.13-1B Table 11-8 row 2: 0.00126 ohm/ft · 19.5 ft · 20 A is printed as 0.366 V; the product is
// 0.491. Table 11-7 row 3: 0.00202 ohm/ft · 88 ft · 20 A is printed as 3.60 V; the product is 3.555. Table
// 11-7 row 2: No. 4 at 0.00028 ohm/ft · 90 ft · 20 A breaks its own limit of 0.5 V by 0.8 %.
TEST(Misprint, aircraft_circular_products) {
  const auto drop = [](double ohm_per_foot, double feet, double amps) {
    const units::ResistancePerLength per_length{ohm_per_foot / 0.3048};
    return (per_length * Length{feet * 0.3048} * Current{amps}).si();
  };
  EXPECT_NEAR(drop(0.00126, 19.5, 20), 0.4914, 1e-9);
  EXPECT_NEAR(drop(0.00202, 88, 20), 3.5552, 1e-9);
  EXPECT_NEAR(drop(0.00028, 90, 20), 0.5040, 1e-9);
}

// FAA AC 43.13-1B page 11-22, from memory: T2 = T1 + (TR − T1) · (I2 / Imax)^0.5. Heat goes with the square
// of the current: at half the allowable current a wire has a quarter of the rise, not 71 % of it.
TEST(Misprint, aircraft_circular_temperature_estimate) {
  const Ampacity rating = ampacity({awg(-1)});
  const Temperature half = wire_temperature(rating, Temperature{30}, 0.5 * rating.amps);
  EXPECT_NEAR((half - Temperature{30}).si() / rating.rise_at_rated.si(), 0.25, 1e-12);
}

// A reprint of the SAE areas sets 19730 circular mils against gauge 8 and 14810 against 10: its rows slipped.
TEST(Misprint, sae_rows_shifted) {
  EXPECT_NEAR(circular_mils(sae(8).area), 14810, 1e-6);
  EXPECT_NEAR(circular_mils(sae(10).area), 9343, 1e-6);
}

// ISO 10133:2000 Annex A, from memory, computes drop with 0.0164 ohm mm²/m: copper at 7.6 °C. We do not.
TEST(Misprint, iso_10133_drop_constant_is_below_copper_at_20_C) {
  const double ours = wire_resistance_at_20C(metric(35), Length{1}, ConductorKind::bare_copper).si() * 35;
  EXPECT_GT(ours, 0.0172);
}

}  // namespace
}  // namespace ohmtrail::trade
