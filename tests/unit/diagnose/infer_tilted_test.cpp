#include <gtest/gtest.h>

#include <cmath>

#include "diagnose/infer/tilted.hpp"

namespace ohmtrail::diagnose::inference {
namespace {

Parameter resistance(double centre) {
  Parameter out;
  out.centre = centre;
  return out;
}

// Brute force: a fine midpoint rule over twelve standard deviations of the prior.
Tilted by_force(const Parameter& parameter, const Normal& prior, const Cavity& cavity) {
  const int steps = 400000;
  double weight = 0, x1 = 0, x2 = 0, v1 = 0, v2 = 0;
  const double width = 24 * prior.sd / steps;
  for (int k = 0; k < steps; ++k) {
    const double x = prior.mean - 12 * prior.sd + (k + 0.5) * width;
    const double z = (x - prior.mean) / prior.sd, value = parameter.value(x), d = value - cavity.at;
    const double w =
        std::exp(-0.5 * z * z - 0.5 * cavity.precision * d * d) * width / prior.sd / std::sqrt(2 * M_PI);
    weight += w;
    x1 += w * x;
    x2 += w * x * x;
    v1 += w * value;
    v2 += w * value * value;
  }
  x1 /= weight;
  v1 /= weight;
  return {std::log(weight), v1, v2 / weight - v1 * v1, x1, x2 / weight - x1 * x1};
}

void expect_equal(const Tilted& got, const Tilted& expected) {
  EXPECT_NEAR(got.log_integral, expected.log_integral, 2e-3);
  EXPECT_NEAR(got.mean_x, expected.mean_x, 2e-3 * std::sqrt(expected.variance_x) + 1e-9);
  EXPECT_NEAR(got.variance_x, expected.variance_x, 5e-3 * expected.variance_x);
  EXPECT_NEAR(got.mean, expected.mean, 3e-3 * std::sqrt(expected.variance));
}

struct Situation {
  const char* name;
  Normal prior;
  Cavity cavity;
};

class TiltedBy : public testing::TestWithParam<Situation> {};

TEST_P(TiltedBy, EqualsBruteForce) {
  const Situation s = GetParam();
  expect_equal(tilt(resistance(1e-4), s.prior, s.cavity), by_force(resistance(1e-4), s.prior, s.cavity));
}

std::string named(const testing::TestParamInfo<Situation>& situation) {
  std::string name = situation.param.name;
  for (char& c : name) c = std::isalnum(static_cast<unsigned char>(c)) ? c : '_';
  return name;
}

INSTANTIATE_TEST_SUITE_P(All, TiltedBy,
                         testing::Values(Situation{"nothing known", {0, 0.35}, {0, 0}},
                                         Situation{"sharp at the prior", {0, 0.35}, {1.1e-4, 1e13}},
                                         Situation{"sharp far above", {0, 0.35}, {6e-4, 1e12}},
                                         Situation{"vague", {0, 0.35}, {1e-4, 1e8}},
                                         Situation{"fault, sharp", {std::log(12.0), 1.2}, {4e-3, 1e12}},
                                         Situation{
                                             "fault, only bounded above", {std::log(12.0), 1.2}, {0, 1e7}},
                                         Situation{"asked for less than nothing", {0, 0.35}, {-2e-4, 1e9}},
                                         Situation{"between prior and readings", {0, 0.08}, {2.2e-4, 3e9}}),
                         named);

TEST(Tilted, LinearScaleInClosedForm) {
  Parameter volts;
  volts.scale = Scale::linear;
  volts.centre = 12.6;
  const Normal prior{0, 0.03};
  expect_equal(tilt(volts, prior, {12.65, 400}), by_force(volts, prior, {12.65, 400}));
}

TEST(TiltedWrong, DensityIntegratesToOne) {
  // Over ±10⁴ in equal steps of asinh.
  double sum = 0;
  const double top = std::asinh(1e4), step = top / 100000;
  for (double u = -top + step / 2; u < top; u += step)
    sum += std::exp(log_wrong_density(std::sinh(u))) * std::cosh(u) * step;
  EXPECT_NEAR(sum, 1, 1e-3);
}

TEST(TiltedWrong, SharpCavityGivesItsDensity) {
  const Cavity cavity{20, 1e6};
  const double gaussian = std::log(std::sqrt(2 * M_PI / 1e6));
  EXPECT_NEAR(tilt_wrong(cavity).log_integral, log_wrong_density(20) + gaussian, 1e-3);
}

TEST(TiltedWrong, VagueCavityGivesNearlyOne) {
  // exp(−½ (e/100)²) is close to 1 over a good half of the density's mass in ln e.
  const double integral = std::exp(tilt_wrong({0, 1e-4}).log_integral);
  EXPECT_GT(integral, 0.4);
  EXPECT_LT(integral, 0.7);
}

}  // namespace
}  // namespace ohmtrail::diagnose::inference
