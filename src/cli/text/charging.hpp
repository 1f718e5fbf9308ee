#pragma once
#include <vector>

#include "cli/text/sheet.hpp"
#include "ohmtrail/diagnose/charging.hpp"

namespace ohmtrail::cli {

/// Where the volts go between each running charger and its batteries, and what never gets full.
void show_charging(Sheet& sheet, const std::vector<diagnose::ChargeSplit>& splits);

}  // namespace ohmtrail::cli
