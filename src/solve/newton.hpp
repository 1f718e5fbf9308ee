#pragma once
#include <vector>

#include "solve/jacobian.hpp"
#include "solve/operating_point.hpp"

namespace ohmtrail::solve {

/// Relative imbalances at which Newton may stop.
inline constexpr double at_rounding_error = 2e-14;
inline constexpr double near_enough_to_start = 1e-6;

/// Brings the imbalance of every cluster down to `enough`, with modes as they stand. Returns one mark per
/// island: 1 where no upper solution was found from this start.
[[nodiscard]] std::vector<char> newton(const Circuit& circuit, OperatingPoint& at, Jacobian& jacobian,
                                       const Demand& demand, Effort& effort,
                                       double enough = at_rounding_error);

}  // namespace ohmtrail::solve
