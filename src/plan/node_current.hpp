#pragma once
#include <vector>

#include "plan/box_bounds.hpp"
#include "plan/load_tree.hpp"

/// The least current that a node of the load tree can carry.
namespace ohmtrail::plan {

/// What the drop at a node's far end says of its current, in every design of the box whose bounds are known.
/// With drop d there, and at least and most d_l more on the way to load l:
///   constant power   Σ P_l / V_l, V_l ≤ terminal.high − d − least d_l; by Jensen's inequality at least
///                    P / (terminal.high − d − mean of the least d_l weighted by P_l)
///   resistance       Σ V_l / R_l, V_l ≥ terminal.low − d − most d_l
/// and neither is below what the bounds say.
struct NodeCurrent {
  double given = 0;                 ///< A, constant
  double least_power = 0;           ///< A, of the bounds
  double watts = 0, volts = 0;      ///< W, V
  double least_resistive = 0;       ///< A, of the bounds
  double amperes = 0, siemens = 0;  ///< amperes − siemens · d
  double lowest_volts = 0;          ///< V, loads have no less

  /// A, at drop `d`.
  [[nodiscard]] double at(double d) const { return given + power(d) + resistive(d); }
  /// A, at any drop from `low` to `high`.
  [[nodiscard]] double between(double low, double high) const { return given + power(low) + resistive(high); }
  [[nodiscard]] double power(double d) const;
  [[nodiscard]] double resistive(double d) const;
};

/// Per node of the tree.
[[nodiscard]] std::vector<NodeCurrent> node_currents(const RadialCase& in_case, const LoadTree& tree,
                                                     const Bounds& known);

}  // namespace ohmtrail::plan
