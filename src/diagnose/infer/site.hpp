#pragma once

namespace ohmtrail::diagnose::inference {

/// One coordinate's own factor as e^log_scale · exp(−½ precision (z − at)²), in units of its prior at the
/// optimum. The precision may be 0 or less.
struct Site {
  double at = 0, precision = 1, log_scale = 0;
};

/// ln of the integral of a site times exp(−½ precision (z − at)²), both in one unit; the two together must be
/// a bell.
[[nodiscard]] double log_integral(const Site& site, double at, double precision);

/// Least variance that a coordinate keeps: rounding must not make it negative.
inline constexpr double least_variance = 1e-13;

}  // namespace ohmtrail::diagnose::inference
