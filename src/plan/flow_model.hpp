#pragma once
#include "plan/design_space.hpp"
#include "plan/flow_tangents.hpp"
#include "plan/guards.hpp"
#include "plan/interval.hpp"
#include "plan/mip.hpp"

/// The currents of one case as linear rows: every design that keeps its limits satisfies them.
///
/// Unknowns: voltage of each point, current of each element, and for a run in scope one current a candidate,
/// which is zero unless the candidate is taken.
///   Kirchhoff's current law     Σ i = 0 at each point
///   plain element               V(from) − V(to) = r i
///   warm wire                   V = r(0) i + x,  x ≥ tangents of k i³, x ≤ a line above it
///   run in scope                the same for each candidate, times taken; |i| ≤ ampacity · taken
///   constant power              i ≥ tangents of P / V, i ≤ its chord
///   battery                     V = E − R i
///   charger, isolator           straight pieces, chosen by binaries
///   drop of a load              V ≥ terminal voltage of its supply − limit; of several the leader, by
///   binaries device                      1.25 |i| ≤ the largest rating not above the ampacity of each run it
///   guards
/// Curves are convex, so a tangent anywhere is valid: `refine` adds those at a solved state.
namespace ohmtrail::plan {

/// Per element: A, its largest current over the cases in any design that keeps its limits.
[[nodiscard]] std::vector<Interval> most_amperes(const DesignSpace& space,
                                                 const std::vector<solve::CaseSolution>& probes);

class FlowModel {
 public:
  /// Adds the rows of one case to `mip`. `taken[k][c]`: column of candidate c of run in scope k. `share`: of
  /// each drop limit that loads may use; 1 for a valid relaxation, less to look for designs that surely keep
  /// their limits. `most`: as `most_amperes` has it.
  FlowModel(Mip& mip, const DesignSpace& space, const CaseSpace& in_case, const Guards& guards,
            const solve::CaseSolution& probe, const std::vector<Interval>& most,
            const std::vector<std::vector<int>>& taken, double share = 1);

  /// Adds tangents at a solved state of this case, for the candidates taken in `value`, the master's
  /// solution.
  void refine(Mip& mip, const solve::CaseSolution& solved, const std::vector<double>& value) const {
    tangents_.refine(mip, solved, value);
  }

 private:
  FlowTangents tangents_;
};

}  // namespace ohmtrail::plan
