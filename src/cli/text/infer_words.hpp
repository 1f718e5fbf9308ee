#pragma once
#include <string>
#include <vector>

#include "ohmtrail/diagnose/infer.hpp"
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
/// The same of several, a conductor whose every part is among them as a whole: `the cable "M" with its lugs`.
[[nodiscard]] std::string where_are(const netlist::System& system, const network::Network& network,
                                    const diagnose::InferResult& result, const std::vector<std::string>& ids);

[[nodiscard]] std::string listed(const std::vector<std::string>& ids);

}  // namespace ohmtrail::cli
