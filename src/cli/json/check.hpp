#pragma once
#include <string>
#include <vector>

#include "cli/json/row.hpp"
#include "ohmtrail/diagnose/finding.hpp"
#include "ohmtrail/netlist/read.hpp"
#include "ohmtrail/network/network.hpp"
#include "ohmtrail/plan/protection.hpp"

namespace ohmtrail::cli {

[[nodiscard]] std::string check_json(const netlist::ReadSystem& read, plan::RuleSet rules,
                                     const std::vector<diagnose::Finding>& findings,
                                     const std::vector<network::Assumption>& assumptions);
[[nodiscard]] std::vector<Row> finding_rows(const std::vector<diagnose::Finding>& findings);
[[nodiscard]] std::string check_csv(const std::vector<diagnose::Finding>& findings);

}  // namespace ohmtrail::cli
