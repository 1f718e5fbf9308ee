#include "render/number.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace ohmtrail::render {
namespace {

TEST(Number, ThreeSignificantDigitsAndAPrefix) {
  EXPECT_EQ(volts(0.0123), "12.3\u202FmV");
  EXPECT_EQ(volts(12.345), "12.3\u202FV");
  EXPECT_EQ(amperes(182.4), "182\u202FA");
  EXPECT_EQ(watts(1500), "1.50\u202FkW");
  EXPECT_EQ(ohms(0.00035), "350\u202FµΩ");
  EXPECT_EQ(ohms(-4.1e-3), "\u22124.10\u202FmΩ");
}

TEST(Number, RoundingUpTakesTheNextPrefix) {
  EXPECT_EQ(volts(0.9996), "1.00\u202FV");
  EXPECT_EQ(watts(999.6), "1.00\u202FkW");
  EXPECT_EQ(volts(0.09996), "100\u202FmV");
}

TEST(Number, EdgesOfTheRange) {
  EXPECT_EQ(volts(0), "0\u202FV");
  EXPECT_EQ(volts(1e-12), "0\u202FV");
  EXPECT_EQ(volts(std::nan("")), "–");
  EXPECT_EQ(watts(std::numeric_limits<double>::infinity()), "–");
  EXPECT_EQ(watts(2.5e9), "2500\u202FMW");
}

TEST(Number, VoltsThatStandSomewhereKeepTwoDecimals) {
  EXPECT_EQ(standing_volts(12.345678), "12.35\u202FV");
  EXPECT_EQ(standing_volts(48), "48.00\u202FV");
  EXPECT_EQ(standing_volts(-0.0), "0.00\u202FV");
  EXPECT_EQ(standing_volts(-1e-9), "0.00\u202FV");
}

TEST(Number, SharesAndDegrees) {
  EXPECT_EQ(percent(0.034), "3.4\u202F%");
  EXPECT_EQ(percent(0.97), "97\u202F%");
  EXPECT_EQ(celsius(61.4), "61\u202F°C");
  EXPECT_EQ(plain(7.25), "7.25");
}

}  // namespace
}  // namespace ohmtrail::render
