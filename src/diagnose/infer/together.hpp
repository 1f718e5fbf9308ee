#pragma once
#include <vector>

#include "diagnose/infer/posterior.hpp"

namespace ohmtrail::diagnose::inference {

/// A probability to the millionth: what is beyond that is no knowledge, and equal ones must compare equal.
[[nodiscard]] double to_a_millionth(double probability);

/// Median and 90 % of a quantity.
struct Spread {
  double median = 0, low = 0, high = 0;
};

/// What the posterior says of several unknowns taken together. It must outlive this.
class Together {
 public:
  explicit Together(const Posterior& posterior);

  /// Ω, the resistances of `members` in series at the temperature they had when they were read.
  [[nodiscard]] Spread sum(const std::vector<int>& members) const;
  /// Probability that at least one of `members` is faulty.
  [[nodiscard]] double any_faulty(const std::vector<int>& members) const;

  /// Whether some weighed hypothesis calls it faulty; the others carry their own small chance.
  [[nodiscard]] bool enumerated(int parameter) const;

 private:
  const Posterior& posterior_;
  std::vector<char> enumerated_;
};

}  // namespace ohmtrail::diagnose::inference
