#include "diagnose/infer/linear_fit.hpp"

#include <Eigen/QR>

namespace ohmtrail::diagnose::inference {

LinearFit fit_linear(const Eigen::MatrixXd& sensitivity, const Eigen::VectorXd& target, bool with_basis) {
  const Eigen::Index m = sensitivity.rows(), n = sensitivity.cols();
  Eigen::MatrixXd stacked(m + n, m);
  stacked.topRows(m).setIdentity();
  stacked.bottomRows(n) = sensitivity.transpose();
  const Eigen::HouseholderQR<Eigen::Ref<Eigen::MatrixXd>> qr(stacked);

  LinearFit fit;
  const Eigen::VectorXd innovations =
      qr.matrixQR().topRows(m).triangularView<Eigen::Upper>().transpose().solve(target);
  fit.mean = Eigen::VectorXd::Zero(m + n);
  fit.mean.head(m) = innovations;
  fit.mean.applyOnTheLeft(qr.householderQ());
  fit.chi_square = innovations.squaredNorm();
  fit.log_det = qr.matrixQR().diagonal().array().abs().log().sum();
  if (with_basis) {
    fit.basis = qr.householderQ() * Eigen::MatrixXd::Identity(m + n, m);
  }
  return fit;
}

}  // namespace ohmtrail::diagnose::inference
