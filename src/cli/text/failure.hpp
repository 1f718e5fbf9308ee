#pragma once
#include <string>

#include "ohmtrail/network/network.hpp"
#include "ohmtrail/solve/solver.hpp"

namespace ohmtrail::cli {

/// Why a case has no answer, which elements are to blame, and what to change. One line.
[[nodiscard]] std::string in_words(const solve::Failure& failure, const network::Network& network);

}  // namespace ohmtrail::cli
