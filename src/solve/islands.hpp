#pragma once
#include <vector>

#include "ohmtrail/solve/circuit.hpp"

namespace ohmtrail::solve {

/// Parts of the circuit that no closed branch joins.
struct Islands {
  int count = 0;
  std::vector<int> of_point;
  std::vector<int> reference;  ///< per island, the point at 0 V; −1: no source, so no voltages
};

[[nodiscard]] Islands find_islands(const Circuit& circuit);

}  // namespace ohmtrail::solve
