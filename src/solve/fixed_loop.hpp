#pragma once
#include <vector>

#include "ohmtrail/solve/circuit.hpp"

namespace ohmtrail::solve {

/// The loop that `closing` makes with branches that fix their voltage: `closing` first, then the way back
/// from its `to` to its `from` with fewest branches.
[[nodiscard]] std::vector<int> fixed_loop(const Circuit& circuit, const std::vector<char>& fixes,
                                          int closing);

}  // namespace ohmtrail::solve
