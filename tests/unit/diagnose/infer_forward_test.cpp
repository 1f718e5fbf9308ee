#include <gtest/gtest.h>

#include "diagnose/infer/build.hpp"
#include "diagnose/infer/forward.hpp"
#include "diagnose/infer/optimum.hpp"
#include "support/simulated_survey.hpp"

namespace ohmtrail::diagnose::inference {
namespace {

class ForwardOf : public testing::TestWithParam<std::pair<test::Shape, test::LoadKind>> {};

// Every derivative of every reading by every unknown, meters and drift included, against a central
// difference.
TEST_P(ForwardOf, DerivativesEqualCentralDifferences) {
  test::SurveyOptions options;
  options.layout.shape = GetParam().first;
  options.layout.loads = GetParam().second;
  options.layout.elements = 22;
  options.layout.sound_from_tables = true;
  auto simulated = test::simulate(5, options);
  simulated.system.readings[2].minutes = 0;
  simulated.system.readings[3].minutes = 30;
  simulated.system.readings.push_back(
      {netlist::OhmsReading{units::Resistance{5e-4}, "feed"}, "", "hand", {}, {}, {}});
  const Survey survey = build_survey(simulated.system);
  Forward forward(survey.model);
  Eigen::VectorXd value = values_at(survey.model, prior_means(survey.model, {}));
  for (Eigen::Index p = 0; p < value.size(); ++p) value[p] += value[p] == 0 ? 1e-3 : 0;
  const auto here = forward.linearise(value);
  ASSERT_TRUE(here);
  for (Eigen::Index p = 0; p < value.size(); ++p) {
    const double step = value[p] * 1e-4;
    Eigen::VectorXd up = value, down = value;
    up[p] += step;
    down[p] -= step;
    const auto above = forward.predict(up), below = forward.predict(down);
    ASSERT_TRUE(above && below);
    const Eigen::VectorXd difference = (*above - *below) / (2 * step);
    for (Eigen::Index i = 0; i < difference.size(); ++i) {
      const double scale = std::max(1.0, here->by_value.row(i).cwiseAbs().maxCoeff());
      EXPECT_NEAR(here->by_value(i, p), difference[i], 2e-5 * scale)
          << survey.model.parameters[static_cast<std::size_t>(p)].id << " reading " << i;
    }
  }
}

INSTANTIATE_TEST_SUITE_P(All, ForwardOf,
                         testing::Values(std::pair{test::Shape::tree, test::LoadKind::current},
                                         std::pair{test::Shape::ring, test::LoadKind::power},
                                         std::pair{test::Shape::two_banks, test::LoadKind::mixed}));

TEST(Forward, PredictsWhatItLinearises) {
  const auto simulated = test::simulate(6, {});
  const Survey survey = build_survey(simulated.system);
  Forward forward(survey.model);
  const Eigen::VectorXd value = values_at(survey.model, prior_means(survey.model, {}));
  const auto linear = forward.linearise(value);
  ASSERT_TRUE(linear);
  EXPECT_LT((*forward.predict(value) - linear->predicted).norm(), 1e-12);
}

}  // namespace
}  // namespace ohmtrail::diagnose::inference
