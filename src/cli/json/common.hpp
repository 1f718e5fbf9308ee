#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "cli/json/writer.hpp"
#include "ohmtrail/netlist/system.hpp"
#include "ohmtrail/network/network.hpp"
#include "ohmtrail/solve/case_solution.hpp"

namespace ohmtrail::cli {

/// "battery", "charger", "wire", "termination", "joint", "switch", "fuse", "shunt", "isolator" or "load".
[[nodiscard]] std::string role_word(network::Role role);

/// Every assumption of the cases once, in order of first appearance.
[[nodiscard]] std::vector<network::Assumption> assumptions_of(const std::vector<solve::CaseSolution>& solved);

/// Opens the object that every result is, with what all of them begin with.
void open_result(JsonWriter& json, std::string_view result, const netlist::System& system,
                 const std::vector<network::Assumption>& assumptions);

}  // namespace ohmtrail::cli
