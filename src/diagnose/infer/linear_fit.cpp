#include "diagnose/infer/linear_fit.hpp"

#include <Eigen/QR>
#include <utility>

#include "diagnose/infer/parallel_columns.hpp"

namespace ohmtrail::diagnose::inference {

struct LinearProblem::Factor {
  Eigen::HouseholderQR<Eigen::MatrixXd> qr;
  ParallelColumns columns;
  Eigen::Index readings;

  // From merged unknowns back to all of them: rows of a vector or of a matrix.
  template <class Rows>
  [[nodiscard]] Rows spread(const Rows& merged) const {
    Rows out(readings + columns.share.size(), merged.cols());
    out.topRows(readings) = merged.topRows(readings);
    for (Eigen::Index j = 0; j < columns.share.size(); ++j) {
      out.row(readings + j) =
          columns.share[j] * merged.row(readings + columns.group[static_cast<std::size_t>(j)]);
    }
    return out;
  }
};

LinearProblem::LinearProblem(const Eigen::MatrixXd& sensitivity) {
  ParallelColumns columns = merge_parallel(sensitivity);
  const Eigen::Index m = sensitivity.rows(), n = columns.merged.cols();
  Eigen::MatrixXd stacked(m + n, m);
  stacked.topRows(m).setIdentity();
  stacked.bottomRows(n) = columns.merged.transpose();
  factor_ = std::make_unique<Factor>(Factor{stacked.householderQr(), std::move(columns), m});
}

LinearProblem::~LinearProblem() = default;
LinearProblem::LinearProblem(LinearProblem&&) noexcept = default;
LinearProblem& LinearProblem::operator=(LinearProblem&&) noexcept = default;

LinearFit LinearProblem::solve(const Eigen::VectorXd& target) const {
  const auto& qr = factor_->qr;
  const Eigen::Index m = factor_->readings;
  LinearFit fit;
  const Eigen::VectorXd innovations =
      qr.matrixQR().topRows(m).triangularView<Eigen::Upper>().transpose().solve(target);
  Eigen::VectorXd mean = Eigen::VectorXd::Zero(qr.rows());
  mean.head(m) = innovations;
  mean.applyOnTheLeft(qr.householderQ());
  fit.mean = factor_->spread(mean);
  fit.chi_square = innovations.squaredNorm();
  fit.log_det = qr.matrixQR().diagonal().array().abs().log().sum();
  return fit;
}

Eigen::MatrixXd LinearProblem::basis() const {
  const Eigen::MatrixXd merged =
      factor_->qr.householderQ() * Eigen::MatrixXd::Identity(factor_->qr.rows(), factor_->readings);
  return factor_->spread(merged);
}

LinearFit fit_linear(const Eigen::MatrixXd& sensitivity, const Eigen::VectorXd& target, bool with_basis) {
  const LinearProblem problem(sensitivity);
  LinearFit fit = problem.solve(target);
  if (with_basis) {
    fit.basis = problem.basis();
  }
  return fit;
}

}  // namespace ohmtrail::diagnose::inference
