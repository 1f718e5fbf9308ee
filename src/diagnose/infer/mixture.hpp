#pragma once
#include <vector>

namespace ohmtrail::diagnose::inference {

/// A weighted sum of normal densities of one unknown.
class Mixture {
 public:
  void add(double weight, double mean, double variance);
  [[nodiscard]] bool empty() const { return parts_.empty(); }
  [[nodiscard]] double mean() const;
  [[nodiscard]] double variance() const;
  [[nodiscard]] double cumulative(double x) const;
  /// x below which `share` of it lies.
  [[nodiscard]] double quantile(double share) const;
  /// Joins the lightest parts until at most `most` are left; keeps mean and variance.
  void condense(std::size_t most);

 private:
  struct Part {
    double weight, mean, sd;
  };
  std::vector<Part> parts_;
  double total_ = 0;
};

}  // namespace ohmtrail::diagnose::inference
