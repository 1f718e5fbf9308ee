#pragma once
#include <optional>
#include <string>
#include <vector>

#include "ohmtrail/diagnose/split.hpp"
#include "ohmtrail/netlist/system.hpp"

/// Where the volts go between a running charger and the batteries that it is meant for.
namespace ohmtrail::diagnose {

/// What may be lost from charger to battery, of nominal. Common practice.
inline constexpr double most_charging_drop = 0.03;
/// Chargers hold their set point to about 1 %; what is missing beyond it was lost on the way. Common
/// practice.
inline constexpr double set_point_tolerance = 0.01;

/// What one element on the way loses.
struct ChargeLoss {
  std::string element;
  network::Role role = network::Role::wire;
  double lost = 0;  ///< V
  /// V less lost on the way with this element alone made good, solved again; empty: nothing is wrong with it.
  std::optional<double> comes_back;
};

/// One running charger and one string of batteries. `lost` is the sum of the parts, and of the elements'
/// losses (Kirchhoff's voltage law).
struct ChargeSplit {
  std::string in_case, charger;
  std::vector<std::string> batteries;           ///< those of the string, file order
  double limit = 0;                             ///< A, the most that the charger gives
  double set_point = 0;                         ///< V
  double charger_volts = 0, battery_volts = 0;  ///< V at the posts; of a string without its links
  double current = 0;                           ///< A into the batteries; negative: they give in spite of it
  double lost = 0;                              ///< V, charger_volts − battery_volts
  Parts parts;
  std::vector<ChargeLoss> elements;  ///< largest first
  double fraction = 0;               ///< of the string's nominal voltage
  bool within = true;                ///< below `most_charging_drop`, or not charging
  /// V that the batteries come to at last: each takes its tail current, the loads of the case stay. Empty: no
  /// such solution.
  std::optional<double> reaches;
  bool full = true;               ///< that is the set point, within its tolerance
  bool charger_is_spent = false;  ///< it gives all it can and yet they are not full
};

/// Every charger that runs and delivers, with every string in its reach whose voltage it suits; largest loss
/// of a case first.
[[nodiscard]] std::vector<ChargeSplit> charging(const netlist::System& system,
                                                const solve::CaseSolution& solved);

}  // namespace ohmtrail::diagnose
