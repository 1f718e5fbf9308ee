#pragma once
#include "plan/assess.hpp"
#include "plan/search.hpp"

namespace ohmtrail::plan {

/// What the search found, told run by run and load by load. `widest`: the thickest design, assessed.
[[nodiscard]] SizeResult size_result(const netlist::System& original, const DesignSpace& space,
                                     const std::vector<Guards>& guards, const Assessment& widest,
                                     const Found& found, const std::string& method);

/// Why nothing on the list suffices: what even the thickest design breaks, by how much and what would help.
[[nodiscard]] std::vector<Shortfall> shortfalls(const DesignSpace& space, const Assessment& widest);

}  // namespace ohmtrail::plan
