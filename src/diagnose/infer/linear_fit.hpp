#pragma once
#include <Eigen/Core>
#include <memory>

#include "diagnose/infer/parallel_columns.hpp"

/// Linear-Gaussian estimation in the space of the readings.
///
/// Unknowns z ~ N(0, I) and errors e ~ N(0, I) meet A z + e = r. The most probable (e, z) is the shortest
/// vector that solves [I A](e, z) = r; with the thin factorisation [I Aᵀ]ᵀ = Q R it is Q R⁻ᵀ r, its
/// covariance is I − Q Qᵀ, and r ~ N(0, RᵀR). Neither A Aᵀ nor Aᵀ A is ever formed, so a condition number is
/// never squared.
namespace ohmtrail::diagnose::inference {

struct LinearFit {
  Eigen::VectorXd mean;   ///< m + n: errors, then unknowns
  Eigen::MatrixXd basis;  ///< (m + n) × m: Q; empty unless asked for
  double chi_square = 0;  ///< |mean|²: errors and departures from the priors together, m degrees of freedom
  double log_det = 0;     ///< ln det R: half of ln det of the covariance of r
};

/// The factorisation, kept so that Q is only formed where it is wanted.
class LinearProblem {
 public:
  /// `sensitivity` is A, m × n, scaled to unit errors and unit priors.
  explicit LinearProblem(const Eigen::MatrixXd& sensitivity);
  explicit LinearProblem(ParallelColumns sensitivity);
  ~LinearProblem();
  LinearProblem(LinearProblem&&) noexcept;
  LinearProblem& operator=(LinearProblem&&) noexcept;

  /// `target` is r, m. The basis is left empty.
  [[nodiscard]] LinearFit solve(const Eigen::VectorXd& target) const;
  /// Q, (m + n) × m.
  [[nodiscard]] Eigen::MatrixXd basis() const;

 private:
  struct Factor;
  std::unique_ptr<Factor> factor_;
};

/// Both at once.
[[nodiscard]] LinearFit fit_linear(const Eigen::MatrixXd& sensitivity, const Eigen::VectorXd& target,
                                   bool with_basis);

}  // namespace ohmtrail::diagnose::inference
