#include "diagnose/infer/tilted.hpp"

#include <Eigen/Core>
#include <algorithm>
#include <cmath>
#include <limits>

namespace ohmtrail::diagnose::inference {
namespace {

constexpr double reach = 6.0;  // standard deviations on either side that are integrated over
constexpr int nodes = 33;
constexpr double log_two_pi = 1.8378770664093453;

using Nodes = Eigen::Array<double, nodes, 1>;

struct Window {
  double low, high;
};

// Sums over the nodes, kept relative to the largest exponent so that nothing underflows.
struct Moments {
  double top = -std::numeric_limits<double>::infinity();
  double weight = 0, x = 0, xx = 0, value = 0, value_value = 0;
};

double exponent(double x, double value, const Normal& prior, const Cavity& cavity) {
  const double z = (x - prior.mean) / prior.sd, d = value - cavity.at;
  return -0.5 * z * z - 0.5 * cavity.precision * d * d;
}

// Highest point of the product. It lies between the prior's centre and the readings' or, where they ask for
// less than nothing, below the prior's. Newton from the best of a few places, since the product need not be
// log-concave.
double peak_of(const Parameter& parameter, const Normal& prior, const Cavity& cavity) {
  const double far = cavity.at > 0 ? parameter.x_of(cavity.at) : prior.mean - reach * prior.sd;
  double best = prior.mean, highest = exponent(best, parameter.value(best), prior, cavity);
  for (int k = 1; k <= 4; ++k) {
    const double x = prior.mean + (far - prior.mean) * k / 4;
    const double here = exponent(x, parameter.value(x), prior, cavity);
    if (here > highest) {
      highest = here;
      best = x;
    }
  }
  for (int k = 0; k < 8; ++k) {
    const double v = parameter.value(best), weight = 1 / (prior.sd * prior.sd);
    const double slope = (best - prior.mean) * weight + cavity.precision * (v - cavity.at) * v;
    const double bend = std::max(weight + cavity.precision * v * (2 * v - cavity.at), 0.5 * weight);
    const double step = std::clamp(-slope / bend, -1.0, 1.0);
    best += step;
    if (std::abs(step) * std::sqrt(bend) < 1e-2) {
      break;
    }
  }
  return best;
}

// From the peak outwards until the product has died off on both sides.
Window window_of(const Parameter& parameter, const Normal& prior, const Cavity& cavity) {
  const double peak = peak_of(parameter, prior, cavity), v = parameter.value(peak);
  const double bend = 1 / (prior.sd * prior.sd) + std::max(0.0, cavity.precision * v * (2 * v - cavity.at));
  const double floor = exponent(peak, v, prior, cavity) - 0.5 * reach * reach;
  Window window{peak - 0.7 * reach / std::sqrt(bend), peak + 0.7 * reach / std::sqrt(bend)};
  for (int k = 0; k < 20 && exponent(window.low, parameter.value(window.low), prior, cavity) > floor; ++k) {
    window.low -= 0.3 * (peak - window.low);
  }
  for (int k = 0; k < 20 && exponent(window.high, parameter.value(window.high), prior, cavity) > floor; ++k) {
    window.high += 0.3 * (window.high - peak);
  }
  return window;
}

// All nodes at once: the exponentials are most of the work of an inference.
Moments accumulate(const Parameter& parameter, const Normal& prior, const Cavity& cavity,
                   const Window& window) {
  const Nodes xs = Nodes::LinSpaced(window.low, window.high);
  Nodes values;
  values[0] = parameter.value(window.low);
  const double growth = std::exp((window.high - window.low) / (nodes - 1));
  for (int k = 1; k < nodes; ++k) {
    values[k] = values[k - 1] * growth;
  }
  const Nodes exponents =
      -0.5 * ((xs - prior.mean) / prior.sd).square() - 0.5 * cavity.precision * (values - cavity.at).square();
  Moments sums;
  sums.top = exponents.maxCoeff();
  const Nodes weights = (exponents - sums.top).exp();
  sums.weight = weights.sum();
  sums.x = (weights * xs).sum();
  sums.value = (weights * values).sum();
  sums.xx = (weights * (xs - sums.x / sums.weight).square()).sum();
  sums.value_value = (weights * (values - sums.value / sums.weight).square()).sum();
  return sums;
}

double log_wrong_norm() {
  constexpr double furthest = 1e4;
  static const double log_norm = std::log(2 * (1 + std::log(furthest)));
  return log_norm;
}

Tilted tilt_linear(const Parameter& parameter, const Normal& prior, const Cavity& cavity) {
  const double prior_variance = prior.sd * prior.sd;
  const double shift = cavity.at - parameter.centre - prior.mean;
  const double spread = 1 + prior_variance * cavity.precision;
  Tilted out;
  out.log_integral = -0.5 * std::log(spread) - 0.5 * cavity.precision * shift * shift / spread;
  out.variance = out.variance_x = prior_variance / spread;
  out.mean_x = prior.mean + out.variance * cavity.precision * shift;
  out.mean = parameter.centre + out.mean_x;
  return out;
}

}  // namespace

bool nearly_equal(const Cavity& a, const Cavity& b) {
  const double ratio = a.precision > 0 ? b.precision / a.precision : (b.precision > 0 ? 0 : 1);
  return std::abs(ratio - 1) < 0.01 && std::abs(a.at - b.at) * std::sqrt(a.precision) < 0.01;
}

Tilted tilt(const Parameter& parameter, const Normal& prior, const Cavity& cavity) {
  if (parameter.scale == Scale::linear) {
    return tilt_linear(parameter, prior, cavity);
  }
  const Window window = window_of(parameter, prior, cavity);
  const Moments sums = accumulate(parameter, prior, cavity, window);
  Tilted out;
  out.log_integral = sums.top + std::log(sums.weight * (window.high - window.low) / (nodes - 1) / prior.sd) -
                     0.5 * log_two_pi;
  out.mean_x = sums.x / sums.weight;
  out.variance_x = sums.xx / sums.weight;
  out.mean = sums.value / sums.weight;
  out.variance = sums.value_value / sums.weight;
  return out;
}

double log_wrong_density(double error) {
  return -log_wrong_norm() - std::log(std::max(1.0, std::abs(error)));
}

// In u = asinh(error) the density is nearly flat, so that its peak at 0 is not missed where the readings say
// little.
Tilted tilt_wrong(const Cavity& cavity) {
  Tilted out;
  if (cavity.precision <= 0) {
    out.variance = out.variance_x = 1e8;
    return out;
  }
  const double sd = 1 / std::sqrt(cavity.precision);
  const double low = std::asinh(cavity.at - reach * sd), high = std::asinh(cavity.at + reach * sd);
  const double step = (high - low) / (nodes - 1);
  const Nodes upwards = Nodes::LinSpaced(low, high).exp(), error = 0.5 * (upwards - upwards.inverse());
  const Nodes t = (error - cavity.at) / sd;
  const Nodes density = (1 + error.square()).sqrt() / error.abs().max(1.0) * std::exp(-log_wrong_norm());
  const Nodes weights = (-0.5 * t.square()).exp() * density;
  const double weight = weights.sum(), first = (weights * t).sum(), second = (weights * t.square()).sum();
  const double mean_t = first / weight;
  // The cavity is exp(−½ t²), not a normalised density: its integral over the error carries the factor sd.
  out.log_integral = std::log(weight * step);
  out.mean = out.mean_x = cavity.at + mean_t * sd;
  out.variance = out.variance_x = std::max(second / weight - mean_t * mean_t, 1e-12) * sd * sd;
  return out;
}

}  // namespace ohmtrail::diagnose::inference
