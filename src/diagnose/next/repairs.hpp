#pragma once
#include <map>
#include <string>
#include <vector>

#include "diagnose/infer/conductors.hpp"
#include "diagnose/infer/posterior.hpp"
#include "ohmtrail/diagnose/next.hpp"

namespace ohmtrail::diagnose::next {

using inference::repair_of;

/// `the cable "M" with its lugs`
[[nodiscard]] std::string repair_in_words(const netlist::System& system, const std::string& repair);

/// Every repair with its chance, by falling probability.
[[nodiscard]] std::vector<RepairChance> repair_chances(const netlist::System& system,
                                                       const Posterior& posterior);

/// Probability that nothing is faulty.
[[nodiscard]] double chance_of_nothing(const Posterior& posterior);

/// Points that the elements of each repair end at.
[[nodiscard]] std::map<std::string, std::vector<std::string>> points_of_repairs(
    const network::Network& network);

}  // namespace ohmtrail::diagnose::next
