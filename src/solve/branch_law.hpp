#pragma once
#include "ohmtrail/solve/circuit.hpp"

/// The law of a branch that passes a current i(v), with v = V(from) − V(to), and its derivatives. Sources and
/// diodes are given what is left of v for their resistance, v − size, because that must be formed without
/// cancellation.
namespace ohmtrail::solve {

struct Operating {
  double current = 0;      ///< A
  double conductance = 0;  ///< di/dv, S
};

/// A resistor that no current warms.
[[nodiscard]] inline bool is_ohmic(const Branch& branch) {
  return branch.law == Law::resistor && branch.heating.alpha == 0;
}

/// Volts in series with the branch's resistance: the electromotive force of a source, the fixed drop of a
/// diode.
[[nodiscard]] inline double series_volts(const Branch& branch) {
  return branch.law == Law::source || branch.law == Law::diode ? branch.size : 0;
}

/// `volts`: v − series_volts. `power`: W taken by a power branch, for which v > 0 is a precondition. `near`:
/// A, a current that may not be far where the branch's own warms it; it only saves time.
[[nodiscard]] Operating operate(const Branch& branch, double volts, double power, double near = 0);

/// ∂i/∂resistance at fixed v.
[[nodiscard]] double by_resistance(const Branch& branch, const Operating& at, double volts);

/// ∂i/∂size at fixed v; `share` is the share of a power branch that is carried.
[[nodiscard]] double by_size(const Branch& branch, double volts, double share);

/// Ω at this current: r20 (1 + alpha (T − 20 °C)) for what heats, else the branch's resistance.
[[nodiscard]] double resistance_at(const Branch& branch, double amperes);

/// V between the points of a resistor, source or diode at this current, and its dv/di there.
struct AtCurrent {
  double volts = 0, resistance = 0;
};
[[nodiscard]] AtCurrent at_current(const Branch& branch, double amperes);

/// °C at this current.
[[nodiscard]] double temperature_at(const Heating& heating, double amperes);

}  // namespace ohmtrail::solve
