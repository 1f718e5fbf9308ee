#pragma once
#include "plan/assess.hpp"

namespace ohmtrail::plan {

/// What each device sees while one load starts and the others run, and whether it would open on it. A start
/// takes half a second (common practice); curves are known for blade fuses alone.
void add_inrush(const Assessment& final, const std::vector<Guards>& guards, std::vector<FuseChoice>& fuses);

}  // namespace ohmtrail::plan
