#pragma once
#include <string>

#include "ohmtrail/diagnose/bank.hpp"

namespace ohmtrail::cli {

[[nodiscard]] std::string bank_json(const netlist::System& system, const diagnose::Bank& bank);
/// One line a finding; a battery or group without any has one line all the same.
[[nodiscard]] std::string bank_csv(const diagnose::Bank& bank);

}  // namespace ohmtrail::cli
