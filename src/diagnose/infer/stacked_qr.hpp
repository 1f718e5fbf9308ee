#pragma once
#include <Eigen/Core>
#include <vector>

namespace ohmtrail::diagnose::inference {

/// Thin QR factorisation of [I; B], B n × m, by Householder reflections that know of the identity.
///
/// Reflection j meets the identity's row j alone, in which all later columns are still zero: its vector is
/// (e_j, b), and only the n lower rows are ever swept. That is a third of the work of a factorisation of all
/// m + n rows, with the same digits. Reflections are gathered in panels, H = I − V T Vᵀ (Schreiber and Van
/// Loan 1989, "A storage-efficient WY representation for products of Householder transformations").
class StackedQr {
 public:
  explicit StackedQr(Eigen::MatrixXd below);

  /// R, m × m, upper triangular; what is below the diagonal is zero.
  [[nodiscard]] const Eigen::MatrixXd& upper() const { return upper_; }
  /// Q, (m + n) × m.
  [[nodiscard]] Eigen::MatrixXd basis() const;
  /// Q z.
  [[nodiscard]] Eigen::VectorXd times(const Eigen::VectorXd& z) const;

 private:
  void reflect(Eigen::Index j, Eigen::Index end);
  void close_panel(Eigen::Index begin, Eigen::Index end);
  template <class Rows>
  void apply(Rows& rows, Eigen::Index step) const;

  Eigen::MatrixXd vectors_;  ///< n × m: lower parts of the reflections' vectors; their upper parts are e_j
  Eigen::MatrixXd upper_;
  Eigen::VectorXd factor_;              ///< m: H_j = I − factor v vᵀ
  std::vector<Eigen::MatrixXd> joint_;  ///< T of each panel
};

}  // namespace ohmtrail::diagnose::inference
