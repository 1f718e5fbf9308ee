#pragma once
#include <Eigen/Core>
#include <optional>
#include <vector>

#include "diagnose/infer/forward.hpp"
#include "diagnose/infer/hypothesis.hpp"
#include "diagnose/infer/linear_fit.hpp"

/// Most probable unknowns under one hypothesis, and the Gaussian about them.
///
/// With x the unknowns (ln of resistances), prior x ~ N(mu, s²), readings y = f(x) + errors of unit size
/// after division by their sigma, minimise |(x − mu)/s|² + |(y − f(x))/sigma|². Gauss–Newton: f is taken as
/// linear in the *values* (drops are linear in resistances where currents hold), so a step in x is a linear
/// fit, and the network is solved again only where that linear function has been left.
namespace ohmtrail::diagnose::inference {

struct Optimum {
  Hypothesis hypothesis;
  Eigen::VectorXd x;         ///< n
  Linearisation near;        ///< of the network, at or very near x
  std::vector<int> columns;  ///< the unknowns that any observation informs; c of them
  LinearFit fit;             ///< m + c
  Eigen::VectorXd residual;  ///< m: (measured − predicted at x) / sigma, wrong ones too
  int counted = 0;           ///< observations that are not wrong
  double log_density = 0;    ///< ln of the density of the right observations under the Gaussian (Laplace)
};

/// Values of all unknowns at x.
[[nodiscard]] Eigen::VectorXd values_at(const Model& model, const Eigen::VectorXd& x);

/// And back.
[[nodiscard]] Eigen::VectorXd xs_at(const Model& model, const Eigen::VectorXd& value);

/// Prior means under a hypothesis.
[[nodiscard]] Eigen::VectorXd prior_means(const Model& model, const Hypothesis& hypothesis);

/// The optimum of the linearised problem, from `start`.
[[nodiscard]] Optimum optimise_linear(const Model& model, const Linearisation& near,
                                      const Hypothesis& hypothesis, const Eigen::VectorXd& start);

/// The optimum through the real network, from that of a linearised problem. Empty where no state near it has
/// a solution.
[[nodiscard]] std::optional<Optimum> optimise(Forward& forward, Optimum linear);

}  // namespace ohmtrail::diagnose::inference
