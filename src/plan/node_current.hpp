#pragma once
#include <vector>

#include "plan/box_bounds.hpp"
#include "plan/front.hpp"
#include "plan/load_tree.hpp"

/// The least current that a node of the load tree can carry.
namespace ohmtrail::plan {

/// What the drop at a node's far end says of its current, in every design of the box whose bounds are known.
/// With drop d there, and at least and most d_l more on the way to load l:
///   constant power   Σ P_l / V_l, V_l ≤ terminal.high − d − least d_l; by Jensen's inequality at least
///                    P / (terminal.high − d − mean of the least d_l weighted by P_l)
///   resistance       Σ V_l / R_l, V_l ≥ terminal.low − d − most d_l
/// and neither is below what the bounds say. A label knows the d_l of the cable that it chooses: its `sag` is
/// Σ P_l · least d_l, its `lag` Σ most d_l / R_l.
struct NodeCurrent {
  double given = 0;            ///< A, constant
  double least_power = 0;      ///< A, of the bounds
  double watts = 0;            ///< P
  double least_sag = 0;        ///< W·V, of the bounds
  double least_resistive = 0;  ///< A, of the bounds
  double siemens = 0;          ///< Σ 1 / R_l
  double most_lag = 0;         ///< A, of the bounds
  Interval terminal;           ///< V
  double lowest_volts = 0;     ///< V, loads have no less
  double least_drop = 0;       ///< V, of the bounds, at the near end
  double most_amperes = 0;     ///< A, of the bounds

  /// A, at drop `d` with the cable of the label.
  [[nodiscard]] double at(double d, const Label& label) const {
    return given + power(d, label.sag) + resistive(d, label.lag);
  }
  /// A, at any drop from `low` to `high`.
  [[nodiscard]] double between(double low, double high, const Label& label) const {
    return given + power(low, label.sag) + resistive(high, label.lag);
  }
  /// How fast the current at most rises with the drop, A/V.
  [[nodiscard]] double slope(double d, const Label& label) const;

 private:
  [[nodiscard]] double power(double d, double sag) const;
  [[nodiscard]] double resistive(double d, double lag) const;
  [[nodiscard]] double volts(double d, double sag) const;
};

/// Per node of the tree.
[[nodiscard]] std::vector<NodeCurrent> node_currents(const RadialCase& in_case, const LoadTree& tree,
                                                     const Bounds& known);

}  // namespace ohmtrail::plan
