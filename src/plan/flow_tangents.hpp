#pragma once
#include <vector>

#include "ohmtrail/solve/case_solution.hpp"
#include "plan/curve.hpp"
#include "plan/mip.hpp"

/// The curves of one case in the flow model. They are convex, so a tangent anywhere is valid: `refine` adds
/// those at a solved state.
namespace ohmtrail::plan {

class FlowTangents {
 public:
  /// The column of x = k i³, least ≤ k ≤ most, times `taken` (a column, −1: always), of an element whose
  /// current lies in a range.
  int add_warmth(Mip& mip, int element, int amperes, int taken, const Curve& curve, double low, double high);

  /// i ≥ P / V between two columns of voltage, and i ≤ its chord over a range of V.
  void add_power(Mip& mip, int element, int amperes, int plus, int minus, double watts, double low,
                 double high);

  /// Adds tangents at a solved state of the case, for the candidates taken in `value`, the master's solution.
  void refine(Mip& mip, const solve::CaseSolution& solved, const std::vector<double>& value) const;

 private:
  /// x ≥ k (3 t² i − 2 t³ taken), signed so that i is positive.
  struct Warm {
    int element = -1;                          ///< whose current decides
    int amperes = -1, extra = -1, taken = -1;  ///< columns
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
