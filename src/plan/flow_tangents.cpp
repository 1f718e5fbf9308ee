#include "plan/flow_tangents.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "units/index.hpp"

namespace ohmtrail::plan {

namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();

/// From which t on a tangent at t lies below the curve of every k at i = low, and so everywhere: for i ≥ −2
/// t, since k (i − t)² (i + 2 t) ≥ 0 there.
double first_tangent(const Curve& curve, double low) {
  if (low >= 0) return low;
  if (curve.least == curve.most) return -low / 2;
  return curve.least > 0 ? -low * std::cbrt(curve.most / (2 * curve.least)) : kInfinity;
}

/// Of a line through (most, k most³) that no k brings above: the chord of a range without zero, else the line
/// that touches the curve at −most / 2, else the one through (low, 0).
double slope_above(const Curve& curve, double low, double most) {
  if (low >= 0) return curve.most * (low * low + low * most + most * most);
  if (curve.least == curve.most) return curve.most * 0.75 * most * most;
  return curve.most * most * most * most / (most - low);
}

}  // namespace

int FlowTangents::add_warmth(Mip& mip, int element, int amperes, int taken, const Curve& curve, double from,
                             double to) {
  const double sign = to >= -from ? 1 : -1;  // turned so that the far end is positive
  const double low = sign > 0 ? from : -to;
  const double most = sign > 0 ? to : -from;
  const double band = curve.most * most * most * most;
  const int extra = mip.add_continuous(-band, band);
  const Warm warm{element, amperes, extra, taken, curve.least, sign, first_tangent(curve, low)};
  for (const double t : {warm.least, (warm.least + most) / 2, most})
    if (t >= warm.least && std::isfinite(t)) add_tangent(mip, warm, t);
  warm_.push_back(warm);
  const double slope = slope_above(curve, low, most);
  const double offset = band - slope * most;
  std::vector<Term> row{{extra, sign}, {amperes, -sign * slope}};
  if (taken >= 0) row.push_back({taken, -offset});
  mip.add_row(row, -kInfinity, taken >= 0 ? 0 : offset);
  return extra;
}

void FlowTangents::add_power(Mip& mip, int element, int amperes, int plus, int minus, double watts,
                             double low, double high) {
  mip.add_row({{plus, 1}, {minus, -1}}, low, high);
  const PowerDraw draw{element, amperes, plus, minus, watts};
  constexpr int tangents = 4;
  for (int k = 0; k <= tangents; ++k) add_tangent(mip, draw, low + (high - low) * k / tangents);
  draws_.push_back(draw);
  const double slope = watts / (low * high);
  mip.add_row({{plus, slope}, {minus, -slope}, {amperes, 1}}, -kInfinity, watts / low + watts / high);
}

void FlowTangents::add_tangent(Mip& mip, const Warm& warm, double t) {
  std::vector<Term> row{{warm.extra, warm.sign}};
  if (t != 0) row.push_back({warm.amperes, -warm.sign * 3 * warm.k * t * t});
  const double offset = 2 * warm.k * t * t * t;
  if (warm.taken >= 0 && offset != 0) row.push_back({warm.taken, offset});
  mip.add_row(row, warm.taken >= 0 ? 0 : -offset, kInfinity);
}

void FlowTangents::add_tangent(Mip& mip, const PowerDraw& draw, double volts) {
  const double slope = draw.watts / (volts * volts);
  mip.add_row({{draw.amperes, 1}, {draw.plus, slope}, {draw.minus, -slope}}, 2 * draw.watts / volts,
              kInfinity);
}

void FlowTangents::refine(Mip& mip, const solve::CaseSolution& solved,
                          const std::vector<double>& value) const {
  for (const Warm& warm : warm_) {
    if (warm.taken >= 0 && value[at(warm.taken)] < 0.5) continue;
    const double amperes = warm.sign * solved.solution.current[at(warm.element)];
    if (std::isfinite(amperes) && amperes > warm.least) add_tangent(mip, warm, amperes);
  }
  for (const PowerDraw& draw : draws_) {
    const double volts = solved.solution.drop[at(draw.element)];
    if (std::isfinite(volts) && volts > 0) add_tangent(mip, draw, volts);
  }
}

}  // namespace ohmtrail::plan
