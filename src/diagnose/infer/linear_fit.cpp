#include "diagnose/infer/linear_fit.hpp"

#include <utility>

#include "diagnose/infer/stacked_qr.hpp"

namespace ohmtrail::diagnose::inference {

struct LinearProblem::Factor {
  StackedQr qr;
  ParallelColumns columns;
  Eigen::Index readings;

  // From merged unknowns back to all of them.
  template <class Rows>
  [[nodiscard]] Rows spread(const Rows& merged) const {
    Rows out(readings + columns.share.size(), merged.cols());
    out.topRows(readings) = merged.topRows(readings);
    out.bottomRows(columns.share.size()) = columns.spread(merged.bottomRows(merged.rows() - readings));
    return out;
  }
};

LinearProblem::LinearProblem(ParallelColumns sensitivity) {
  StackedQr qr(sensitivity.merged.transpose());
  const Eigen::Index m = sensitivity.merged.rows();
  factor_ = std::make_unique<Factor>(Factor{std::move(qr), std::move(sensitivity), m});
}

LinearProblem::LinearProblem(const Eigen::MatrixXd& sensitivity)
    : LinearProblem(merge_parallel(sensitivity)) {}

LinearProblem::~LinearProblem() = default;
LinearProblem::LinearProblem(LinearProblem&&) noexcept = default;
LinearProblem& LinearProblem::operator=(LinearProblem&&) noexcept = default;

LinearFit LinearProblem::solve(const Eigen::VectorXd& target) const {
  const Eigen::MatrixXd& upper = factor_->qr.upper();
  LinearFit fit;
  const Eigen::VectorXd innovations = upper.triangularView<Eigen::Upper>().transpose().solve(target);
  fit.mean = factor_->spread(factor_->qr.times(innovations));
  fit.chi_square = innovations.squaredNorm();
  fit.log_det = upper.diagonal().array().abs().log().sum();
  return fit;
}

Eigen::MatrixXd LinearProblem::basis() const {
  return factor_->spread(factor_->qr.basis());
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
