#pragma once
#include "joint_surround.hpp"
#include "ohmtrail/diagnose/joint_temperature.hpp"

namespace ohmtrail::diagnose {

/// Temperatures of many connections of one solved case: who touches whom is found once.
class JointHeat {
 public:
  JointHeat(const netlist::System& system, const solve::CaseSolution& solved)
      : system_(system), solved_(solved), surroundings_(system, solved.network) {}

  /// As `joint_temperature`.
  [[nodiscard]] std::optional<JointTemperature> of(int element) const;

 private:
  const netlist::System& system_;
  const solve::CaseSolution& solved_;
  Surroundings surroundings_;
};

}  // namespace ohmtrail::diagnose
