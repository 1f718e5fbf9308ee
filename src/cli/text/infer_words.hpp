#pragma once
#include <string>
#include <vector>

#include "ohmtrail/netlist/system.hpp"
#include "ohmtrail/network/network.hpp"

/// How inferred values and odds are put in words.
namespace ohmtrail::cli {

constexpr double worth_a_row = 0.05;     ///< fault probability from which an element is shown
constexpr double worth_a_verdict = 0.5;  ///< and from which it is named

[[nodiscard]] std::string print_ohms(double si);
[[nodiscard]] std::string print_volts(double si);
/// Never quite certain: "over 99 %" and "under 1 %" are the most that is said.
[[nodiscard]] std::string percent_sure(double probability);
/// Where an element is, by its id.
[[nodiscard]] std::string where_is(const netlist::System& system, const network::Network& network,
                                   const std::string& id);
[[nodiscard]] std::string listed(const std::vector<std::string>& ids);

}  // namespace ohmtrail::cli
