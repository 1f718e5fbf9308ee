#include "ohmtrail/trade/battery_capacity.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace ohmtrail::trade {
namespace {

using units::Charge;
using units::Current;
using units::Temperature;
using units::Time;

constexpr Charge hundred{100 * 3600.0};  // Ah at the 20 h rate: 5 A
constexpr Chemistry all[] = {Chemistry::flooded, Chemistry::agm, Chemistry::gel, Chemistry::lfp};

TEST(Capacity, AtItsOwnRateABatteryGivesWhatItIsRatedForWhateverTheExponent) {
  for (const double exponent : {1.0, 1.1, 1.25, 1.6}) {
    EXPECT_NEAR(time_to_empty(hundred, Current{5}, exponent).si(), 20 * 3600.0, 1e-6);
    EXPECT_NEAR(capacity_at(hundred, Current{5}, exponent).si(), hundred.si(), 1e-6);
  }
  EXPECT_NEAR(time_to_empty(hundred, Current{10}, 1.2, Time{10 * 3600.0}).si(), 36000, 1e-6) << "10 h rate";
}

TEST(Capacity, AtOtherCurrentsItFollowsPeukert) {
  // C' = C (I20 / I)^(k − 1)
  for (const double amperes : {1.0, 2.5, 20.0, 80.0})
    for (const double exponent : {1.05, 1.25})
      EXPECT_NEAR(capacity_at(hundred, Current{amperes}, exponent).si(),
                  hundred.si() * std::pow(5 / amperes, exponent - 1), 1e-6);
}

TEST(Capacity, WithAnExponentOfOneTheAmpereHoursStayTheSame) {
  EXPECT_NEAR(capacity_at(hundred, Current{100}, 1).si(), hundred.si(), 1e-6);
  EXPECT_NEAR(time_to_empty(hundred, Current{100}, 1).si(), 3600, 1e-9);
}

TEST(Capacity, ExponentsAreOrderedAndAtLeastOne) {
  for (const Chemistry chemistry : all) {
    const PeukertExponent exponent = peukert_exponent(chemistry);
    EXPECT_GE(exponent.least, 1);
    EXPECT_LE(exponent.least, exponent.usual);
    EXPECT_LE(exponent.usual, exponent.most);
  }
  EXPECT_GT(peukert_exponent(Chemistry::flooded).usual, peukert_exponent(Chemistry::agm).usual);
  EXPECT_GT(peukert_exponent(Chemistry::agm).usual, peukert_exponent(Chemistry::lfp).usual);
}

TEST(Capacity, ColdTakesSomeOfItAndNeverGivesAny) {
  for (const Chemistry chemistry : all) {
    double last = 0;
    for (double celsius = -30; celsius <= 60; celsius += 0.5) {
      const double share = capacity_by_temperature(chemistry, Temperature{celsius}).of_one();
      EXPECT_GE(share, last) << celsius;
      EXPECT_GT(share, 0.3) << celsius;
      EXPECT_LT(share, 1.1) << celsius;
      last = share;
    }
    EXPECT_NEAR(capacity_by_temperature(chemistry, Temperature{25}).of_one(), 1, 1e-12);
  }
  EXPECT_EQ(capacity_by_temperature(Chemistry::lfp, Temperature{-20}).of_one(), 1);
}

TEST(Capacity, BetweenTwoRowsLiesOnTheLine) {
  // US Army TM 10-6140-200-14: 75 % at 0 °C, 100 % at 25 °C
  EXPECT_NEAR(capacity_by_temperature(Chemistry::flooded, Temperature{12.5}).of_one(), 0.875, 1e-12);
  EXPECT_NEAR(capacity_by_temperature(Chemistry::gel, Temperature{2.5}).of_one(), 0.86, 1e-12);
}

}  // namespace
}  // namespace ohmtrail::trade
