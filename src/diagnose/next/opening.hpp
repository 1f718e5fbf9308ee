#pragma once
#include <vector>

#include "diagnose/next/candidates.hpp"

namespace ohmtrail::diagnose::next {

/// The readings that make every later one useful and that are still missing, in their order: the supply's
/// current, the battery's voltage and the load's voltage, all in `in_case`, or where it is empty in the case
/// with most current. Those that no
/// probe reaches are left out.
[[nodiscard]] std::vector<Candidate> missing_opening(const netlist::System& system, const Outlook& outlook,
                                                     const std::vector<CaseView>& views,
                                                     const std::string& in_case = "");

/// The view in which most current flows.
[[nodiscard]] std::size_t heaviest(const Outlook& outlook, const std::vector<CaseView>& views);

}  // namespace ohmtrail::diagnose::next
