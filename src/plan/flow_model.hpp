#pragma once
#include "ohmtrail/solve/case_solution.hpp"
#include "plan/design_space.hpp"
#include "plan/guards.hpp"
#include "plan/mip.hpp"

/// The currents of one case as linear rows that every design satisfies exactly where its laws are linear, and
/// within a stated envelope where they are not.
///
/// Unknowns: voltage of each point, current of each element, and for a run in scope one current a candidate,
/// which is zero unless the candidate is taken.
///   Kirchhoff's current law     Σ i = 0 at each point
///   plain element               V(from) − V(to) = r i
///   warm wire                   r lies between r(0) and r(ampacity): a band instead of a line
///   run in scope                V(from) − V(to) = Σ over candidates of r i (with its band), |i| ≤ ampacity ·
///   taken constant power              i ≥ tangents of P / V, i ≤ its chord battery                     V = E
///   − R i charger, isolator           two straight pieces each, chosen by binaries drop of a load V ≥
///   terminal voltage of its supply − limit; one of several supplies by binaries
///   device                      1.25 |i| ≤ the largest rating not above the ampacity of each run that it
///   guards
namespace ohmtrail::plan {

/// Adds the rows of one case. `probe`: the case solved with any design, for its supplies and islands alone.
/// `taken[k][c]`: column of candidate c of run in scope k.
void add_flow_rows(Mip& mip, const DesignSpace& space, const CaseSpace& in_case, const Guards& guards,
                   const solve::CaseSolution& probe, const std::vector<std::vector<int>>& taken);

}  // namespace ohmtrail::plan
