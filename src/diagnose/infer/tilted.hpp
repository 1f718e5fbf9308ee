#pragma once
#include "diagnose/infer/parameter.hpp"

/// One unknown alone: its prior times what everything else says of it, integrated exactly.
namespace ohmtrail::diagnose::inference {

/// What the readings say of one value when all others are integrated out: exp(−½ precision (value − at)²).
struct Cavity {
  double at = 0;
  double precision = 0;  ///< 0: nothing
};

/// Whether two cavities say the same to within a hundredth of a standard deviation.
[[nodiscard]] bool nearly_equal(const Cavity& a, const Cavity& b);

/// The integral of prior × cavity, and the moments of their product.
struct Tilted {
  double log_integral = 0;
  double mean = 0, variance = 0;      ///< of the value
  double mean_x = 0, variance_x = 0;  ///< of x (see Scale)
};

/// Prior normal in x. Logarithmic scale by the trapezoidal rule over the window where the product lives (the
/// integrand is smooth and dies off on both sides, so the rule converges geometrically); linear scale in
/// closed form.
[[nodiscard]] Tilted tilt(const Parameter& parameter, const Normal& prior, const Cavity& cavity);

/// The same for an error in units of its standard deviation that is simply wrong: density 1/(2L) up to one
/// standard deviation, falling as 1/|e| beyond it up to 10⁴ of them: no scale of blunder is preferred to
/// another.
[[nodiscard]] Tilted tilt_wrong(const Cavity& cavity);

/// ln of that density.
[[nodiscard]] double log_wrong_density(double error);

}  // namespace ohmtrail::diagnose::inference
