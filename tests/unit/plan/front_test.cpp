#include "plan/front.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include <limits>
#include <random>

#include "support/random_cases.hpp"

namespace ohmtrail::plan {
namespace {

Label label(double tolerance, double cost, double sag = 0, double lag = 0) {
  return {tolerance, cost, -1, -1, sag, lag};
}

Front random_front(std::mt19937& engine, int count) {
  std::uniform_real_distribution<double> share(0, 1);
  Front front;
  for (int k = 0; k < count; ++k)
    front.push_back(label(share(engine), 10 * share(engine), share(engine), share(engine)));
  return front;
}

/// The least cost that tolerates a drop, from every label one by one.
double least_cost(const Front& labels, double drop) {
  double least = std::numeric_limits<double>::infinity();
  for (const Label& one : labels)
    if (one.tolerance >= drop) least = std::min(least, one.cost);
  return least;
}

TEST(Front, KeepsWhatIsCheapestForSomeDrop) {
  Front front{label(0.3, 5), label(0.1, 1), label(0.2, 6), label(0.2, 2)};
  keep_unbeaten(front, 10);
  ASSERT_EQ(front.size(), 3U);
  EXPECT_EQ(front[0].cost, 1);
  EXPECT_EQ(front[1].cost, 2);
  EXPECT_EQ(front[2].tolerance, 0.3);
}

TEST(Front, WhatGoesLeavesItsAdvantageToWhatBeatsIt) {
  Front front{label(0.3, 1, 5, 1), label(0.2, 2, 3, 4)};
  keep_unbeaten(front, 10);
  ASSERT_EQ(front.size(), 1U);
  EXPECT_EQ(front[0].sag, 3);
  EXPECT_EQ(front[0].lag, 4);
}

TEST(Front, AnswersAsEveryLabelWould) {
  std::mt19937 engine(7);
  for (int turn = 0; turn < test::random_cases(50); ++turn) {
    const Front all = random_front(engine, 40);
    Front front = all;
    keep_unbeaten(front, 100);
    for (double drop = 0; drop < 1; drop += 0.05) {
      const int found = cheapest(front, drop);
      const double expected = least_cost(all, drop);
      ASSERT_EQ(found < 0, std::isinf(expected));
      if (found >= 0) {
        EXPECT_EQ(front[static_cast<std::size_t>(found)].cost, expected);
      }
    }
  }
}

/// Thinned, it promises too much but never too little: cost, sag below and lag above those of any label
/// there.
TEST(Front, ThinnedItNeverPromisesTooLittle) {
  std::mt19937 engine(11);
  for (int turn = 0; turn < test::random_cases(50); ++turn) {
    const Front all = random_front(engine, 400);
    Front front = all;
    keep_unbeaten(front, 5);
    EXPECT_LE(front.size(), 5U);
    for (const Label& one : all) {
      const bool covered = std::any_of(front.begin(), front.end(), [&](const Label& kept) {
        return kept.tolerance >= one.tolerance && kept.cost <= one.cost && kept.sag <= one.sag &&
               kept.lag >= one.lag;
      });
      EXPECT_TRUE(covered);
    }
  }
}

TEST(Front, PlacesAtOnePointAddTheirCosts) {
  const Front a{label(0.1, 1), label(0.3, 4)}, b{label(0.2, 10), label(0.4, 20)};
  const Front sum = sum_of({&a, &b});
  ASSERT_EQ(sum.size(), 3U);
  EXPECT_EQ(sum[0].tolerance, 0.1);
  EXPECT_EQ(sum[0].cost, 11);
  EXPECT_EQ(sum[1].tolerance, 0.2);
  EXPECT_EQ(sum[1].cost, 14);
  EXPECT_EQ(sum[2].tolerance, 0.3);
  EXPECT_EQ(sum[2].cost, 24);
}

/// Every pair of labels stands at or above a label of the sum.
TEST(Front, ASumCoversEveryPair) {
  std::mt19937 engine(3);
  for (int turn = 0; turn < test::random_cases(50); ++turn) {
    Front a = random_front(engine, 12), b = random_front(engine, 12);
    keep_unbeaten(a, 100), keep_unbeaten(b, 100);
    const Front sum = sum_of({&a, &b});
    for (const Label& x : a)
      for (const Label& y : b) {
        const bool covered = std::any_of(sum.begin(), sum.end(), [&](const Label& one) {
          return one.tolerance >= std::min(x.tolerance, y.tolerance) && one.cost <= x.cost + y.cost &&
                 one.sag <= x.sag + y.sag && one.lag >= x.lag + y.lag;
        });
        EXPECT_TRUE(covered);
      }
  }
}

TEST(Front, NothingToAddCostsNothing) {
  const Front sum = sum_of({});
  ASSERT_EQ(sum.size(), 1U);
  EXPECT_EQ(sum[0].cost, 0);
  const Front none;
  EXPECT_TRUE(sum_of({&none}).empty());
}

}  // namespace
}  // namespace ohmtrail::plan
