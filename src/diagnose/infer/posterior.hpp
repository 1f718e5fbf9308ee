#pragma once
#include <memory>
#include <optional>
#include <vector>

#include "diagnose/infer/build.hpp"
#include "diagnose/infer/explore.hpp"
#include "diagnose/infer/mixture.hpp"
#include "diagnose/infer/optimum.hpp"
#include "ohmtrail/diagnose/infer.hpp"

namespace ohmtrail::diagnose {

/// What the readings leave possible: a mixture of Gaussians, one about each probable hypothesis.
///
/// Under a component, an unknown p with place k in `optimum.columns` is x_p = mean + sd · (k-th of the lower
/// part of `optimum.fit.mean`); the covariance of those scaled unknowns is I − B Bᵀ with B the lower rows of
/// `optimum.fit.basis` (c × m). Unknowns without a column keep their prior. A quantity with gradient g by
/// value has variance aᵀ(I − B Bᵀ)a, a_k = g_p · slope_p · sd_p: `deviation_of` does that.
struct Posterior {
  struct Component {
    inference::Optimum optimum;
    double share = 0;  ///< probability, bystanders included
  };
  /// A hypothesis with its probability; `component` is the one whose Gaussian is nearest to it.
  struct Alternative {
    inference::Hypothesis hypothesis;
    double share = 0;
    std::size_t component = 0;
  };

  inference::Survey survey;
  std::vector<Component> components;         ///< most probable first; shares add up to at most 1
  std::vector<Alternative> alternatives;     ///< every hypothesis that was weighed, components included
  std::vector<double> fault;                 ///< per unknown: probability of its fault
  std::vector<double> wrong;                 ///< per observation
  std::vector<inference::Mixture> marginal;  ///< per unknown, of x
  std::vector<char> informed;                ///< per unknown: some observation depends on it
  double left_out = 0;

  [[nodiscard]] const inference::Model& model() const { return survey.model; }
};

namespace inference {

/// Empty where the system has no solution near its ratings.
[[nodiscard]] std::shared_ptr<Posterior> find_posterior(Survey survey, const InferOptions& options);

/// Standard deviation, under one component, of a quantity with this gradient by the unknowns' values.
[[nodiscard]] double deviation_of(const Model& model, const Optimum& optimum,
                                  const Eigen::VectorXd& by_value);

}  // namespace inference
}  // namespace ohmtrail::diagnose
