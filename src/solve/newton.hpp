#pragma once
#include <vector>

#include "solve/jacobian.hpp"
#include "solve/operating_point.hpp"

namespace ohmtrail::solve {

/// Brings the imbalance of every cluster to rounding error, with modes as they stand. Returns one mark per
/// island: 1 where no upper solution was found from this start.
[[nodiscard]] std::vector<char> newton(const Circuit& circuit, OperatingPoint& at, Jacobian& jacobian,
                                       const Demand& demand);

}  // namespace ohmtrail::solve
