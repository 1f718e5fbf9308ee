#include <gtest/gtest.h>
#include <Eigen/Dense>

#include "diagnose/infer/linear_fit.hpp"
#include "support/seeded_random.hpp"

namespace ohmtrail::diagnose::inference {
namespace {

Eigen::MatrixXd random_matrix(test::SeededRandom& random, Eigen::Index rows, Eigen::Index columns) {
  Eigen::MatrixXd out(rows, columns);
  // Columns of very unlike size, as milliohms beside volts make them.
  for (Eigen::Index j = 0; j < columns; ++j) {
    const double size = std::pow(10.0, random.uniform(-2, 3));
    for (Eigen::Index i = 0; i < rows; ++i) out(i, j) = size * random.normal();
  }
  return out;
}

// Independent: the stacked problem [A; I] z = [r; 0] by singular values.
struct Reference {
  Eigen::VectorXd z;
  Eigen::MatrixXd covariance;
};

Reference reference(const Eigen::MatrixXd& a, const Eigen::VectorXd& r) {
  const Eigen::Index m = a.rows(), n = a.cols();
  Eigen::MatrixXd stacked(m + n, n);
  stacked << a, Eigen::MatrixXd::Identity(n, n);
  Eigen::VectorXd target = Eigen::VectorXd::Zero(m + n);
  target.head(m) = r;
  const Eigen::JacobiSVD<Eigen::MatrixXd> svd(stacked, Eigen::ComputeThinU | Eigen::ComputeThinV);
  const Eigen::VectorXd inverse = svd.singularValues().cwiseInverse();
  return {svd.solve(target), svd.matrixV() * inverse.cwiseAbs2().asDiagonal() * svd.matrixV().transpose()};
}

class LinearFitOfShape : public testing::TestWithParam<std::pair<int, int>> {};

TEST_P(LinearFitOfShape, EqualsAnIndependentLeastSquares) {
  test::SeededRandom random(11);
  for (int k = 0; k < 20; ++k) {
    const auto [m, n] = GetParam();
    const Eigen::MatrixXd a = random_matrix(random, m, n);
    Eigen::VectorXd r(m);
    for (Eigen::Index i = 0; i < m; ++i) r[i] = 100 * random.normal();
    const LinearFit fit = fit_linear(a, r, true);
    const Reference expected = reference(a, r);
    EXPECT_LT((fit.mean.tail(n) - expected.z).norm(), 1e-8 * (1 + expected.z.norm()));
    const Eigen::MatrixXd lower = fit.basis.bottomRows(n);
    const Eigen::MatrixXd covariance = Eigen::MatrixXd::Identity(n, n) - lower * lower.transpose();
    EXPECT_LT((covariance - expected.covariance).norm(), 1e-8);
    EXPECT_LT((fit.mean.head(m) - (r - a * fit.mean.tail(n))).norm(), 1e-8 * (1 + r.norm()));
  }
}

TEST_P(LinearFitOfShape, EvidenceIsThatOfTheGaussian) {
  test::SeededRandom random(12);
  const auto [m, n] = GetParam();
  const Eigen::MatrixXd a = 0.1 * random_matrix(random, m, n).colwise().normalized();
  Eigen::VectorXd r(m);
  for (Eigen::Index i = 0; i < m; ++i) r[i] = random.normal();
  const LinearFit fit = fit_linear(a, r, false);
  const Eigen::MatrixXd s = Eigen::MatrixXd::Identity(m, m) + a * a.transpose();
  EXPECT_NEAR(fit.chi_square, r.dot(s.fullPivLu().solve(r)), 1e-10 * (1 + fit.chi_square));
  EXPECT_NEAR(2 * fit.log_det, std::log(s.determinant()), 1e-9);
}

INSTANTIATE_TEST_SUITE_P(Shapes, LinearFitOfShape,
                         testing::Values(std::pair{1, 1}, std::pair{3, 8}, std::pair{8, 3},
                                         std::pair{20, 40}));

}  // namespace
}  // namespace ohmtrail::diagnose::inference
