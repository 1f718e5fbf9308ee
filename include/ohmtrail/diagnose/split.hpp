#pragma once
#include <string>
#include <vector>

#include "ohmtrail/solve/case_solution.hpp"

namespace ohmtrail::diagnose {

/// Volts by what loses them, along the path from the supply to a load and back.
struct Parts {
  double battery = 0;  ///< the supply's open-circuit minus its terminal voltage
  double wires = 0;
  double terminations = 0;
  double joints = 0;
  double switchgear = 0;  ///< switches, fuses and shunts
  double isolators = 0;

  /// V; the sag.
  [[nodiscard]] double sum() const {
    return battery + wires + terminations + joints + switchgear + isolators;
  }
};

/// Where one running load's sag goes. V; the parts add up to `sag` exactly (Kirchhoff's voltage law).
struct SagSplit {
  std::string in_case, load;
  double sag = 0;
  Parts parts;
  network::Role supply = network::Role::battery;  ///< what feeds it: battery or charger
};

/// One row for every running load that has a supply, in file order.
[[nodiscard]] std::vector<SagSplit> split(const solve::CaseSolution& solved);

}  // namespace ohmtrail::diagnose
