#pragma once
#include "diagnose/infer/posterior.hpp"
#include "ohmtrail/diagnose/infer.hpp"

namespace ohmtrail::diagnose::inference {

/// For every suspect reading: is it what it would be with the probes swapped, in another unit, with the loads
/// off, or in another case? The likeliest is written into the row.
void find_slips(const netlist::System& system, const Posterior& posterior,
                std::vector<InferredReading>& readings);

}  // namespace ohmtrail::diagnose::inference
