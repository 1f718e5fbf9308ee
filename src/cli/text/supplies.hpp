#pragma once
#include <string>

#include "ohmtrail/solve/case_solution.hpp"

namespace ohmtrail::cli {

/// "A1+A2"; of more than three "1+7 more in series". `first` is the supply's first element.
[[nodiscard]] std::string supply_in_words(const solve::CaseSolution& solved, const std::string& first);

}  // namespace ohmtrail::cli
