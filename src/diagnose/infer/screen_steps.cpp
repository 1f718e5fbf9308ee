#include <algorithm>
#include <cmath>

#include "diagnose/infer/screen.hpp"

/// Steps from one hypothesis of a screen to the next.
namespace ohmtrail::diagnose::inference {

// The coordinate's own factor becomes the one that with the cavity gives these moments.
void Screen::replace_factor(Belief& belief, int k, const Cavity& cavity, const Tilted& moments) const {
  Eigen::VectorXd column = covariance(belief, k);
  const double before = std::max(belief.variance[k], least_variance), scale = scale_[k];
  const double mean = (moments.mean - offset_[k]) / scale;
  // A long-tailed prior can make the product wider than the cavity. A factor that took knowledge away would
  // spread through the covariances to others that know nothing of it: it counts as flat.
  const double cavity_variance = cavity.precision > 0 ? 1 / cavity.precision : moments.variance;
  const double variance =
      std::max(std::min(moments.variance, cavity_variance) / (scale * scale), least_variance);
  belief.mean += column * ((mean - belief.mean[k]) / before);
  const double factor = (variance - before) / (before * before);
  belief.variance = (belief.variance + factor * column.cwiseAbs2()).cwiseMax(least_variance);
  belief.mean[k] = mean;
  belief.variance[k] = variance;
  const double cavity_precision = cavity.precision * scale * scale;
  const double cavity_at = (cavity.at - offset_[k]) / scale;
  const double precision = 1 / variance - cavity_precision;
  const double at =
      std::abs(precision) > 1e-12 ? (mean / variance - cavity_precision * cavity_at) / precision : 0;
  Site made{at, precision, 0};
  made.log_scale = moments.log_integral - (precision + cavity_precision > 0 && cavity_precision > 0
                                               ? log_integral(made, cavity_at, cavity_precision)
                                               : 0);
  belief.sites[k] = made;
  belief.updates.emplace_back(factor, std::move(column));
}

// The resistance that the linear function has taken furthest below nothing, −1: none has been.
int Screen::most_negative(const Belief& belief, const std::set<int>& settled) const {
  int out = -1;
  double lowest = 0;
  for (int k = observations(); k < static_cast<int>(belief.mean.size()); ++k) {
    const double value = offset_[k] / scale_[k] + belief.mean[k];
    const bool positive =
        model_.parameters[static_cast<std::size_t>(parameter(k))].scale == Scale::logarithmic;
    if (positive && value < lowest && !settled.contains(k)) {
      lowest = value;
      out = k;
    }
  }
  return out;
}

// A Gaussian would let a resistance go below nothing at the price of a deviation or two, and with that
// explain a reading that nothing can: such an unknown gets its exact factor.
void Screen::settle(Belief& belief) const {
  constexpr int most = 4;
  std::set<int> settled;
  for (int pass = 0; pass < most; ++pass) {
    const int k = most_negative(belief, settled);
    if (k < 0) {
      return;
    }
    settled.insert(k);
    const Cavity cavity = this->cavity(belief, k);
    if (cavity.precision <= 0) {
      continue;
    }
    const Tilted exact = tilt_as(belief.hypothesis, k, cavity);
    const double change = exact.log_integral - log_integral_of_site(belief, k, cavity);
    belief.log_weight += change;
    belief.log_base += change;
    replace_factor(belief, k, cavity, exact);
  }
}

Belief Screen::after(const Belief& belief, const Move& move) const {
  constexpr double hopeless = 20;
  Belief out = belief;
  out.hypothesis = hypothesis_after(belief.hypothesis, move.coordinate);
  const Tilted& kept = move.kept ? *move.kept : move.changed;
  out.log_weight = belief.log_base + move.log_ratio;
  out.log_base = out.log_weight + kept.log_integral - move.changed.log_integral;
  replace_factor(out, move.coordinate, move.cavity, kept);
  const bool lost = out.log_base < log_weight_ - hopeless;
  out.strained = move.strains || (belief.strained && lost);
  // Where a fault is missing that the readings cry for, others are pushed below nothing until another takes
  // over: factors fitted to them there would stay when they have come back.
  if (!out.strained || !lost) {
    settle(out);
  }
  return out;
}

Eigen::VectorXd Screen::start(const Belief& belief) const {
  Eigen::VectorXd x = optimum_.x;
  for (int k = observations(); k < static_cast<int>(belief.mean.size()); ++k) {
    const int p = parameter(k);
    const Parameter& unknown = model_.parameters[static_cast<std::size_t>(p)];
    const double value = offset_[k] + scale_[k] * belief.mean[k];
    // A linear move below a hundredth of the present value is where the line has left the logarithm's reach.
    x[p] = unknown.scale == Scale::linear
               ? unknown.x_of(value)
               : unknown.x_of(std::max(value, 0.05 * unknown.value(optimum_.x[p])));
  }
  return x;
}

}  // namespace ohmtrail::diagnose::inference
