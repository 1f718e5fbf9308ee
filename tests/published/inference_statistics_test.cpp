// Statistics of the inference against the outside.
// Chi-square: NIST/SEMATECH e-Handbook of Statistical Methods, section 1.3.6.7.4, upper critical values (from
// memory: the 0.05 and 0.01 columns for 1, 5, 10, 20, 50 and 100 degrees of freedom). Three-bus estimation:
// from memory: Wood and Wollenberg, Power Generation, Operation, and Control, chapter on state estimation,
// three flow readings of 62, 6 and 37 MW with errors of 1 MW; angles 0.02857 and −0.09429 rad.
#include <gtest/gtest.h>

#include <boost/math/distributions/chi_squared.hpp>

#include "diagnose/infer/linear_fit.hpp"

namespace ohmtrail::diagnose::inference {
namespace {

struct Critical {
  int degrees;
  double five_percent, one_percent;
};

class ChiSquare : public testing::TestWithParam<Critical> {};

TEST_P(ChiSquare, UpperCriticalValues) {
  const boost::math::chi_squared distribution(GetParam().degrees);
  EXPECT_NEAR(quantile(complement(distribution, 0.05)), GetParam().five_percent, 6e-4);
  EXPECT_NEAR(quantile(complement(distribution, 0.01)), GetParam().one_percent, 6e-4);
  EXPECT_NEAR(cdf(complement(distribution, GetParam().five_percent)), 0.05, 2e-5);
}

INSTANTIATE_TEST_SUITE_P(Table, ChiSquare,
                         testing::Values(Critical{1, 3.841, 6.635}, Critical{5, 11.070, 15.086},
                                         Critical{10, 18.307, 23.209}, Critical{20, 31.410, 37.566},
                                         Critical{50, 67.505, 76.154}, Critical{100, 124.342, 135.807}));

// Flow from i to j is (angle i − angle j) / reactance; angle 3 is the reference. Per unit of 100 MW, errors
// 0.01.
TEST(StateEstimation, ThreeBusesThreeFlows) {
  const double prior = 1e3;  // radians: no knowledge
  Eigen::MatrixXd flows(3, 2);
  flows << 1 / 0.2, -1 / 0.2, 1 / 0.4, 0, 0, -1 / 0.25;
  const Eigen::Vector3d read(0.62, 0.06, 0.37);
  const LinearFit fit = fit_linear(prior / 0.01 * flows, read / 0.01, true);
  EXPECT_NEAR(prior * fit.mean[3], 0.028571, 1e-6);
  EXPECT_NEAR(prior * fit.mean[4], -0.094286, 1e-6);
  EXPECT_NEAR(fit.chi_square, 2.14, 0.005);
}

}  // namespace
}  // namespace ohmtrail::diagnose::inference
