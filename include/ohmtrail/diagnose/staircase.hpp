#pragma once
#include <optional>
#include <string>
#include <tl/expected.hpp>
#include <vector>

#include "ohmtrail/netlist/system.hpp"
#include "ohmtrail/solve/case_solution.hpp"

/// The voltage along the path from the supply through one load and back, step by step.
namespace ohmtrail::diagnose {

/// One element of the path. Steps go from the supply's open-circuit voltage down to 0 at its minus.
struct Step {
  std::string element;
  network::Role role = network::Role::wire;
  std::string from, to;  ///< points, in the order in which the path passes them
  double lost = 0;       ///< V lost in it; the load's own step: its voltage
  double after = 0;      ///< V left after it, above the supply's minus, as found
  double lost_as_rated = 0,
         after_as_rated = 0;  ///< the same with every element sound; equal to found where no such solution
};

struct Staircase {
  std::string in_case, load;
  std::string supply;           ///< first element of the supply
  double open_circuit = 0;      ///< V; where the staircase starts
  double terminal = 0;          ///< V at the supply's posts, as found
  std::optional<double> limit;  ///< V that may be lost between the posts and the load; empty for test loads
  bool as_rated_known = false;
  std::vector<Step>
      steps;  ///< the supply's batteries from its minus up, the way to the load, the load, the way back
};

/// The same network with every element at its sound resistance (unknown ones, and the batteries' charge, as
/// found).
[[nodiscard]] network::Network as_rated(const netlist::System& system, network::Network network);

/// The staircase of the load with this element index; empty where it does not run or has no supply.
/// `rated` is the solution of `as_rated` of the same network, or null.
[[nodiscard]] std::optional<Staircase> staircase(const solve::CaseSolution& found,
                                                 const solve::CaseSolution* rated, int load_element);

}  // namespace ohmtrail::diagnose
