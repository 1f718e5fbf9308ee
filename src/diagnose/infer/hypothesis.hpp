#pragma once
#include <vector>

#include "diagnose/infer/model.hpp"

namespace ohmtrail::diagnose::inference {

/// Which unknowns are faulty and which observations are simply wrong; all others are sound and right.
struct Hypothesis {
  std::vector<int> faulty;  ///< parameters, ascending
  std::vector<int> wrong;   ///< observations, ascending

  [[nodiscard]] bool is_faulty(int parameter) const;
  [[nodiscard]] bool is_wrong(int observation) const;
  /// The same with one member put in or taken out.
  [[nodiscard]] Hypothesis with_toggled_parameter(int parameter) const;
  [[nodiscard]] Hypothesis with_toggled_observation(int observation) const;

  friend auto operator<=>(const Hypothesis&, const Hypothesis&) = default;
};

/// The prior that a parameter has under a hypothesis.
[[nodiscard]] const Normal& prior_of(const Model& model, const Hypothesis& hypothesis, int parameter);

/// ln of the odds of the hypothesis against "nothing faulty, nothing wrong" before any reading.
[[nodiscard]] double log_prior_odds(const Model& model, const Hypothesis& hypothesis);

}  // namespace ohmtrail::diagnose::inference
