#pragma once
#include <optional>
#include <vector>

#include "ohmtrail/netlist/system.hpp"
#include "ohmtrail/solve/case_solution.hpp"

namespace ohmtrail::diagnose {

/// One element of a circuit made good. What is empty stays as found.
struct Cure {
  int element = -1;
  double resistance = 0;                  ///< Ω; wires with a temperature coefficient: at 20 °C
  std::optional<double> open_circuit;     ///< V, batteries
  std::optional<solve::Heating> heating;  ///< wires
};

/// Volts that differ by less are equal but for rounding: the file's order decides.
inline constexpr double same_volts = 1e-9;

/// Volts that a load gets back; `load` is a position in CaseSolution::loads.
struct Gain {
  int load = -1;
  double volts = 0;
};

/// The circuit of one solved case, solved again with single elements made good.
class WhatIf {
 public:
  explicit WhatIf(const solve::CaseSolution& solved);

  /// The running load that gains most from this one cure, the first of equals; empty where none runs, or the
  /// cured circuit has no solution. A full solve of the changed circuit, not an estimate.
  [[nodiscard]] std::optional<Gain> best_gain(const Cure& cure);

  /// The solution with this one cure; empty where there is none.
  [[nodiscard]] std::optional<solve::Solution> with(const Cure& cure);

  /// The same to first order, for each cure alone: exact where nothing but resistors, sources and constant
  /// currents is there. All together cost about a solve on a radial system, a back-substitution each
  /// elsewhere.
  [[nodiscard]] std::vector<std::optional<Gain>> estimate_gains(const std::vector<Cure>& cures);

 private:
  /// An element that carries nothing changes nothing by its resistance.
  [[nodiscard]] bool without_effect(const Cure& cure) const;
  [[nodiscard]] std::optional<Gain> best_gain_between(const std::vector<double>& before,
                                                      const std::vector<double>& after) const;
  [[nodiscard]] tl::expected<solve::Solution, solve::Failure> solve_with(const Cure& cure);

  const solve::CaseSolution& solved_;
  solve::Solver
      solver_;  ///< as found between two cures: its ordering is made once, and each solve starts near
  double largest_current_ = 0;
};

}  // namespace ohmtrail::diagnose
