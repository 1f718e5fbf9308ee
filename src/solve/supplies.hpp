#pragma once
#include <optional>
#include <vector>

#include "ohmtrail/solve/case_solution.hpp"
#include "solve/islands.hpp"
#include "solve/partition.hpp"

namespace ohmtrail::solve {

/// Every battery string and every charger with a share in this case.
[[nodiscard]] std::vector<Supply> find_supplies(const network::Network& network, const Islands& islands,
                                                const Solution& solution);

/// Who feeds a load. Usually the supply of its island that delivers most power, ties by file order. A
/// converter that shares its minus with the rest keeps the island whole, yet what hangs on its output has
/// nothing to lose from the battery's posts: there the converter's output is the supply.
class Feeders {
 public:
  Feeders(const network::Network& network, const std::vector<Supply>& supplies);

  /// nullptr: none in this island. `plus`: a point.
  [[nodiscard]] const Supply* of(int plus, int island);

 private:
  [[nodiscard]] const Supply* strongest(int island) const;

  const std::vector<Supply>& supplies_;
  std::vector<const Supply*> outputs_;  ///< of converters
  std::optional<Partition> nets_;       ///< points that conductors join; only where there are converters
};

}  // namespace ohmtrail::solve
