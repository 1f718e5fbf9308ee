#pragma once
#include <vector>

#include "cli/text/sheet.hpp"
#include "ohmtrail/diagnose/split.hpp"

namespace ohmtrail::cli {

/// Where the volts go on the way to each load: the worst ones, a line of numbers and a bar of letters each.
void show_split(Sheet& sheet, const std::vector<diagnose::SagSplit>& splits);

}  // namespace ohmtrail::cli
