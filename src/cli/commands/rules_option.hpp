#pragma once
#include "cli/call.hpp"
#include "ohmtrail/plan/protection.hpp"

namespace ohmtrail::cli {

inline constexpr Option rules{.name = "--rules",
                              .value = "us-small-craft|iso-10133|road-vehicle",
                              .sentence =
                                  "whose rules on fuses and cable (default: road vehicle for a vehicle or "
                                  "cart, US small craft for all else)"};

[[nodiscard]] inline plan::RuleSet rules_asked_for(const Call& call, const netlist::System& system) {
  return plan::rule_set_named(call.text(rules)).value_or(plan::usual_rules(system.info.kind));
}

}  // namespace ohmtrail::cli
