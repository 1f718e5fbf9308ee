#include "solve/branch_law.hpp"

#include <cmath>

namespace ohmtrail::solve {

namespace {

/// v = r0 i + r2 i³: the resistance of a wire that its own current warms.
struct Cubic {
  double r0, r2;
  [[nodiscard]] double volts(double i) const { return (r0 + r2 * i * i) * i; }
  [[nodiscard]] double slope(double i) const { return r0 + 3 * r2 * i * i; }
};

Cubic cubic_of(const Branch& branch) {
  const Heating& heating = branch.heating;
  const double cold = 1 + heating.alpha * (heating.ambient - 20);
  return {branch.resistance * cold, branch.resistance * heating.alpha * heating.rise};
}

/// The one real root of r2 i³ + r0 i = v, by Newton's steps: the cubic rises everywhere and bends one way on
/// either side of 0, so from whatever current, one of them leads beyond the root and the others fall to it.
/// Each squares the error: after one of 1e-8 nothing is left.
double current_through(const Cubic& cubic, double volts, double near) {
  double i = near, last = 0;
  do {
    last = i;
    i -= (cubic.volts(i) - volts) / cubic.slope(i);
  } while (std::abs(i - last) > 1e-8 * std::abs(i));
  return i;
}

Operating operate_resistor(const Branch& branch, double volts, double near) {
  const Cubic cubic = cubic_of(branch);
  const double i = current_through(cubic, volts, near);
  return {i, 1 / cubic.slope(i)};
}

}  // namespace

Operating operate(const Branch& branch, double volts, double power, double near) {
  switch (branch.law) {
    case Law::resistor:
      return operate_resistor(branch, volts, near);
    case Law::source:
    case Law::diode:
      return {volts / branch.resistance, 1 / branch.resistance};
    case Law::regulator:
      return {-branch.limit, 0};
    case Law::current:
      return {branch.size, 0};
    case Law::power:
      if (power == 0) return {};
      return {power / volts, -power / (volts * volts)};
    case Law::open:
      break;
  }
  return {};
}

double by_resistance(const Branch& branch, const Operating& at, double volts) {
  switch (branch.law) {
    // r(i) is in proportion to r20: ∂i/∂r20 = −(v/r20) di/dv.
    case Law::resistor:
      return -volts / branch.resistance * at.conductance;
    case Law::source:
    case Law::diode:
      return -at.current / branch.resistance;
    default:
      return 0;
  }
}

double by_size(const Branch& branch, double volts, double share) {
  switch (branch.law) {
    case Law::source:
    case Law::diode:
      return -1 / branch.resistance;
    case Law::current:
      return 1;
    case Law::power:
      return share / volts;
    default:
      return 0;
  }
}

double resistance_at(const Branch& branch, double amperes) {
  const Cubic cubic = cubic_of(branch);
  return cubic.r0 + cubic.r2 * amperes * amperes;
}

AtCurrent at_current(const Branch& branch, double amperes) {
  if (branch.law != Law::resistor)
    return {series_volts(branch) + branch.resistance * amperes, branch.resistance};
  const Cubic cubic = cubic_of(branch);
  return {cubic.volts(amperes), cubic.slope(amperes)};
}

double temperature_at(const Heating& heating, double amperes) {
  return heating.ambient + heating.rise * amperes * amperes;
}

}  // namespace ohmtrail::solve
