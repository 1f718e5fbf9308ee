#pragma once
#include <vector>

#include "ohmtrail/solve/circuit.hpp"

namespace ohmtrail::solve {

/// How a branch behaves at present.
enum class Mode : char {
  idle,  ///< passes nothing: open, blocked diode, regulator below the voltage it meets, stopped or unfed load
  active,   ///< obeys its law; a regulator holds its voltage, a diode conducts
  limiting  ///< a regulator that delivers its limit
};

using Modes = std::vector<Mode>;

[[nodiscard]] inline bool is_takes(Law law) {
  return law == Law::power || law == Law::current;
}

/// A branch that fixes the voltage between its points instead of passing a current that follows from it.
[[nodiscard]] inline bool fixes_voltage(const Branch& branch, Mode mode) {
  if (mode != Mode::active) return false;
  if (branch.law == Law::regulator) return true;
  const bool without_resistance = branch.resistance <= 0;
  return without_resistance &&
         (branch.law == Law::resistor || branch.law == Law::source || branch.law == Law::diode);
}

/// Volts between the points of a branch that fixes them.
[[nodiscard]] inline double fixed_volts(const Branch& branch) {
  return branch.law == Law::resistor ? 0 : branch.size;
}

}  // namespace ohmtrail::solve
