#include "ohmtrail/trade/battery_charge.hpp"

#include <gtest/gtest.h>

namespace ohmtrail::trade {
namespace {

using namespace units;

constexpr Temperature reference = reference_electrolyte_temperature;

TEST(BatteryCharge, RestedVoltsThereAndBackAgain) {
  for (const auto chemistry : {Chemistry::flooded, Chemistry::agm, Chemistry::gel, Chemistry::lfp})
    for (const double charge : {0.0, 0.1, 0.25, 0.4, 0.6, 0.83, 0.97})
      for (const double celsius : {-15.0, 5.0, 26.7, 40.0}) {
        const Temperature battery{celsius};
        const auto volts = rested_cell(chemistry, Fraction{charge}, battery);
        EXPECT_NEAR(charge_at_rest(chemistry, volts, battery).of_one(), charge, 1e-9);
      }
}

TEST(BatteryCharge, RisesWithVoltsAndWithGravity) {
  double last = -1;
  for (double volts = 1.9; volts < 2.2; volts += 0.01) {
    const double charge = charge_at_rest(Chemistry::flooded, Voltage{volts}, reference).of_one();
    EXPECT_GE(charge, last);
    last = charge;
  }
  EXPECT_EQ(last, 1);
  EXPECT_LT(cell_volts_at_gravity(1.15), cell_volts_at_gravity(1.16));
}

TEST(BatteryCharge, TheSameRestVoltsMeanMoreChargeInTheCold) {
  const Voltage cell{12.4 / 6};
  EXPECT_GT(charge_at_rest(Chemistry::flooded, cell, Temperature{-10}).of_one(),
            charge_at_rest(Chemistry::flooded, cell, reference).of_one());
}

TEST(BatteryCharge, ALithiumCellAtRestSaysLittle) {
  const Voltage doubt{0.02};
  const auto lithium = charge_range_at_rest(Chemistry::lfp, Voltage{3.30}, reference, doubt);
  EXPECT_GT(lithium.most.of_one() - lithium.least.of_one(), 0.3);
  const auto lead = charge_range_at_rest(Chemistry::flooded, Voltage{2.04}, reference, Voltage{0.005});
  EXPECT_LT(lead.most.of_one() - lead.least.of_one(), 0.1);
}

TEST(BatteryCharge, AFullLithiumRestsAtTheTopOfItsPlateau) {
  EXPECT_NEAR(rested_cell(Chemistry::lfp, Fraction{1}, reference).si(), 3.3511, 1e-9);
  EXPECT_NEAR(rested_cell(Chemistry::lfp, Fraction{1}, reference).si() * 4, 13.4, 0.01);
}

TEST(BatteryCharge, GravityBeyondTheTableKeepsTheDifferenceOfItsEnd) {
  EXPECT_NEAR((cell_volts_at_gravity(1.285) - cell_volts_at_gravity(1.265)).si(), 0.020, 1e-12);
  EXPECT_NEAR((cell_volts_at_gravity(1.120) - cell_volts_at_gravity(1.100)).si(), 0.020, 1e-12);
}

TEST(BatteryCharge, BothHydrometerScalesAgreeOnTheirSlope) {
  const double hot =
      gravity_at_reference(1.25, Temperature{46.7}) - gravity_at_reference(1.25, Temperature{26.7});
  const double on_other =
      gravity_at_20_celsius(1.25, Temperature{40}) - gravity_at_20_celsius(1.25, Temperature{20});
  EXPECT_NEAR(hot, 0.0144, 1e-12);
  EXPECT_NEAR(on_other, 0.0140, 1e-12);
}

}  // namespace
}  // namespace ohmtrail::trade
