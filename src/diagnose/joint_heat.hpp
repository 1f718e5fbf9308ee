#pragma once
#include <optional>
#include <span>

#include "joint_surround.hpp"
#include "ohmtrail/diagnose/joint_temperature.hpp"
#include "ohmtrail/trade/fin.hpp"

namespace ohmtrail::diagnose {

/// Temperatures of many connections of one solved case: who touches whom is found once.
class JointHeat {
 public:
  JointHeat(const netlist::System& system, const solve::CaseSolution& solved)
      : system_(system), solved_(solved), surroundings_(system, solved.network) {}

  /// As `joint_temperature`.
  [[nodiscard]] std::optional<JointTemperature> of(int element) const;

 private:
  struct Rise {
    double kelvin = 0;
    std::optional<double> turn;  ///< s; empty: what heats it lasts
  };
  /// What heats a connection, W: all of it, and what stays while loads of short duty rest.
  struct Heat {
    double all = 0, lasting = 0;
  };
  [[nodiscard]] Heat heat_of(const Surround& around) const;
  [[nodiscard]] Rise rise_of(const Heat& heat, std::span<const trade::Fin> fins,
                             units::Temperature ambient) const;

  const netlist::System& system_;
  const solve::CaseSolution& solved_;
  Surroundings surroundings_;
};

}  // namespace ohmtrail::diagnose
