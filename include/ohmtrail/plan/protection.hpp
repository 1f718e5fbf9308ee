#pragma once
#include <optional>
#include <string_view>
#include <vector>

#include "ohmtrail/diagnose/finding.hpp"
#include "ohmtrail/netlist/system.hpp"
#include "ohmtrail/solve/case_solution.hpp"

/// Whether fuses and breakers protect the wires, and what else about the wiring can burn.
namespace ohmtrail::plan {

/// By whose rules a system is judged.
enum class RuleSet {
  us_small_craft,  ///< 33 CFR 183 subpart I, ABYC E-11 for interrupting capacity
  iso_10133,       ///< ISO 10133, small craft, extra-low-voltage d.c.
  road_vehicle     ///< NEC 551 and 552 low voltage, common practice
};

/// "us-small-craft", "iso-10133", "road-vehicle".
[[nodiscard]] std::string_view word(RuleSet rules);
/// For people: "US small craft (33 CFR 183)".
[[nodiscard]] std::string_view title(RuleSet rules);
[[nodiscard]] std::optional<RuleSet> rule_set_named(std::string_view word);
/// Vehicles and carts: road vehicle; all else: US small craft.
[[nodiscard]] RuleSet usual_rules(netlist::SystemKind kind);

/// The line that stands under every list of findings.
inline constexpr std::string_view advice_line =
    "This advises and does not replace the local code or a licensed electrician.";

/// Runs without a fuse or breaker within the allowed distance, devices above the ampacity of their wire, that
/// break too little or are made for a lower voltage, wing nuts, studs with too many lugs, cables below the
/// heat of short heavy duty, unlike batteries side by side or unlike links of theirs, negative and positive
/// of unlike gauge. `solved` holds every case. Worst first; within a severity by rule, then file order.
[[nodiscard]] std::vector<diagnose::Finding> check_protection(const netlist::System& system,
                                                              const std::vector<solve::CaseSolution>& solved,
                                                              RuleSet rules);

/// `diagnose::check_system` and `check_protection` as one list, worst first. A wire that only short duty
/// loads above its ampacity is judged by its heat alone.
[[nodiscard]] std::vector<diagnose::Finding> check_all(const netlist::System& system,
                                                       const std::vector<solve::CaseSolution>& solved,
                                                       RuleSet rules);

}  // namespace ohmtrail::plan
