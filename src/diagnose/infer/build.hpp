#pragma once
#include <map>
#include <string>
#include <vector>

#include "diagnose/infer/model.hpp"
#include "ohmtrail/netlist/system.hpp"
#include "ohmtrail/network/network.hpp"

namespace ohmtrail::diagnose::inference {

/// A model together with the networks that its cases were built from.
struct Survey {
  Model model;
  std::vector<network::Network> networks;        ///< one a case of the model
  std::map<std::string, int> element_parameter;  ///< passive elements and batteries' resistances by id
  std::map<std::string, int> emf_parameter;
  std::vector<double>
      display_factor;  ///< per parameter: resistance at working temperature over the unknown's value
};

/// Unknowns, observations and circuits of every case in which something was read (the first case where none
/// was).
[[nodiscard]] Survey build_survey(const netlist::System& system);

}  // namespace ohmtrail::diagnose::inference
