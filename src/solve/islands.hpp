#pragma once
#include <vector>

#include "ohmtrail/solve/circuit.hpp"
#include "solve/partition.hpp"

namespace ohmtrail::solve {

/// Parts of the circuit that no closed branch joins.
struct Islands {
  int count = 0;
  std::vector<int> of_point;
  std::vector<int> reference;  ///< per island, the point at 0 V; −1: no source, so no voltages
};

[[nodiscard]] Islands find_islands(const Circuit& circuit);

/// Points that branches join which may carry a current to a load: all that are neither open nor loads of
/// constant current or power.
[[nodiscard]] Partition fed_parts(const Circuit& circuit);
/// Loads whose terminals no conducting branches join: no current can reach them, whatever the state of diodes
/// and regulators.
[[nodiscard]] std::vector<char> find_unfed(const Circuit& circuit, Partition& fed);
/// The same islands, from both.
[[nodiscard]] Islands find_islands(const Circuit& circuit, Partition& fed, const std::vector<char>& unfed);

}  // namespace ohmtrail::solve
