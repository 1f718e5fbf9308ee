#pragma once
#include <string>

#include "ohmtrail/netlist/system.hpp"
#include "ohmtrail/plan/size.hpp"

namespace ohmtrail::cli {

[[nodiscard]] std::string size_json(const netlist::System& system, const plan::SizeResult& sized);
/// One line a run.
[[nodiscard]] std::string size_csv(const plan::SizeResult& sized);

/// "drop", "ampacity" …: what decided a run's gauge.
[[nodiscard]] std::string reason_word(plan::Reason reason);

}  // namespace ohmtrail::cli
