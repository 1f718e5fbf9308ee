#include <gtest/gtest.h>

#include <boost/math/distributions/normal.hpp>

#include "diagnose/infer/mixture.hpp"

namespace ohmtrail::diagnose::inference {
namespace {

TEST(Mixture, QuantilesOfOneNormal) {
  Mixture one;
  one.add(3, 2, 0.25);
  const boost::math::normal expected(2, 0.5);
  for (const double share : {0.05, 0.5, 0.95})
    EXPECT_NEAR(one.quantile(share), quantile(expected, share), 1e-5);
}

TEST(Mixture, QuantileInvertsTheCumulative) {
  Mixture two;
  two.add(0.93, 0, 1e-4);
  two.add(0.07, 3, 1.44);
  for (const double share : {0.05, 0.5, 0.9, 0.94, 0.95, 0.99}) {
    EXPECT_NEAR(two.cumulative(two.quantile(share)), share, 2e-6);
  }
}

TEST(Mixture, CondensingKeepsMeanAndVariance) {
  Mixture many;
  for (int k = 0; k < 30; ++k) many.add(1.0 + k, 0.1 * k, 0.01 * (k + 1));
  const double mean = many.mean(), variance = many.variance();
  many.condense(4);
  EXPECT_NEAR(many.mean(), mean, 1e-12);
  EXPECT_NEAR(many.variance(), variance, 1e-12);
}

TEST(Mixture, WeightlessPartsAreLeftOut) {
  Mixture none;
  none.add(0, 1, 1);
  EXPECT_TRUE(none.empty());
}

}  // namespace
}  // namespace ohmtrail::diagnose::inference
