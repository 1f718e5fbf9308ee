#pragma once
#include <string>
#include <vector>

#include "ohmtrail/diagnose/finding.hpp"
#include "ohmtrail/netlist/system.hpp"
#include "ohmtrail/plan/size.hpp"

namespace ohmtrail::cli {

[[nodiscard]] std::string size_json(const netlist::System& system, const plan::SizeResult& sized,
                                    const std::vector<diagnose::Finding>& raised);
/// One line a run.
[[nodiscard]] std::string size_csv(const plan::SizeResult& sized);

/// "drop", "ampacity" …: what decided a run's gauge.
[[nodiscard]] std::string reason_word(plan::Reason reason);

}  // namespace ohmtrail::cli
