#include "ohmtrail/diagnose/temperature_in_words.hpp"

#include <gtest/gtest.h>

namespace ohmtrail::diagnose {
namespace {

TEST(TemperatureInWords, WholeDegreesUpToWhatThingsStand) {
  EXPECT_EQ(temperature_in_words(61.4), "61 °C");
  EXPECT_EQ(temperature_in_words(-18), "-18 °C");
  EXPECT_EQ(temperature_in_words(250), "250 °C");
}

TEST(TemperatureInWords, BeyondThatAFigureSaysNothing) {
  EXPECT_EQ(temperature_in_words(251), "over 250 °C");
  EXPECT_EQ(temperature_in_words(1e6), "over 250 °C");
}

TEST(TemperatureInWords, ShortForTables) {
  EXPECT_EQ(temperature_in_short(61.4), "61 °C");
  EXPECT_EQ(temperature_in_short(545), "> 250 °C");
}

TEST(TemperatureInWords, WhatItReaches) {
  EXPECT_EQ(reaches_in_words(140), "about 140 °C");
  EXPECT_EQ(reaches_in_words(545), "over 250 °C by the numbers, so it would char before it got there");
}

}  // namespace
}  // namespace ohmtrail::diagnose
