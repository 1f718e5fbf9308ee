#pragma once
#include "ohmtrail/netlist/system.hpp"

namespace ohmtrail::diagnose::inference {

/// The error of one reading, in its SI unit. A meter's accuracy is a 95 % bound: its standard deviation is
/// the bound over 1.96, since errors of one meter scatter about normally over a production run.
struct ReadingError {
  double independent = 0;  ///< counts, rounding to the last digit, half of a spread about the value
  double gain = 0;         ///< relative; one for all readings of that meter and quantity
  double zero = 0;         ///< clamps: the part of the counts that is a common offset
};

[[nodiscard]] ReadingError reading_error(const netlist::System& system, const netlist::Reading& reading);

/// The value as a number in SI (°C for temperatures).
[[nodiscard]] double measured_value(const netlist::Reading& reading);

inline constexpr double bound_over_sd = 1.96;

}  // namespace ohmtrail::diagnose::inference
