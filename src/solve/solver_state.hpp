#pragma once
#include <memory>
#include <optional>
#include <vector>

#include "ohmtrail/solve/solver.hpp"
#include "solve/jacobian.hpp"
#include "solve/merged_currents.hpp"
#include "solve/newton.hpp"
#include "solve/operating_point.hpp"

namespace ohmtrail::solve {

/// All that depends on which points are merged; made anew when that changes.
struct Structure {
  Structure(const Circuit& circuit, Merged merged_points, const Modes& modes);
  Structure(const Structure&) = delete;
  Structure& operator=(const Structure&) = delete;

  Modes made_for;
  Merged merged;
  Jacobian jacobian;
  MergedCurrents merged_currents;
  OperatingPoint point;
};

/// What a solver remembers between solves, and the steps of one solve.
struct SolverState {
  explicit SolverState(Circuit circuit_to_solve);

  Circuit circuit;
  Partition fed;            ///< see `fed_parts`
  std::vector<char> unfed;  ///< loads whose terminals no conducting branches join: no current can reach them
  Islands islands;
  std::vector<std::size_t> switching;  ///< regulators and diodes
  std::vector<std::size_t> stoppable;  ///< loads that drop out below some voltage
  std::vector<char> stopped;  ///< loads (and outputs of converters) that are out for the rest of this solve
  Modes modes;
  Demand demand;
  std::unique_ptr<Structure> structure;
  bool merge_changed = true;     ///< a value changed that decides what is merged
  std::vector<Precise> voltage;  ///< per point, where the last solve ended
  std::vector<double> current;   ///< per branch, those of fixed branches included
  std::optional<Collapse> collapse;
  bool solved = false;
  Effort effort;

  tl::expected<Solution, Failure> solve();

  // settle.cpp
  /// All active, or as the last solve left them.
  void start_modes(bool afresh);
  std::optional<Failure> restructure();
  tl::expected<std::vector<char>, Failure> settle();
  std::vector<char> run_newton();
  void find_currents();
  /// Sets the power of each converter's input to what its output delivers; largest relative change.
  double update_converters();

  // fold.cpp
  /// Raises the shares of the islands marked as far as they go; sets `collapse` where that is below 1.
  std::optional<Failure> find_folds(const std::vector<char>& marks);

  /// Stops the running load that is furthest below its own limit; false if none is below.
  bool stop_weakest();
  void stop(std::size_t branch);

  /// Factors the Jacobian at the present state unless it is so already.
  void factor_here();
  std::vector<double> resistance_seen;  ///< per branch, Ω; empty until asked for

  [[nodiscard]] bool is_running_load(std::size_t branch) const;
  [[nodiscard]] std::size_t island_of(std::size_t branch) const {
    return static_cast<std::size_t>(
        islands.of_point[static_cast<std::size_t>(circuit.branches[branch].from)]);
  }
};

/// Residuals within 1e-9.
[[nodiscard]] bool is_certified(const Solution& solution);

/// The settled state as a solution, with its residuals.
[[nodiscard]] Solution make_solution(const SolverState& state);

}  // namespace ohmtrail::solve
