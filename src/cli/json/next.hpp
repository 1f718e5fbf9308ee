#pragma once
#include <string>

#include "ohmtrail/diagnose/next.hpp"
#include "ohmtrail/network/network.hpp"

namespace ohmtrail::cli {

[[nodiscard]] std::string next_json(const netlist::System& system, const diagnose::NextResult& result,
                                    const network::Network& network);
/// One line an option.
[[nodiscard]] std::string next_csv(const diagnose::NextResult& result);

}  // namespace ohmtrail::cli
