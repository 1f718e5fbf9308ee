#include "diagnose/infer/stacked_qr.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace ohmtrail::diagnose::inference {
namespace {

constexpr Eigen::Index panel = 16;

}  // namespace

StackedQr::StackedQr(Eigen::MatrixXd below)
    : vectors_(std::move(below)),
      upper_(Eigen::MatrixXd::Zero(vectors_.cols(), vectors_.cols())),
      factor_(vectors_.cols()) {
  for (Eigen::Index begin = 0; begin < vectors_.cols(); begin += panel) {
    const Eigen::Index end = std::min(begin + panel, vectors_.cols());
    for (Eigen::Index j = begin; j < end; ++j) {
      reflect(j, end);
    }
    close_panel(begin, end);
  }
}

// Column j is (1, b). With a its length, v = (1, b / (1 + a)) takes it to (−a, 0): no difference of like
// numbers is formed.
void StackedQr::reflect(Eigen::Index j, Eigen::Index end) {
  auto own = vectors_.col(j);
  const double length = std::hypot(1.0, own.stableNorm());
  own /= 1 + length;
  factor_[j] = (1 + length) / length;
  upper_(j, j) = -length;
  for (Eigen::Index k = j + 1; k < end; ++k) {
    const double along = factor_[j] * own.dot(vectors_.col(k));
    upper_(j, k) = -along;
    vectors_.col(k) -= along * own;
  }
}

// T of the panel, and the panel's reflections of all later columns.
void StackedQr::close_panel(Eigen::Index begin, Eigen::Index end) {
  const Eigen::Index size = end - begin, later = vectors_.cols() - end;
  const auto own = vectors_.middleCols(begin, size);
  const Eigen::MatrixXd products = own.transpose() * own;
  Eigen::MatrixXd joint = Eigen::MatrixXd::Zero(size, size);
  for (Eigen::Index j = 0; j < size; ++j) {
    joint(j, j) = factor_[begin + j];
    joint.col(j).head(j) = -joint(j, j) * joint.topLeftCorner(j, j) * products.col(j).head(j);
  }
  if (later > 0) {
    const Eigen::MatrixXd along = joint.transpose() * (own.transpose() * vectors_.rightCols(later));
    upper_.block(begin, end, size, later) = -along;
    vectors_.rightCols(later).noalias() -= own * along;
  }
  joint_.push_back(std::move(joint));
}

// Q times (rows, 0): the panels from the last to the first. Columns left of step × panel begin are not met
// by a panel.
template <class Rows>
void StackedQr::apply(Rows& rows, Eigen::Index step) const {
  const Eigen::Index m = vectors_.cols(), n = vectors_.rows();
  for (auto k = static_cast<Eigen::Index>(joint_.size()) - 1; k >= 0; --k) {
    const Eigen::Index begin = k * panel, size = std::min(panel, m - begin), met = rows.cols() - step * begin;
    const auto own = vectors_.middleCols(begin, size);
    auto above = rows.block(begin, step * begin, size, met), below = rows.block(m, step * begin, n, met);
    const Eigen::MatrixXd along = joint_[static_cast<std::size_t>(k)] * (above + own.transpose() * below);
    above -= along;
    below.noalias() -= own * along;
  }
}

Eigen::MatrixXd StackedQr::basis() const {
  Eigen::MatrixXd out = Eigen::MatrixXd::Identity(vectors_.cols() + vectors_.rows(), vectors_.cols());
  apply(out, 1);
  return out;
}

Eigen::VectorXd StackedQr::times(const Eigen::VectorXd& z) const {
  Eigen::VectorXd out = Eigen::VectorXd::Zero(vectors_.cols() + vectors_.rows());
  out.head(z.size()) = z;
  apply(out, 0);
  return out;
}

}  // namespace ohmtrail::diagnose::inference
