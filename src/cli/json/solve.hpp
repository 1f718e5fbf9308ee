#pragma once
#include <string>
#include <vector>

#include "cli/json/writer.hpp"
#include "ohmtrail/netlist/system.hpp"
#include "ohmtrail/solve/case_solution.hpp"

namespace ohmtrail::cli {

[[nodiscard]] std::string solve_json(const netlist::System& system,
                                     const std::vector<solve::CaseSolution>& solved);

/// The loads as `solve` and `size` list them.
[[nodiscard]] std::vector<Row> load_rows(const solve::CaseSolution& solved);

/// One line an element and case.
[[nodiscard]] std::string solve_csv(const std::vector<solve::CaseSolution>& solved);

}  // namespace ohmtrail::cli
