#include "diagnose/infer/mixture.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace ohmtrail::diagnose::inference {

void Mixture::add(double weight, double mean, double variance) {
  if (weight > 0) {
    parts_.push_back({weight, mean, std::sqrt(std::max(variance, 1e-24))});
    total_ += weight;
  }
}

double Mixture::mean() const {
  double sum = 0;
  for (const Part& part : parts_) {
    sum += part.weight * part.mean;
  }
  return sum / total_;
}

double Mixture::variance() const {
  const double centre = mean();
  double sum = 0;
  for (const Part& part : parts_) {
    sum += part.weight * (part.sd * part.sd + (part.mean - centre) * (part.mean - centre));
  }
  return sum / total_;
}

double Mixture::cumulative(double x) const {
  double sum = 0;
  for (const Part& part : parts_) {
    sum += part.weight * 0.5 * std::erfc((part.mean - x) / (part.sd * std::sqrt(2.0)));
  }
  return sum / total_;
}

// Bisection with regula falsi steps in between (Illinois): the cumulative is steep here and flat there.
double Mixture::quantile(double share) const {
  double low = std::numeric_limits<double>::infinity(), high = -low;
  for (const Part& part : parts_) {
    low = std::min(low, part.mean - 5 * part.sd);
    high = std::max(high, part.mean + 5 * part.sd);
  }
  double below = -share, above = 1 - share;
  for (int k = 0; k < 60 && high - low > 1e-7 * (1 + std::abs(low) + std::abs(high)); ++k) {
    const bool halve = k % 3 == 2;
    const double x = halve ? 0.5 * (low + high) : std::clamp(low - below * (high - low) / (above - below), low, high);
    const double here = cumulative(x) - share;
    if (std::abs(here) < 1e-6) {
      return x;
    }
    (here < 0 ? low : high) = x;
    (here < 0 ? below : above) = here;
  }
  return 0.5 * (low + high);
}

void Mixture::condense(std::size_t most) {
  std::stable_sort(parts_.begin(), parts_.end(), [](const Part& a, const Part& b) { return a.weight > b.weight; });
  while (parts_.size() > most) {
    // The lightest joins its nearest neighbour, measured in standard deviations.
    const Part last = parts_.back();
    parts_.pop_back();
    auto nearest = std::min_element(parts_.begin(), parts_.end(), [&](const Part& a, const Part& b) {
      return std::abs(a.mean - last.mean) / (a.sd + last.sd) < std::abs(b.mean - last.mean) / (b.sd + last.sd);
    });
    const double weight = nearest->weight + last.weight;
    const double mean = (nearest->weight * nearest->mean + last.weight * last.mean) / weight;
    const auto second = [&](const Part& p) { return p.weight * (p.sd * p.sd + (p.mean - mean) * (p.mean - mean)); };
    *nearest = {weight, mean, std::sqrt((second(*nearest) + second(last)) / weight)};
  }
}

}  // namespace ohmtrail::diagnose::inference
