#pragma once
#include <optional>
#include <vector>

#include "ohmtrail/diagnose/split.hpp"
#include "ohmtrail/solve/case_solution.hpp"

namespace ohmtrail::diagnose {

/// One element of a route.
struct Leg {
  int element = -1;
  bool forward = true;    ///< passed from its `from` to its `to`
  double lost = 0;        ///< V; where it supplies: its open-circuit minus its terminal voltage
  bool supplies = false;  ///< a battery or charger of the route's own supply, passed from minus to plus
};

/// The way of most current from a supply through a load and back. The legs' losses add up to the load's sag.
struct Route {
  const solve::Supply* supply = nullptr;
  std::vector<Leg>
      source;  ///< the supply's batteries (or charger) and the links between them, from its plus end
  std::vector<Leg> there;  ///< from the supply's plus to the load's plus
  std::vector<Leg> back;   ///< from the load's minus to the supply's minus

  /// Source, there and back in one row.
  [[nodiscard]] std::vector<Leg> legs() const;
};

/// Empty where the load does not run or no supply feeds it.
[[nodiscard]] std::optional<Route> route(const solve::CaseSolution& solved, const solve::LoadResult& load);

/// The way of a charger's current to batteries in one string, through the links between them, and back. The
/// legs' losses add up to what is lost between the charger's posts and the batteries' own. Empty: nothing
/// joins them.
[[nodiscard]] std::optional<std::vector<Leg>> charging_way(const solve::CaseSolution& solved,
                                                           const solve::Supply& charger,
                                                           const solve::Supply& batteries);

/// What a leg of one case loses in another case of the same system, passed in the same direction. V.
[[nodiscard]] double lost_in(const solve::CaseSolution& other, const Leg& leg);

/// Adds volts to the part that an element of this role belongs to.
void add(Parts& parts, network::Role role, double volts);

}  // namespace ohmtrail::diagnose
