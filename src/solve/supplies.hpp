#pragma once
#include <vector>

#include "ohmtrail/solve/case_solution.hpp"
#include "solve/islands.hpp"

namespace ohmtrail::solve {

/// Every battery string and every charger with a share in this case.
[[nodiscard]] std::vector<Supply> find_supplies(const network::Network& network, const Islands& islands,
                                                const Solution& solution);

}  // namespace ohmtrail::solve
