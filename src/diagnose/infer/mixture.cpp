#include "diagnose/infer/mixture.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace ohmtrail::diagnose::inference {

void Mixture::add(double weight, double mean, double variance) {
  if (weight <= 0) {
    return;
  }
  total_ += weight;
  const double sd = std::sqrt(std::max(variance, 1e-24));
  // Hypotheses that differ elsewhere often say the very same of an unknown.
  for (Part& part : parts_) {
    if (std::abs(part.mean - mean) < 1e-3 * sd && std::abs(part.sd - sd) < 1e-3 * sd) {
      part.weight += weight;
      return;
    }
  }
  parts_.push_back({weight, mean, sd});
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
    const double x =
        halve ? 0.5 * (low + high) : std::clamp(low - below * (high - low) / (above - below), low, high);
    const double here = cumulative(x) - share;
    if (std::abs(here) < 1e-6) {
      return x;
    }
    (here < 0 ? low : high) = x;
    (here < 0 ? below : above) = here;
  }
  return 0.5 * (low + high);
}

// Each of the light ones joins the nearest of those that stay, measured in standard deviations.
void Mixture::condense(std::size_t most) {
  if (parts_.size() <= most) {
    return;
  }
  std::stable_sort(parts_.begin(), parts_.end(),
                   [](const Part& a, const Part& b) { return a.weight > b.weight; });
  const auto stays = parts_.begin() + static_cast<std::ptrdiff_t>(most);
  for (auto light = stays; light != parts_.end(); ++light) {
    const auto apart = [&](const Part& p) { return std::abs(p.mean - light->mean) / (p.sd + light->sd); };
    const auto nearest = std::min_element(parts_.begin(), stays,
                                          [&](const Part& a, const Part& b) { return apart(a) < apart(b); });
    const double weight = nearest->weight + light->weight;
    const double mean = (nearest->weight * nearest->mean + light->weight * light->mean) / weight;
    const auto second = [&](const Part& p) {
      return p.weight * (p.sd * p.sd + (p.mean - mean) * (p.mean - mean));
    };
    *nearest = {weight, mean, std::sqrt((second(*nearest) + second(*light)) / weight)};
  }
  parts_.erase(stays, parts_.end());
}

}  // namespace ohmtrail::diagnose::inference
