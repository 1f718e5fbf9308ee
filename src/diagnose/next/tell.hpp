#pragma once
#include "diagnose/next/candidates.hpp"
#include "ohmtrail/diagnose/next.hpp"

namespace ohmtrail::diagnose::next {

/// A candidate as it is offered: names, expectations, and why, in words.
[[nodiscard]] NextOption tell(const Outlook& outlook, const std::vector<CaseView>& views,
                              const Candidate& candidate, Purpose purpose,
                              const std::vector<RepairChance>& repairs);

}  // namespace ohmtrail::diagnose::next
