#include "ohmtrail/trade/meter.hpp"

#include <gtest/gtest.h>

namespace ohmtrail::trade {
namespace {

using units::Current;
using units::Resistance;
using units::Temperature;
using units::Voltage;

// Common practice: 12.65 V on a 6000-count hand meter is ±0.083 V.
TEST(UsualAccuracy, of_a_battery_voltage) {
  EXPECT_NEAR(usual_accuracy(Voltage{12.65}).bound(12.65), 0.083, 0.0005);
}

TEST(UsualAccuracy, takes_the_range_the_reading_falls_in) {
  EXPECT_EQ(usual_accuracy(Voltage{0.142}).last_digit, 1e-4);
  EXPECT_EQ(usual_accuracy(Voltage{-0.142}).last_digit, 1e-4);
  EXPECT_EQ(usual_accuracy(Voltage{5.9}).last_digit, 1e-3);
  EXPECT_EQ(usual_accuracy(Voltage{6.1}).last_digit, 1e-2);
  EXPECT_EQ(usual_accuracy(Voltage{900}).last_digit, 1e-1);
  EXPECT_EQ(usual_accuracy(Current{50}).last_digit, 1e-2);
  EXPECT_EQ(usual_accuracy(Current{500}).last_digit, 1e-1);
  EXPECT_EQ(usual_accuracy(Resistance{1e-3}).last_digit, 1e-6);
}

TEST(UsualAccuracy, infrared_is_2_degrees_or_2_percent_whichever_is_more) {
  EXPECT_NEAR(usual_accuracy(Temperature{40}).bound(40), 2, 1e-12);
  EXPECT_NEAR(usual_accuracy(Temperature{150}).bound(150), 3, 1e-12);
}

TEST(Bound, does_not_fall_below_its_counts) {
  EXPECT_NEAR(usual_accuracy(Voltage{0}).bound(0), 2e-4, 1e-12);
}

}  // namespace
}  // namespace ohmtrail::trade
