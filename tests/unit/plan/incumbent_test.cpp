#include "plan/incumbent.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace ohmtrail::plan {
namespace {

/// Two runs with three candidates each of 1, 2 and 4 kg. The judge refuses what is lighter than `least`.
class IncumbentTest : public ::testing::Test {
 protected:
  IncumbentTest() : space_(two_runs()), best_(space_, judge_) {
    judge_.assess = [this](const Design& design) {
      ++asked_;
      Assessment assessment;
      if (cost(space_, design) < least_) assessment.failure = "too thin";
      return assessment;
    };
    judge_.progress = [this](const Progress& told) { told_.push_back(told); };
  }

  static DesignSpace two_runs() {
    DesignSpace space;
    for (std::size_t k = 0; k < 2; ++k)
      space.runs.push_back(
          {k, {Candidate{0, 1, 1, 0, 0}, Candidate{1, 2, 2, 0, 0}, Candidate{2, 4, 4, 0, 0}}});
    return space;
  }

  double least_ = 3;
  int asked_ = 0;
  std::vector<Progress> told_;
  DesignSpace space_;
  Judge judge_;
  Incumbent best_;
};

TEST_F(IncumbentTest, anything_is_of_use_before_a_design_is_known) {
  EXPECT_TRUE(std::isinf(best_.wanted()));
  EXPECT_FALSE(best_.cutoff());
  EXPECT_FALSE(best_.closed());
}

TEST_F(IncumbentTest, asks_the_judge_only_about_a_cheaper_design) {
  best_.offer({1, 1});
  ASSERT_EQ(best_.design(), (Design{1, 1}));
  best_.offer({2, 2});
  best_.offer({1, 1});
  EXPECT_EQ(asked_, 1);
  best_.offer({0, 0});  // lighter, and refused
  EXPECT_EQ(asked_, 2);
  EXPECT_EQ(best_.design(), (Design{1, 1}));
  best_.offer({0, 1});
  EXPECT_EQ(best_.design(), (Design{0, 1}));
}

TEST_F(IncumbentTest, keeps_the_cheaper_of_accepted_designs) {
  best_.keep({2, 1});
  best_.keep({2, 2});
  EXPECT_EQ(best_.design(), (Design{2, 1}));
  best_.keep({1, 0});
  EXPECT_EQ(best_.design(), (Design{1, 0}));
}

TEST_F(IncumbentTest, closes_when_the_bound_meets_the_design_but_for_rounding) {
  best_.keep({1, 1});
  best_.raise_bound(3.9);
  EXPECT_FALSE(best_.closed());
  best_.raise_bound(4 - 1e-10);
  EXPECT_TRUE(best_.closed());
}

TEST_F(IncumbentTest, a_bound_never_falls) {
  best_.raise_bound(3);
  best_.raise_bound(2);
  EXPECT_EQ(best_.found().bound, 3);
}

TEST_F(IncumbentTest, a_proof_sets_the_bound_to_the_cost) {
  best_.keep({1, 1});
  best_.raise_bound(3);
  const Found proved = best_.proved();
  EXPECT_TRUE(proved.proved);
  EXPECT_EQ(proved.bound, 4);
}

TEST_F(IncumbentTest, a_proof_without_a_design_says_that_none_exists) {
  const Found proved = best_.proved();
  EXPECT_TRUE(proved.proved);
  EXPECT_FALSE(proved.design);
}

TEST_F(IncumbentTest, tells_bound_best_and_rounds) {
  best_.raise_bound(2);
  best_.report();
  best_.keep({1, 0});
  best_.count_round();
  best_.report();
  ASSERT_EQ(told_.size(), 2u);
  EXPECT_EQ(told_[0].bound, 2);
  EXPECT_FALSE(told_[0].best);
  EXPECT_EQ(told_[1].best, 3);
  EXPECT_EQ(told_[1].rounds, 1);
}

}  // namespace
}  // namespace ohmtrail::plan
