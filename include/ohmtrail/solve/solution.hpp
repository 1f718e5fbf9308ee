#pragma once
#include <optional>
#include <vector>

namespace ohmtrail::solve {

/// The most that the loads of an island can be given, where what they ask for has no solution.
struct Collapse {
  int branch = -1;        ///< the load with lowest voltage over nominal at the fold
  double most_power = 0;  ///< W, that load's power at the fold
  double at_volts = 0;    ///< V, that load's voltage at the fold
  double share = 0;       ///< largest share of the constant-power loads that was carried
};

/// Voltages and currents of one circuit, with the residuals that prove them. NaN where a value does not
/// exist.
struct Solution {
  std::vector<double> voltage;      ///< V, per point; NaN in an island without a source
  std::vector<double> current;      ///< A, per branch, positive from → to
  std::vector<double> drop;         ///< V, per branch, V(from) − V(to), formed without cancellation
  std::vector<double> heat;         ///< W, per branch: i²r; loads: power taken
  std::vector<double> resistance;   ///< Ω, per branch, the value used; NaN where the branch has none
  std::vector<double> temperature;  ///< °C, per branch, NaN where not modelled
  std::vector<bool> running;        ///< per branch; false for open, off and dropped-out ones
  double current_residual = 0;  ///< largest |ΣI| at a point over the largest branch current of its island
  double power_residual = 0;    ///< |ΣP| over the power that the island's sources deliver
  std::optional<Collapse> collapse;  ///< set: the state is that at `share`
};

}  // namespace ohmtrail::solve
