// The lines that stand for x = k i³ and i = P / V: nothing true is cut off, and where they touch they are
// exact.
#include "plan/flow_tangents.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "support/random_cases.hpp"

namespace ohmtrail::plan {
namespace {

/// The least and the most that the lines leave for the warmth at one current.
struct Left {
  bool possible = false;
  double least = 0, most = 0;
};

Left left_for_warmth(const Curve& curve, double low, double high, double amperes, double taken) {
  Left left;
  for (const double price : {1.0, -1.0}) {
    Mip mip;
    const int i = mip.add_continuous(amperes, amperes);
    const int t = mip.add_continuous(taken, taken);
    FlowTangents tangents;
    const int x = tangents.add_warmth(mip, 0, i, t, curve, low, high);
    const int priced = mip.add_continuous(-1e12, 1e12, price);
    mip.add_row({{x, 1}, {priced, -1}}, 0, 0);
    const auto relaxed = mip.relax();
    left.possible = relaxed.has_value();
    if (!relaxed) return left;
    (price > 0 ? left.least : left.most) = relaxed->value[static_cast<std::size_t>(x)];
  }
  return left;
}

Curve curve_between(double least, double most) {
  Curve curve;
  curve.least = least;
  curve.most = most;
  return curve;
}

class Ranges {
 public:
  double between(double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(engine_);
  }

 private:
  std::mt19937 engine_{23};
};

TEST(FlowTangents, NoTrueWarmthIsCutOff) {
  Ranges random;
  for (int turn = 0; turn < test::random_cases(300); ++turn) {
    const double k = random.between(1e-6, 1e-4), spread = turn % 3 == 0 ? 1 : random.between(0, 1);
    const Curve curve = curve_between(k * spread, k);
    double low = random.between(-50, 50), high = random.between(-50, 50);
    if (low > high) std::swap(low, high);
    const double i = random.between(low, high), true_k = random.between(curve.least, curve.most);
    const double x = true_k * i * i * i;
    const Left left = left_for_warmth(curve, low, high, i, 1);
    ASSERT_TRUE(left.possible) << low << " to " << high << " at " << i;
    const double rounding = 1e-7 * k * 125000;
    EXPECT_LE(left.least, x + rounding) << low << " to " << high << " at " << i;
    EXPECT_GE(left.most, x - rounding) << low << " to " << high << " at " << i;
  }
}

/// At both ends of a range without zero the lines leave nothing but the truth.
TEST(FlowTangents, AtTheEndsOfARangeOneLawIsExact) {
  for (const auto& [low, high] : {std::pair{5.0, 40.0}, std::pair{-40.0, -5.0}, std::pair{0.0, 30.0}}) {
    const double k = 2e-5;
    for (const double i : {low, high}) {
      const Left left = left_for_warmth(curve_between(k, k), low, high, i, 1);
      ASSERT_TRUE(left.possible);
      EXPECT_NEAR(left.least, k * i * i * i, 1e-7) << i;
      EXPECT_NEAR(left.most, k * i * i * i, 1e-7) << i;
    }
  }
}

TEST(FlowTangents, CableThatIsNotTakenHasNoCurrentAndNoWarmth) {
  const Left left = left_for_warmth(curve_between(1e-5, 2e-5), 0, 30, 0, 0);
  ASSERT_TRUE(left.possible);
  EXPECT_NEAR(left.least, 0, 1e-9);
  EXPECT_NEAR(left.most, 0, 1e-9);
}

Left left_for_power(double watts, double low, double high, double volts) {
  Left left;
  for (const double price : {1.0, -1.0}) {
    Mip mip;
    const int i = mip.add_continuous(0, 1e6, price);
    const int plus = mip.add_continuous(volts, volts), minus = mip.add_continuous(0, 0);
    FlowTangents tangents;
    tangents.add_power(mip, 0, i, plus, minus, watts, low, high);
    const auto relaxed = mip.relax();
    left.possible = relaxed.has_value();
    if (!relaxed) return left;
    (price > 0 ? left.least : left.most) = relaxed->value[0];
  }
  return left;
}

TEST(FlowTangents, NoTruePowerIsCutOffAndTheEndsAreExact) {
  Ranges random;
  for (int turn = 0; turn < test::random_cases(100); ++turn) {
    const double watts = random.between(5, 500), low = random.between(6, 11), high = random.between(11, 15);
    const double volts = random.between(low, high);
    const Left left = left_for_power(watts, low, high, volts);
    ASSERT_TRUE(left.possible);
    EXPECT_LE(left.least, watts / volts * (1 + 1e-8));
    EXPECT_GE(left.most, watts / volts * (1 - 1e-8));
    for (const double end : {low, high}) {
      const Left there = left_for_power(watts, low, high, end);
      EXPECT_NEAR(there.least, watts / end, 1e-6);
      EXPECT_NEAR(there.most, watts / end, 1e-6);
    }
  }
}

TEST(FlowTangents, OutsideItsRangeOfVoltsALoadCannotBe) {
  EXPECT_FALSE(left_for_power(100, 10, 13, 9).possible);
  EXPECT_FALSE(left_for_power(100, 10, 13, 14).possible);
}

TEST(FlowTangents, ATangentAtTheSolvedStateMakesThatStateExact) {
  solve::CaseSolution solved;
  solved.solution.current = {17, 100 / 11.3};
  solved.solution.drop = {0.1, 11.3};
  const double k = 3e-5;
  for (const bool refined : {false, true}) {
    Mip mip;
    FlowTangents tangents;
    const int warm_amperes = mip.add_continuous(17, 17), amperes = mip.add_continuous(0, 1e6, 1);
    const int plus = mip.add_continuous(11.3, 11.3), minus = mip.add_continuous(0, 0);
    const int x = tangents.add_warmth(mip, 0, warm_amperes, -1, curve_between(k, k), 0, 40);
    const int priced = mip.add_continuous(-1e9, 1e9, 1);
    mip.add_row({{x, 1}, {priced, -1}}, 0, 0);
    tangents.add_power(mip, 1, amperes, plus, minus, 100, 10, 13);
    if (refined) tangents.refine(mip, solved, {});
    const auto relaxed = mip.relax();
    ASSERT_TRUE(relaxed);
    const double warmth = relaxed->value[static_cast<std::size_t>(x)];
    if (refined) {
      EXPECT_NEAR(warmth, k * 17 * 17 * 17, 1e-8);
      EXPECT_NEAR(relaxed->value[static_cast<std::size_t>(amperes)], 100 / 11.3, 1e-7);
    } else {
      EXPECT_LT(warmth, k * 17 * 17 * 17 - 1e-3) << "the first tangents do not touch there";
    }
  }
}

}  // namespace
}  // namespace ohmtrail::plan
