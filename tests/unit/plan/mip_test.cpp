#include "plan/mip.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <random>

#include "support/random_cases.hpp"

namespace ohmtrail::plan {
namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr double seconds = 20;
using Status = MipSolution::Status;

/// Choose at least `least` of weight as cheaply as can be.
struct Cover {
  std::vector<double> cost, weight;
  double least = 0;

  [[nodiscard]] Mip mip() const {
    Mip program;
    std::vector<Term> terms;
    for (std::size_t k = 0; k < cost.size(); ++k) terms.push_back({program.add_binary(cost[k]), weight[k]});
    program.add_row(terms, least, infinity);
    return program;
  }

  /// By trying every choice; infinite where none will do.
  [[nodiscard]] double cheapest() const {
    double best = infinity;
    for (unsigned choice = 0; choice < 1U << cost.size(); ++choice) {
      double sum = 0, heavy = 0;
      for (std::size_t k = 0; k < cost.size(); ++k)
        if ((choice >> k & 1U) != 0) sum += cost[k], heavy += weight[k];
      if (heavy >= least) best = std::min(best, sum);
    }
    return best;
  }
};

Cover random_cover(std::mt19937& engine) {
  std::uniform_int_distribution<int> whole(1, 40);
  Cover cover;
  for (int k = 0; k < 9; ++k) {
    cover.cost.push_back(whole(engine));
    cover.weight.push_back(whole(engine));
    cover.least += cover.weight.back() / 2;
  }
  return cover;
}

TEST(Mip, FindsWhatTryingEveryChoiceFinds) {
  std::mt19937 engine(5);
  for (int turn = 0; turn < test::random_cases(20); ++turn) {
    const Cover cover = random_cover(engine);
    const MipSolution found = cover.mip().solve(seconds);
    ASSERT_EQ(found.status, Status::optimal);
    EXPECT_NEAR(found.objective, cover.cheapest(), 1e-6);
    EXPECT_NEAR(found.bound, found.objective, 1e-6) << "proved";
    double cost = 0;
    for (std::size_t k = 0; k < cover.cost.size(); ++k) {
      EXPECT_NEAR(found.value[k], std::round(found.value[k]), 1e-6);
      cost += cover.cost[k] * found.value[k];
    }
    EXPECT_NEAR(cost, found.objective, 1e-6);
  }
}

TEST(Mip, TheRelaxationIsNeverAboveIt) {
  std::mt19937 engine(6);
  for (int turn = 0; turn < test::random_cases(20); ++turn) {
    const Cover cover = random_cover(engine);
    const auto relaxed = cover.mip().relax();
    ASSERT_TRUE(relaxed);
    EXPECT_LE(relaxed->objective, cover.cheapest() + 1e-9);
  }
}

/// A reduced cost says what the objective rises at least when a column is moved off its bound.
TEST(Mip, ReducedCostsBoundWhatForcingAColumnCosts) {
  std::mt19937 engine(8);
  for (int turn = 0; turn < test::random_cases(20); ++turn) {
    const Cover cover = random_cover(engine);
    const auto relaxed = cover.mip().relax();
    ASSERT_TRUE(relaxed);
    for (int k = 0; k < static_cast<int>(cover.cost.size()); ++k) {
      const auto index = static_cast<std::size_t>(k);
      const bool out = relaxed->value[index] < 1e-9;
      if (!out && relaxed->value[index] < 1 - 1e-9) continue;
      Mip forced = cover.mip();
      forced.fix(k, out ? 1 : 0);
      const auto moved = forced.relax();
      if (!moved) continue;  // without it the weight is not reached
      EXPECT_GE(moved->objective, relaxed->objective + std::abs(relaxed->reduced_cost[index]) - 1e-6);
    }
  }
}

TEST(Mip, AColumnThatIsFixedStaysSo) {
  const Cover cover{{1, 2, 4}, {1, 1, 1}, 2};
  Mip program = cover.mip();
  program.fix(0, 0);
  const MipSolution found = program.solve(seconds);
  EXPECT_NEAR(found.objective, 6, 1e-9);
  EXPECT_NEAR(found.value[0], 0, 1e-9);
}

TEST(Mip, WhatCannotBeIsInfeasible) {
  const Cover cover{{1, 2}, {1, 1}, 3};
  const MipSolution found = cover.mip().solve(seconds);
  EXPECT_EQ(found.status, Status::infeasible);
  EXPECT_TRUE(found.value.empty());
  EXPECT_FALSE(cover.mip().relax());
}

TEST(Mip, BelowTheCutoffNothingIsLeftOfADearerOne) {
  const Cover cover{{3, 5}, {1, 1}, 1};
  EXPECT_NEAR(cover.mip().solve(seconds, 4).objective, 3, 1e-9);
  EXPECT_TRUE(cover.mip().solve(seconds, 2.5).value.empty());
}

/// min 2x + y over x + y ≥ 3, x ≤ 1.5 from below, y ≤ 2: y as far as it goes, x the rest.
TEST(Mip, ContinuousColumnsKeepTheirRanges) {
  Mip program;
  const int x = program.add_continuous(-1, 1.5, 2), y = program.add_continuous(0, 2, 1);
  program.add_row({{x, 1}, {y, 1}}, 3, infinity);
  const auto relaxed = program.relax();
  ASSERT_TRUE(relaxed);
  EXPECT_NEAR(relaxed->objective, 4, 1e-9);
  EXPECT_NEAR(relaxed->value[0], 1, 1e-9);
  EXPECT_NEAR(relaxed->value[1], 2, 1e-9);
}

TEST(Mip, ARowMayBeBoundedOnEitherSideOrBoth) {
  Mip program;
  const int x = program.add_continuous(-10, 10, 1), y = program.add_continuous(-10, 10, -1);
  program.add_row({{x, 1}}, -4, 4);
  program.add_row({{y, 1}}, -infinity, 3);
  const MipSolution found = program.solve(seconds);
  ASSERT_EQ(found.status, Status::optimal);
  EXPECT_NEAR(found.objective, -4 - 3, 1e-9);
}

}  // namespace
}  // namespace ohmtrail::plan
