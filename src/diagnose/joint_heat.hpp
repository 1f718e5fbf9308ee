#pragma once
#include <compare>
#include <map>
#include <set>
#include <vector>

#include "ohmtrail/diagnose/joint_temperature.hpp"

namespace ohmtrail::diagnose {

/// Which end of which conductor a termination is of.
struct WireEnd {
  std::size_t run = 0;
  network::Part wire = network::Part::wire;  ///< or return_wire
  bool at_from = true;
  friend auto operator<=>(const WireEnd&, const WireEnd&) = default;
};

/// Temperatures of many connections of one solved case: who touches whom is found once.
class JointHeat {
 public:
  JointHeat(const netlist::System& system, const solve::CaseSolution& solved);

  /// As `joint_temperature`.
  [[nodiscard]] std::optional<JointTemperature> of(int element) const;

 private:
  /// What heats a connection and what cools it.
  struct Surround {
    double heat = 0;           ///< W, its own and that of the terminations through which it is cooled
    std::set<WireEnd> cables;  ///< its own cable, and those whose lugs sit on a point that it touches
  };
  [[nodiscard]] Surround surround_of(int element) const;

  const netlist::System& system_;
  const solve::CaseSolution& solved_;
  std::vector<std::vector<int>> terminations_;  ///< per point, element indices
  std::map<WireEnd, int> wires_;                ///< element index of each conductor, under its `from` end
};

}  // namespace ohmtrail::diagnose
