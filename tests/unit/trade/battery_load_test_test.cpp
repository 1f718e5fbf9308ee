#include "ohmtrail/trade/battery_load_test.hpp"

#include <gtest/gtest.h>

namespace ohmtrail::trade {
namespace {

using namespace units;

BatteryFacts tested(double amps, double volts, double seconds) {
  BatteryFacts facts;
  facts.nominal = Voltage{12};
  facts.cca = Current{600};
  facts.load_test =
      LoadTestFact{Voltage{12.6}, Current{amps}, Voltage{volts}, Time{seconds}, Temperature{21}};
  return facts;
}

TEST(LoadTest, StraightLinesBetweenRows) {
  EXPECT_NEAR(load_test_minimum(Voltage{12}, Temperature{18.5}).si(), 9.55, 1e-9);
  EXPECT_NEAR(load_test_minimum(Voltage{6}, Temperature{7}).si(), 4.65, 1e-9);
}

TEST(LoadTest, OtherNominalsInProportionToTwelveVolts) {
  EXPECT_NEAR(load_test_minimum(Voltage{8}, Temperature{21}).si(), 6.4, 1e-9);
  EXPECT_NEAR(load_test_minimum(Voltage{24}, Temperature{-18}).si(), 17.0, 1e-9);
}

TEST(LoadTest, BeyondTheTableTheEndRowHolds) {
  EXPECT_NEAR(load_test_minimum(Voltage{12}, Temperature{35}).si(), 9.6, 1e-9);
  EXPECT_NEAR(load_test_minimum(Voltage{12}, Temperature{-30}).si(), 8.5, 1e-9);
  EXPECT_FALSE(load_test_table_reaches(Temperature{-18.1}));
  EXPECT_TRUE(load_test_table_reaches(Temperature{-18}));
}

TEST(LoadTest, AtTheProperLoadAndHoldNothingIsScaled) {
  const auto result = judge_load_test(tested(300, 9.6, 15), Voltage{12.6});
  ASSERT_TRUE(result);
  EXPECT_NEAR(result->projected.si(), 9.6, 1e-12);
  EXPECT_TRUE(result->passed);
  EXPECT_FALSE(result->load_scaled || result->hold_scaled || result->weak_evidence);
}

TEST(LoadTest, AHundredthBelowTheMinimumFails) {
  EXPECT_FALSE(judge_load_test(tested(300, 9.59, 15), Voltage{12.6})->passed);
}

TEST(LoadTest, ASmallerLoadIsScaledUp) {
  const auto result = judge_load_test(tested(150, 11.1, 15), Voltage{12.6});
  EXPECT_NEAR(result->projected.si(), 9.6, 1e-12);
  EXPECT_TRUE(result->load_scaled);
  EXPECT_FALSE(result->weak_evidence);
  EXPECT_TRUE(judge_load_test(tested(100, 11.6, 15), Voltage{12.6})->weak_evidence);
}

TEST(LoadTest, AShortHoldIsScaledUpByFivePercentAHalving) {
  EXPECT_NEAR(sag_growth_to_full_hold(Time{7.5}), 1.05, 1e-12);
  EXPECT_NEAR(sag_growth_to_full_hold(Time{3.75}), 1.10, 1e-12);
  EXPECT_EQ(sag_growth_to_full_hold(Time{15}), 1);
  EXPECT_EQ(sag_growth_to_full_hold(Time{30}), 1);
  const auto result = judge_load_test(tested(300, 9.7, 7.5), Voltage{12.6});
  EXPECT_NEAR(result->projected.si(), 12.6 - 2.9 * 1.05, 1e-12);
  EXPECT_TRUE(result->hold_scaled);
  EXPECT_FALSE(result->passed);
}

TEST(LoadTest, WithoutSecondsTheFullHoldIsAssumed) {
  auto facts = tested(300, 10, 15);
  facts.load_test->duration.reset();
  EXPECT_TRUE(judge_load_test(facts, Voltage{12.6})->hold_assumed);
}

TEST(LoadTest, WithoutBeforeTheOpenCircuitVoltageStands) {
  auto facts = tested(300, 10, 15);
  facts.load_test->before.reset();
  EXPECT_EQ(judge_load_test(facts, Voltage{12.4})->before, Voltage{12.4});
}

TEST(LoadTest, WithoutCcaFourTimesTheCapacityStandsIn) {
  auto facts = tested(200, 10.6, 15);
  facts.cca.reset();
  EXPECT_FALSE(judge_load_test(facts, Voltage{12.6}));
  facts.capacity = Charge{100 * 3600.0};
  const auto result = judge_load_test(facts, Voltage{12.6});
  ASSERT_TRUE(result);
  EXPECT_NEAR(result->proper.amps.si(), 200, 1e-9);
}

TEST(LoadTest, NeverOnLithiumNorWithAChargerOnNorWhereVoltsRise) {
  auto lithium = tested(300, 11, 15);
  lithium.chemistry = Chemistry::lfp;
  EXPECT_FALSE(judge_load_test(lithium, Voltage{13}));
  auto charging = tested(300, 11, 15);
  charging.load_test->charging = true;
  EXPECT_FALSE(judge_load_test(charging, Voltage{13}));
  EXPECT_FALSE(judge_load_test(tested(300, 12.8, 15), Voltage{12.6}));
}

}  // namespace
}  // namespace ohmtrail::trade
