#pragma once
#include <chrono>
#include <functional>
#include <optional>
#include <vector>

#include "ohmtrail/solve/case_solution.hpp"
#include "plan/assess.hpp"
#include "plan/box_bounds.hpp"
#include "plan/design_space.hpp"
#include "plan/radial.hpp"

/// The search for the cheapest design, with its proof.
namespace ohmtrail::plan {

/// What a search may ask of the outside.
struct Judge {
  /// The real nonlinear solve of the rewired system, held against every limit in every case.
  std::function<Assessment(const Design&)> assess;
  std::function<void(const Progress&)> progress;  ///< may be empty
  std::chrono::steady_clock::time_point deadline;

  [[nodiscard]] bool accepts(const Design& design) const { return assess(design).keeps_limits(); }

  [[nodiscard]] bool in_time() const { return seconds_left() > 0; }
  [[nodiscard]] double seconds_left() const {
    return std::chrono::duration<double>(deadline - std::chrono::steady_clock::now()).count();
  }
};

struct Found {
  std::optional<Design> design;  ///< cheapest that was accepted
  double bound = 0;              ///< no design is cheaper
  bool proved = false;           ///< bound reached, or proved that no design exists (then `design` is empty)
  int rounds = 0;                ///< masters solved
};

/// Radial cases whose arms form a tree of loads: branch and bound on boxes of designs, each bounded by
/// dynamic programming over the trees. Others go to `search_radial`.
[[nodiscard]] Found search_tree(const DesignSpace& space, const std::vector<RadialCase>& cases,
                                const Judge& judge);

/// Radial cases: a master of binaries with linear drop rows at proved lower bounds of the currents, and cuts
/// that take away whole boxes of designs that interval bounds refuse.
[[nodiscard]] Found search_radial(const DesignSpace& space, const std::vector<RadialCase>& cases,
                                  const Judge& judge);

/// Any case: a master that holds each case's currents as a relaxed flow model. A design that the judge
/// refuses is cut off, and the model made tighter at its solved state. `probes`: each case solved with any
/// design.
[[nodiscard]] Found search_general(const DesignSpace& space, const std::vector<Guards>& guards,
                                   const std::vector<solve::CaseSolution>& probes, const Judge& judge);

}  // namespace ohmtrail::plan
