#pragma once
#include <cstddef>
#include <span>

namespace ohmtrail::trade {

struct CurvePoint {
  double x, y;
};

/// Straight lines between points of rising x; the end values beyond them.
[[nodiscard]] inline double on_curve(std::span<const CurvePoint> curve, double x) {
  if (x <= curve.front().x) return curve.front().y;
  if (x >= curve.back().x) return curve.back().y;
  std::size_t upper = 1;
  while (curve[upper].x < x) ++upper;
  const auto& a = curve[upper - 1];
  const auto& b = curve[upper];
  return a.y + (b.y - a.y) * (x - a.x) / (b.x - a.x);
}

/// The x at which a curve of rising y takes the value y.
[[nodiscard]] inline double back_on_curve(std::span<const CurvePoint> curve, double y) {
  if (y <= curve.front().y) return curve.front().x;
  if (y >= curve.back().y) return curve.back().x;
  std::size_t upper = 1;
  while (curve[upper].y < y) ++upper;
  const auto& a = curve[upper - 1];
  const auto& b = curve[upper];
  return a.x + (b.x - a.x) * (y - a.y) / (b.y - a.y);
}

}  // namespace ohmtrail::trade
