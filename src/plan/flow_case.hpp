#pragma once
#include <vector>

#include "plan/current_ranges.hpp"
#include "plan/design_space.hpp"
#include "plan/flow_tangents.hpp"
#include "plan/guards.hpp"
#include "plan/mip.hpp"

/// The columns of one case in the flow model, and the rows that stand on them.
namespace ohmtrail::plan {

/// One case while its rows are added.
struct FlowCase {
  Mip& mip;
  const DesignSpace& space;
  const CaseSpace& in_case;
  const Guards& guards;
  const solve::CaseSolution& probe;
  const std::vector<Interval>& most;           ///< A, per element: its largest current over the cases
  const std::vector<std::vector<int>>& taken;  ///< column per run in scope and candidate
  double share = 1;                            ///< of each drop limit
  CurrentRanges ranges;
  std::vector<int> volts;                      ///< column per point
  std::vector<int> amperes;                    ///< column per element; −1: carries nothing
  std::vector<std::vector<Term>> current_law;  ///< per point: what flows out of it

  [[nodiscard]] const network::Network& network() const { return in_case.network; }
  /// V(from) − V(to).
  [[nodiscard]] std::vector<Term> across(int from, int to, double factor = 1) const;
  /// A current from one point to another takes part in Kirchhoff's law at both.
  void flow(int column, int from, int to);
};

/// Conductors of the runs in scope: one current a candidate.
void add_run_rows(FlowCase& flow, FlowTangents& tangents);

/// All other elements that conduct. After `add_run_rows`.
void add_element_rows(FlowCase& flow, FlowTangents& tangents);

/// Drop limits and the devices that stand guard. After all currents have columns.
void add_limit_rows(FlowCase& flow);
void add_device_rows(FlowCase& flow);

}  // namespace ohmtrail::plan
