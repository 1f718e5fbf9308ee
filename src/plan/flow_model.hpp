#pragma once
#include "plan/current_ranges.hpp"
#include "plan/design_space.hpp"
#include "plan/guards.hpp"
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
///   drop of a load              V ≥ terminal voltage of its supply − limit; one of several supplies by
///   binaries device                      1.25 |i| ≤ the largest rating not above the ampacity of each run
///   that it guards
/// Curves are convex, so a tangent anywhere is valid: `refine` adds those at a solved state.
namespace ohmtrail::plan {

class FlowModel {
 public:
  /// Adds the rows of one case to `mip`. `taken[k][c]`: column of candidate c of run in scope k. `share`: of
  /// each drop limit that loads may use; 1 for a valid relaxation, less to look for designs that surely keep
  /// their limits.
  FlowModel(Mip& mip, const DesignSpace& space, const CaseSpace& in_case, const Guards& guards,
            const solve::CaseSolution& probe, const std::vector<std::vector<int>>& taken, double share = 1);

  /// Adds tangents at a solved state of this case, for the candidates taken in `value`, the master's
  /// solution.
  void refine(Mip& mip, const solve::CaseSolution& solved, const std::vector<double>& value) const;

 private:
  friend class FlowRows;

  /// x ≥ k (3 t² i − 2 t³ taken), signed so that i is positive.
  struct Warm {
    int element = -1;                          ///< whose current decides
    int amperes = -1, extra = -1, taken = -1;  ///< columns; taken −1: always
    double k = 0, sign = 1;
    double least = 0;  ///< A, turned by sign: tangents from here on are valid
  };
  /// i ≥ 2 P / v − (P / v²) V.
  struct PowerDraw {
    int element = -1;
    int amperes = -1, plus = -1, minus = -1;  ///< columns
    double watts = 0;
  };
  static void add_tangent(Mip& mip, const Warm& warm, double amperes);
  static void add_tangent(Mip& mip, const PowerDraw& draw, double volts);

  std::vector<Warm> warm_;
  std::vector<PowerDraw> draws_;
};

}  // namespace ohmtrail::plan
