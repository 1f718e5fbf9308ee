#pragma once
#include "unit/solve/circuits.hpp"

/// Derivatives by solving again, to hold the analytic ones against.
namespace ohmtrail::solve {

/// How `of`, a number of a solution, follows one value of one branch: central difference over ± `step`.
template <class Of>
double central_difference(Circuit circuit, std::size_t branch, double Branch::*value, double step, Of of) {
  double& changed = circuit.branches.at(branch).*value;
  const double middle = changed;
  changed = middle + step;
  const double up = of(solved(circuit));
  changed = middle - step;
  return (up - of(solved(circuit))) / (2 * step);
}

/// The same upwards only, of second order: for resistances that begin at 0.
template <class Of>
double forward_difference(Circuit circuit, std::size_t branch, double Branch::*value, double step, Of of) {
  double& changed = circuit.branches.at(branch).*value;
  const double here = of(solved(circuit));
  changed += step;
  const double once = of(solved(circuit));
  changed += step;
  return (4 * once - 3 * here - of(solved(circuit))) / (2 * step);
}

inline auto voltage_of(std::size_t point) {
  return [point](const Solution& s) { return s.voltage.at(point); };
}
inline auto current_of(std::size_t branch) {
  return [branch](const Solution& s) { return s.current.at(branch); };
}

}  // namespace ohmtrail::solve
