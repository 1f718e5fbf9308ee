#include "diagnose/next/places.hpp"

#include <gtest/gtest.h>

#include <numeric>
#include <set>

#include "diagnose/infer/posterior.hpp"
#include "ohmtrail/diagnose/next.hpp"
#include "ohmtrail/solve/case_solution.hpp"
#include "support/simulated_survey.hpp"

namespace ohmtrail::diagnose::next {
namespace {

std::vector<double> like(std::size_t count) {
  return std::vector<double>(count, 0.03);
}

TEST(EqualSteps, LikeWeightsAreTakenEvenly) {
  const EqualSteps steps = at_equal_steps(like(100), 10);
  ASSERT_EQ(steps.at.size(), 10U);
  for (std::size_t k = 1; k < steps.at.size(); ++k) EXPECT_EQ(steps.at[k] - steps.at[k - 1], 10U);
  EXPECT_NEAR(steps.step, 0.3, 1e-12);
}

TEST(EqualSteps, TheHeavyAreNeverLeftOut) {
  std::vector<double> weights = like(100);
  weights[17] = weights[18] = 5;
  const EqualSteps steps = at_equal_steps(weights, 10);
  const std::set<std::size_t> taken(steps.at.begin(), steps.at.end());
  EXPECT_TRUE(taken.contains(17) && taken.contains(18));
  EXPECT_GE(taken.size(), 9U) << "and the others still share what is left";
}

TEST(EqualSteps, MoreRoomThanWeightsTakesAll) {
  EXPECT_EQ(at_equal_steps(like(5), 10).at.size(), 5U);
  EXPECT_TRUE(at_equal_steps({}, 10).at.empty());
  EXPECT_TRUE(at_equal_steps(like(5), 0).at.empty());
}

TEST(EqualSteps, NoGapHoldsMoreThanTwoSteps) {
  test::SeededRandom random(9);
  for (int k = 0; k < 50; ++k) {
    std::vector<double> weights;
    for (int j = 0; j < 200; ++j) weights.push_back(std::exp(random.normal(0, 2)));
    const EqualSteps steps = at_equal_steps(weights, 24);
    EXPECT_LE(steps.at.size(), 24U);
    double gap = 0;
    const std::set<std::size_t> taken(steps.at.begin(), steps.at.end());
    for (std::size_t j = 0; j < weights.size(); ++j) {
      gap = taken.contains(j) ? 0 : gap + weights[j];
      EXPECT_LE(gap, 2 * steps.step) << k;
    }
  }
}

netlist::System large(test::Shape shape) {
  test::SurveyOptions options;
  options.layout = {shape, test::LoadKind::power, 200, false, 8};
  options.readings = test::Readings::loads_only;
  return test::simulate(7, options).system;
}

// Where the system is large the choice is coarser, bounded, and says so.
class LargeSystem : public testing::TestWithParam<test::Shape> {};

TEST_P(LargeSystem, IsSearchedCoarselyAndSaysSo) {
  netlist::System system = large(GetParam());
  system.readings.clear();
  const auto result = next_reading(system);
  ASSERT_TRUE(result);
  EXPECT_TRUE(result->coarse);
  EXPECT_NE(result->verdict_text.find("A large system: 64 of"), std::string::npos) << result->verdict_text;
  EXPECT_NE(result->verdict_text.find("bits that are open"), std::string::npos);
  ASSERT_GE(result->options.size(), 4U);
  EXPECT_EQ(result->options[0].purpose, Purpose::opening);
  EXPECT_TRUE(result->options[1].red.starts_with("bank")) << "the posts are always among the points";
  EXPECT_TRUE(result->options[2].red.starts_with("load"));
}

TEST_P(LargeSystem, PointsAreSpreadOverAllOfIt) {
  const netlist::System system = large(GetParam());
  inference::Survey survey = inference::build_survey(system);
  const auto posterior = inference::find_posterior(std::move(survey), {});
  ASSERT_TRUE(posterior);
  const auto solved = solve::solve_case(network::build(system, system.cases[1]));
  ASSERT_TRUE(solved);
  const Places places = places_to_touch(system, *posterior, solved->network, solved->solution, 64);
  EXPECT_TRUE(places.coarse);
  EXPECT_LE(places.points.size(), 64U);
  EXPECT_GT(places.within_reach, 150U);
  for (int branch = 0; branch < 8; ++branch) {
    int inside = 0;
    for (const int p : places.points) {
      const std::string& name = solved->network.points[static_cast<std::size_t>(p)];
      inside += name.find("branch" + std::to_string(branch)) != std::string::npos ? 1 : 0;
    }
    EXPECT_GE(inside, 1) << branch;
  }
}

INSTANTIATE_TEST_SUITE_P(All, LargeSystem,
                         testing::Values(test::Shape::tree, test::Shape::ring, test::Shape::two_banks));

// At their ratings nothing could feed these loads: the case is still searched, and it is said.
TEST(CaseThatCannotBeFed, IsSearchedWithSmallerLoads) {
  test::SurveyOptions options;
  options.layout.elements = 30;
  options.readings = test::Readings::loads_only;
  netlist::System system = test::simulate(11, options).system;
  system.readings.clear();
  for (netlist::Load& load : system.loads) load.takes = units::Power{60000};
  const auto result = next_reading(system);
  ASSERT_TRUE(result);
  EXPECT_EQ(result->verdict, Verdict::go_on);
  EXPECT_NE(result->verdict_text.find("loads are taken smaller"), std::string::npos) << result->verdict_text;
  EXPECT_EQ(result->options.front().in_case, "under load");
}

}  // namespace
}  // namespace ohmtrail::diagnose::next
