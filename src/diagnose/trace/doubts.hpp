#pragma once
#include <set>
#include <string>
#include <vector>

#include "ohmtrail/diagnose/infer.hpp"
#include "ohmtrail/netlist/system.hpp"

namespace ohmtrail::diagnose {

/// Readings that do not fit the others, in words; those in `told` are passed over, and it is brought up to
/// date. The last reading of the file is spoken of as the one just taken.
[[nodiscard]] std::vector<std::string> doubts_in_words(const netlist::System& system,
                                                       const InferResult& inference,
                                                       std::set<std::size_t>& told);

}  // namespace ohmtrail::diagnose
