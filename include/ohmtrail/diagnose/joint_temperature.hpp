#pragma once
#include <optional>
#include <string>

#include "ohmtrail/netlist/system.hpp"
#include "ohmtrail/solve/case_solution.hpp"

/// How hot a connection gets, from the heat that must leave along the cables on both its sides.
namespace ohmtrail::diagnose {

/// An estimate: the cables count as infinite fins in still air. Where what heats it comes in turns, at the
/// end of a turn.
struct JointTemperature {
  double celsius = 0;            ///< to 5 K; as computed, however far beyond what anything stands
  double rise = 0;               ///< K above the cables' own temperature, not rounded
  int cables = 0;                ///< wire ends that carry the heat away
  double insulation_rating = 0;  ///< °C, lowest of the cables that touch it
  std::optional<double> turn;    ///< s, how long the load is on; empty: what heats it lasts
  bool too_hot_to_touch = false;
  bool above_insulation = false;
};

/// Bare metal held for a second: above this it burns.
inline constexpr double touch_limit_celsius = 65;

/// Of a termination, joint, switch, fuse or shunt; empty for other roles, without current, or where no cable
/// touches it.
[[nodiscard]] std::optional<JointTemperature> joint_temperature(const netlist::System& system,
                                                                const solve::CaseSolution& solved,
                                                                int element);

/// What to say of a temperature, with the limit and its source; empty when there is nothing to call out.
[[nodiscard]] std::optional<std::string> heat_warning(const JointTemperature& joint);

}  // namespace ohmtrail::diagnose
