#include <gtest/gtest.h>
#include <Eigen/LU>
#include <cmath>

#include "diagnose/infer/linear_fit.hpp"
#include "diagnose/infer/parallel_columns.hpp"
#include "support/seeded_random.hpp"

namespace ohmtrail::diagnose::inference {
namespace {

Eigen::MatrixXd with_parallel_columns() {
  test::SeededRandom random(3);
  Eigen::MatrixXd out(5, 9);
  for (Eigen::Index j = 0; j < 4; ++j)
    for (Eigen::Index i = 0; i < 5; ++i) out(i, j) = random.normal();
  out.col(4) = 2.5 * out.col(1);
  out.col(5) = -0.1 * out.col(1);
  out.col(6) = 7 * out.col(3);
  out.col(7).setZero();
  out.col(8).setZero();
  return out;
}

TEST(ParallelColumns, KeepTheirProduct) {
  const Eigen::MatrixXd a = with_parallel_columns();
  const ParallelColumns merged = merge_parallel(a);
  EXPECT_EQ(merged.merged.cols(), 5);  // four directions and nothing
  EXPECT_LT((merged.merged * merged.merged.transpose() - a * a.transpose()).norm(), 1e-12);
  for (Eigen::Index j = 0; j < a.cols(); ++j)
    EXPECT_LT(
        (merged.share[j] * merged.merged.col(merged.group[static_cast<std::size_t>(j)]) - a.col(j)).norm(),
        1e-12);
}

// One analysis of the directions serves every scale of the columns.
TEST(ParallelColumns, MergeAtAnyScale) {
  const Eigen::MatrixXd a = with_parallel_columns();
  const ColumnDirections directions = directions_of(a);
  for (const double growth : {0.5, 1.0, 3.0}) {
    Eigen::VectorXd scale(a.cols());
    for (Eigen::Index j = 0; j < a.cols(); ++j) scale[j] = std::pow(growth, static_cast<double>(j));
    const Eigen::MatrixXd scaled = a * scale.asDiagonal();
    const ParallelColumns merged = merge_scaled(directions, scale);
    EXPECT_LT((merged.merged * merged.merged.transpose() - scaled * scaled.transpose()).norm(),
              1e-12 * scaled.squaredNorm());
  }
}

TEST(ParallelColumns, MultiplyAndSpreadLikeTheOriginal) {
  const Eigen::MatrixXd a = with_parallel_columns();
  const ParallelColumns merged = merge_parallel(a);
  const Eigen::VectorXd z = Eigen::VectorXd::LinSpaced(9, -1, 3), r = Eigen::VectorXd::LinSpaced(5, 2, -7);
  EXPECT_LT((merged.times(z) - a * z).norm(), 1e-12);
  const Eigen::VectorXd back = merged.merged.transpose() * r;
  EXPECT_LT((merged.spread(back) - a.transpose() * r).norm(), 1e-12);
}

// The fit must not see that columns were merged: against the stacked problem solved column by column.
TEST(ParallelColumns, FitIsThatOfAllColumns) {
  const Eigen::MatrixXd a = with_parallel_columns();
  const Eigen::VectorXd r = Eigen::VectorXd::LinSpaced(5, -3, 4);
  const LinearFit fit = fit_linear(a, r, true);
  const Eigen::MatrixXd s = Eigen::MatrixXd::Identity(5, 5) + a * a.transpose();
  const Eigen::VectorXd expected = a.transpose() * s.fullPivLu().solve(r);
  EXPECT_LT((fit.mean.tail(9) - expected).norm(), 1e-12);
  const Eigen::MatrixXd lower = fit.basis.bottomRows(9);
  EXPECT_LT((lower * lower.transpose() - a.transpose() * s.fullPivLu().solve(a)).norm(), 1e-12);
}

}  // namespace
}  // namespace ohmtrail::diagnose::inference
