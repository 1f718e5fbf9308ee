#pragma once
#include <Eigen/Core>
#include <vector>

#include "diagnose/infer/forward.hpp"
#include "diagnose/infer/hypothesis.hpp"
#include "diagnose/infer/parallel_columns.hpp"

namespace ohmtrail::diagnose::inference {

/// The linearised problem under one hypothesis, in units of errors and priors.
struct ScaledProblem {
  const Model& model;
  const Linearisation& near;
  const Hypothesis& hypothesis;
  Eigen::VectorXd weight;     ///< m: 1/sigma, 0 for wrong observations
  Eigen::VectorXd mean, sd;   ///< n: of the priors
  std::vector<int> columns;   ///< the unknowns that any observation informs; c of them
  ColumnDirections weighted;  ///< of the gradients by value of those columns, times the weights

  /// All three must outlive it.
  ScaledProblem(const Model& model, const Linearisation& near, const Hypothesis& hypothesis);

  /// (measured − predicted at x) / sigma, m; wrong observations too.
  [[nodiscard]] Eigen::VectorXd residual(const Eigen::VectorXd& x) const;
  /// Half of |right residuals|² + |departures from the priors|².
  [[nodiscard]] double cost(const Eigen::VectorXd& x) const;
  /// m × c: of the weighted predictions by the scaled unknowns.
  [[nodiscard]] ParallelColumns sensitivity(const Eigen::VectorXd& x) const;
  /// What a linear fit about x must meet: the right readings' residuals, with the unknowns counted from their
  /// priors.
  [[nodiscard]] Eigen::VectorXd target(const ParallelColumns& sensitivity, const Eigen::VectorXd& x) const;
  /// x of all unknowns from the scaled ones, c.
  [[nodiscard]] Eigen::VectorXd unknowns(const Eigen::VectorXd& scaled) const;
};

}  // namespace ohmtrail::diagnose::inference
