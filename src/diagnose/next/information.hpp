#pragma once
#include <vector>

namespace ohmtrail::diagnose::next {

/// A reading as every hypothesis foretells it: normal, with its meter's error in it.
struct Forecast {
  double mean = 0, sd = 1;
  double weight = 0;  ///< probability of the hypothesis; they need not add up to one
  int label = 0;      ///< hypotheses with one label need not be told apart
};

/// Mutual information between label and reading, in bits. Each normal is integrated by Gauss–Hermite
/// quadrature with `nodes` nodes (2, 3 or 7), the mixture's density being summed at every node.
[[nodiscard]] double information(const std::vector<Forecast>& forecasts, int nodes);

/// The same mixture with fewer parts: those of one label that stand within half a deviation of each other
/// become one, with their mean and variance. For ranking many readings before a few are weighed finely.
[[nodiscard]] std::vector<Forecast> condensed(const std::vector<Forecast>& forecasts);

/// Entropy of the label before the reading, in bits.
[[nodiscard]] double entropy(const std::vector<Forecast>& forecasts);

/// The value that best parts the hypotheses into a lower and an upper class: the classes' entropy times how
/// clearly the two nearest means stand apart. It stands equally many of their deviations from both.
[[nodiscard]] double parting(std::vector<Forecast> forecasts);

}  // namespace ohmtrail::diagnose::next
