#pragma once
#include <optional>
#include <string>
#include <vector>

#include "ohmtrail/diagnose/split.hpp"

/// Why the lights pulse when the fridge starts: the change of every load's voltage between two cases.
namespace ohmtrail::diagnose {

/// What one element adds to a load's change of voltage.
struct ElementSwing {
  std::string element;
  network::Role role = network::Role::wire;
  double change = 0;  ///< V, as it moves the load's voltage: negative pulls it down
};

/// One load that runs in both cases. Shares add up to `change` exactly.
struct Swing {
  std::string load, from_case, to_case;
  double before = 0, after = 0;        ///< V
  double change = 0;                   ///< V, after − before
  double open_circuit = 0;             ///< V of it that comes from another supply or its set point
  Parts parts;                         ///< V of it by category, signed like `change`
  std::vector<ElementSwing> elements;  ///< largest share first, ties in path order
  double fraction = 0;                 ///< |change| over the load's nominal voltage
  double limit_fraction = 0;
  bool limit_given = false;  ///< false: 2 % of nominal, common practice
  bool within = true;
};

/// Largest swing (as a fraction) first, ties in file order. Both solutions are of one system.
[[nodiscard]] std::vector<Swing> swing(const netlist::System& system, const solve::CaseSolution& from,
                                       const solve::CaseSolution& to);

}  // namespace ohmtrail::diagnose
