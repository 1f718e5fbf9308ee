#pragma once
#include <random>

#include "plan/assess.hpp"
#include "plan/box_bounds.hpp"

/// A system laid out for the choice of cable, with what the searches work on.
namespace ohmtrail::plan {

struct SizingRig {
  DesignSpace space;
  std::vector<Guards> guards;
  std::vector<RadialCase> cases;  ///< none where a case is not radial

  explicit SizingRig(const netlist::System& system) : space(design_space(system, {})) {
    for (const CaseSpace& in_case : space.cases) {
      guards.push_back(find_guards(space.system, in_case.network));
      if (auto radial = radial_case(space, in_case, guards.back())) cases.push_back(std::move(*radial));
    }
  }

  [[nodiscard]] Design any_design(std::mt19937& engine) const {
    Design design;
    for (const RunSpace& run : space.runs)
      design.push_back(static_cast<int>(engine() % run.candidates.size()));
    return design;
  }

  [[nodiscard]] Design thickest() const {
    Design design;
    for (const RunSpace& run : space.runs) design.push_back(static_cast<int>(run.candidates.size()) - 1);
    return design;
  }

  /// By the real solve.
  [[nodiscard]] Assessment judged(const Design& design) const {
    return assess(space, guards, rewired(space, design));
  }
};

}  // namespace ohmtrail::plan
