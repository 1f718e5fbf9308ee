#pragma once
#include <memory>
#include <string>
#include <tl/expected.hpp>
#include <vector>

#include "ohmtrail/solve/circuit.hpp"
#include "ohmtrail/solve/solution.hpp"

namespace ohmtrail::solve {

/// Why a circuit has no answer that can be certified.
struct Failure {
  enum class Kind {
    shorted_source,   ///< a source across one merged point; `branches` holds it and the 0 Ω branches of its
                      ///< loop
    opposed_sources,  ///< two 0 Ω sources of unlike voltage across the same points
    overloaded,  ///< constant-current loads take more than regulators at their limit give; `branches`: those
    not_certified  ///< residuals above 1e-9: a bug or a hopelessly scaled circuit
  } kind = Kind::not_certified;
  std::vector<int> branches;
  double amperes = 0;  ///< shorted_source: what its own resistance would let through
};

/// Derivatives of one scalar (a voltage between points, a branch current) at a solved state.
struct Gradient {
  std::vector<double> by_resistance;  ///< per branch, with respect to Branch::resistance
  std::vector<double> by_size;        ///< per branch, with respect to Branch::size
};

/// One branch with other values of its own law: resistance, size or heating.
struct Replacement {
  int branch = -1;
  Branch by;
};

struct LoadGain {
  int load = -1;  ///< branch; −1: none was asked for
  double volts = 0;
};

/// What Newton's method cost since a solver was made.
struct Effort {
  int orderings = 0;   ///< of the unknowns: one for each set of points that 0 Ω and sources join
  int factorings = 0;  ///< of the Jacobian
  int steps = 0;       ///< forward and back substitutions
};

struct SolverState;

/// Solves one circuit again and again: the ordering is made once, values may change between solves.
class Solver {
 public:
  explicit Solver(Circuit circuit);
  ~Solver();
  Solver(Solver&&) noexcept;
  Solver& operator=(Solver&&) noexcept;

  [[nodiscard]] const Circuit& circuit() const;
  void set_resistance(int branch, double ohms);
  void set_size(int branch, double size);

  /// Newton from `start` (the last solution by default), upper branch of constant-power loads.
  [[nodiscard]] tl::expected<Solution, Failure> solve();
  [[nodiscard]] const Effort& effort() const;

  // What follows holds at the state of the last successful solve, whose solution must have no `collapse`.
  // Loads that dropped out stay out, and regulators and diodes stay as they are.

  /// The response of every point's voltage to currents: `injection` is per point, in A into the point;
  /// returns V per point. One back-substitution; converters' inputs take what they took.
  [[nodiscard]] std::vector<double> respond(const std::vector<double>& injection) const;

  /// One back-substitution each (the Jacobian is symmetric: the adjoint is the response), and one more for
  /// every converter. Branches of 0 Ω have their one-sided derivative, 0 where others of 0 Ω bridge them.
  [[nodiscard]] Gradient gradient_of_voltage(int red, int black) const;
  [[nodiscard]] Gradient gradient_of_current(int branch) const;

  /// The solution with one resistance changed, for any change. The factor is kept: a rank-one correction of
  /// it (Sherman–Morrison) is iterated to the full accuracy of `solve`; where that stalls, or a load,
  /// regulator or diode changes its state, the circuit is solved anew. This solver is left as it was.
  [[nodiscard]] tl::expected<Solution, Failure> with_resistance(int branch, double ohms);

  /// For each branch b: estimate of the volts that branch `load` gains when b alone has resistance[b]. From
  /// the circuit made linear at the present state, with the whole change of b's current: exact where nothing
  /// but resistors, sources and constant currents is there. One selected inversion, shared by all calls until
  /// the next solve, and one back-substitution. 0 for branches without resistance.
  [[nodiscard]] std::vector<double> estimate_gains(int load, const std::vector<double>& resistance) const;

  /// For each replacement made alone: the one of `loads` that gains most by it, the first of equals, and how
  /// much; estimated like `estimate_gains`. On a circuit that series and parallel steps reduce (every radial
  /// one) all together cost a few passes over it; elsewhere one back-substitution each.
  [[nodiscard]] std::vector<LoadGain> estimate_best_gains(const std::vector<int>& loads,
                                                          const std::vector<Replacement>& replacements) const;

 private:
  std::unique_ptr<SolverState> state_;
};

}  // namespace ohmtrail::solve
