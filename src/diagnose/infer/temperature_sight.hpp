#pragma once
#include "diagnose/infer/model.hpp"
#include "diagnose/joint_surround.hpp"
#include "ohmtrail/solve/solver.hpp"

/// What a thermometer tells: of a wire its current, of a connection the heat that it gives off.
namespace ohmtrail::diagnose::inference {

/// T = ambient + rise (i / rated)²; °C.
[[nodiscard]] double wire_temperature(const solve::Heating& heating, double current);
[[nodiscard]] double wire_temperature_by_current(const solve::Heating& heating, double current);

/// The mean of its cables' own temperatures, and above it the rise that its heat i²r makes along them; °C.
[[nodiscard]] double joint_temperature(const JointSight& joint, const solve::Circuit& circuit,
                                       const solve::Solution& solution);
/// Its derivatives, from one adjoint solve for each current in it.
[[nodiscard]] solve::Gradient joint_temperature_gradient(const JointSight& joint,
                                                         const solve::Circuit& circuit,
                                                         const solve::Solution& solution,
                                                         const solve::Solver& solver);

/// Who heats and who cools the connection; no fins where no cable touches it.
[[nodiscard]] JointSight joint_sight(const netlist::System& system, const network::Network& network,
                                     int element);

}  // namespace ohmtrail::diagnose::inference
