#include "solve/factor.hpp"

#include <gtest/gtest.h>

#include <Eigen/Dense>
#include <algorithm>
#include <random>

namespace ohmtrail::solve {
namespace {

/// A tree of unknowns whose first stands on a known one, with some branches more that close rings.
struct Wiring {
  int unknowns = 0;
  BranchEnds ends;
  std::vector<double> conductance;
  Elimination order;
};

Wiring random_wiring(int unknowns, int rings, std::mt19937& random) {
  std::uniform_real_distribution<double> siemens(0.5, 2000);
  Wiring wiring{unknowns, {{0, -1}}, {}, {}};
  const auto any = [&](int below) { return static_cast<int>(random() % static_cast<unsigned>(below)); };
  for (int u = 1; u < unknowns; ++u) wiring.ends.emplace_back(any(u), u);
  for (int k = 0; k < rings; ++k) wiring.ends.emplace_back(any(unknowns), any(unknowns));
  std::shuffle(wiring.ends.begin(), wiring.ends.end(), random);
  for (std::size_t b = 0; b < wiring.ends.size(); ++b) wiring.conductance.push_back(siemens(random));
  wiring.order = elimination_order(unknowns, wiring.ends);
  for (auto& [from, to] : wiring.ends) {
    if (from >= 0) from = wiring.order.place[static_cast<std::size_t>(from)];
    if (to >= 0) to = wiring.order.place[static_cast<std::size_t>(to)];
  }
  return wiring;
}

std::vector<char> entries_of(const Wiring& wiring) {
  std::vector<char> has_entry;
  for (const auto& [from, to] : wiring.ends) has_entry.push_back(from != to);
  return has_entry;
}

Eigen::VectorXd between(const Wiring& wiring, std::size_t branch) {
  Eigen::VectorXd ends = Eigen::VectorXd::Zero(wiring.unknowns);
  if (wiring.ends[branch].first >= 0) ends[wiring.ends[branch].first] += 1;
  if (wiring.ends[branch].second >= 0) ends[wiring.ends[branch].second] -= 1;
  return ends;
}

Eigen::MatrixXd dense(const Wiring& wiring) {
  Eigen::MatrixXd matrix = Eigen::MatrixXd::Zero(wiring.unknowns, wiring.unknowns);
  for (std::size_t b = 0; b < wiring.ends.size(); ++b)
    matrix += wiring.conductance[b] * between(wiring, b) * between(wiring, b).transpose();
  return matrix;
}

class FactorOfRings : public testing::TestWithParam<int> {
 protected:
  void SetUp() override {
    std::mt19937 random(17);
    wiring_ = random_wiring(60, GetParam(), random);
    factor_.analyze(wiring_.order, wiring_.ends, entries_of(wiring_));
    ASSERT_TRUE(factor_.compute(wiring_.ends, wiring_.conductance));
    inverse_ = dense(wiring_).inverse();
  }

  Wiring wiring_;
  Factor factor_;
  Eigen::MatrixXd inverse_;
};

TEST_P(FactorOfRings, SolvesAsTheDenseInverseDoes) {
  const Eigen::VectorXd right = Eigen::VectorXd::LinSpaced(60, -3, 4);
  const Eigen::VectorXd expected = inverse_ * right;
  EXPECT_LT((factor_.solve(right) - expected).norm(), 1e-10 * expected.norm());
}

TEST_P(FactorOfRings, ResistanceSeenIsTheDenseInverseBetweenTheEnds) {
  const auto seen = factor_.resistance_seen(wiring_.ends, entries_of(wiring_));
  for (std::size_t b = 0; b < seen.size(); ++b) {
    const Eigen::VectorXd ends = between(wiring_, b);
    EXPECT_NEAR(seen[b], ends.dot(inverse_ * ends), 1e-10 * inverse_.norm()) << b;
  }
}

TEST_P(FactorOfRings, PivotsMultiplyToTheDeterminant) {
  double logarithm = 0;
  for (int u = 0; u < 60; ++u) {
    ASSERT_GT(factor_.pivot(u), 0);
    logarithm += std::log(factor_.pivot(u));
  }
  EXPECT_NEAR(logarithm, dense(wiring_).llt().matrixLLT().diagonal().array().log().sum() * 2, 1e-9);
}

TEST_P(FactorOfRings, OtherValuesTakeTheSamePattern) {
  for (double& g : wiring_.conductance) g = 1 / g;
  ASSERT_TRUE(factor_.compute(wiring_.ends, wiring_.conductance));
  const Eigen::VectorXd right = Eigen::VectorXd::Ones(60);
  const Eigen::VectorXd expected = dense(wiring_).inverse() * right;
  EXPECT_LT((factor_.solve(right) - expected).norm(), 1e-10 * expected.norm());
}

INSTANTIATE_TEST_SUITE_P(Rings, FactorOfRings, testing::Values(0, 1, 5, 80));

TEST(Factor, ATreeIsAllLeaves) {
  std::mt19937 random(4);
  EXPECT_EQ(random_wiring(40, 0, random).order.leaves, 40);
}

TEST(Factor, ANegativeConductanceCanMakeAPivotNegative) {
  Factor factor;
  const BranchEnds ends{{0, 1}, {1, -1}, {0, -1}};
  factor.analyze(elimination_order(2, {{0, 1}}), ends, {1, 1, 1});
  ASSERT_TRUE(factor.compute(ends, {1, 2, -3}));
  EXPECT_LT(std::min(factor.pivot(0), factor.pivot(1)), 0);
}

TEST(Factor, WhatStandsOnNothingHasAPivotOfZero) {
  Factor factor;
  const BranchEnds ends{{0, 1}};
  factor.analyze(elimination_order(2, ends), ends, {1});
  EXPECT_FALSE(factor.compute(ends, {4}));
}

TEST(Factor, NoUnknowns) {
  Factor factor;
  factor.analyze(elimination_order(0, {}), {{-1, -1}}, {0});
  EXPECT_TRUE(factor.compute({{-1, -1}}, {3}));
  EXPECT_EQ(factor.solve(Eigen::VectorXd()).size(), 0);
}

}  // namespace
}  // namespace ohmtrail::solve
