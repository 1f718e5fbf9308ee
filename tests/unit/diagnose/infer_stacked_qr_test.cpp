#include <gtest/gtest.h>
#include <Eigen/QR>
#include <cmath>

#include "diagnose/infer/stacked_qr.hpp"
#include "support/seeded_random.hpp"

namespace ohmtrail::diagnose::inference {
namespace {

struct Shape {
  Eigen::Index n, m;
};

// Shapes on either side of a panel's 16 columns, and more columns than rows.
constexpr Shape shapes[] = {{1, 1}, {3, 8}, {40, 15}, {40, 16}, {40, 17}, {9, 50}, {120, 100}};

Eigen::MatrixXd random_below(Shape shape, double decades) {
  test::SeededRandom random(static_cast<std::uint64_t>(100 * shape.n + shape.m));
  Eigen::MatrixXd out(shape.n, shape.m);
  for (Eigen::Index i = 0; i < shape.n; ++i) {
    const double size = std::pow(10.0, random.uniform(-decades, decades));
    for (Eigen::Index j = 0; j < shape.m; ++j) out(i, j) = size * random.normal();
  }
  return out;
}

Eigen::MatrixXd stacked(const Eigen::MatrixXd& below) {
  Eigen::MatrixXd out(below.rows() + below.cols(), below.cols());
  out << Eigen::MatrixXd::Identity(below.cols(), below.cols()), below;
  return out;
}

TEST(StackedQr, GivesBackTheMatrix) {
  for (const Shape shape : shapes) {
    const Eigen::MatrixXd below = random_below(shape, 1);
    const StackedQr qr(below);
    const Eigen::MatrixXd whole = stacked(below);
    EXPECT_LT((qr.basis() * qr.upper() - whole).norm(), 1e-13 * whole.norm()) << shape.n << "×" << shape.m;
    EXPECT_EQ(Eigen::MatrixXd(qr.upper().triangularView<Eigen::StrictlyLower>()).norm(), 0);
  }
}

// Orthogonal to the last digit even where the columns are nearly dependent: here lies the difference from
// solving with R.
TEST(StackedQr, StaysOrthogonalOverTwelveDecades) {
  for (const Shape shape : shapes) {
    const Eigen::MatrixXd q = StackedQr(random_below(shape, 6)).basis();
    EXPECT_LT((q.transpose() * q - Eigen::MatrixXd::Identity(shape.m, shape.m)).norm(), 1e-13)
        << shape.n << "×" << shape.m;
  }
}

// Householder's factors are unique but for the signs of rows.
TEST(StackedQr, EqualsTheGeneralFactorisation) {
  const Eigen::MatrixXd below = random_below({40, 33}, 2);
  const StackedQr qr(below);
  const Eigen::HouseholderQR<Eigen::MatrixXd> general(stacked(below));
  const Eigen::MatrixXd upper = general.matrixQR().topRows(33).triangularView<Eigen::Upper>();
  for (Eigen::Index i = 0; i < 33; ++i) {
    const double sign = upper(i, i) * qr.upper()(i, i) > 0 ? 1 : -1;
    EXPECT_LT((sign * upper.row(i) - qr.upper().row(i)).norm(), 1e-11 * upper.row(i).norm()) << i;
  }
}

TEST(StackedQr, TimesAVectorIsTheBasisTimesIt) {
  for (const Shape shape : shapes) {
    const StackedQr qr(random_below(shape, 3));
    const Eigen::VectorXd z = Eigen::VectorXd::LinSpaced(shape.m, -1, 2);
    EXPECT_LT((qr.times(z) - qr.basis() * z).norm(), 1e-13 * z.norm()) << shape.n << "×" << shape.m;
  }
}

// No unknowns at all: the identity alone, whose reflections must not divide by nothing.
TEST(StackedQr, OfTheIdentityAlone) {
  const StackedQr qr(Eigen::MatrixXd::Zero(0, 5));
  EXPECT_LT((qr.basis() * qr.upper() - Eigen::MatrixXd::Identity(5, 5)).norm(), 1e-15);
}

}  // namespace
}  // namespace ohmtrail::diagnose::inference
