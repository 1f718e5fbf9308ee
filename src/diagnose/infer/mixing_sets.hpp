#pragma once
#include <map>
#include <utility>
#include <vector>

#include "diagnose/infer/parallel_sets.hpp"
#include "diagnose/infer/set_splits.hpp"

/// From the probability that a set has a fault to that of each of its members.
namespace ohmtrail::diagnose::inference {

/// How the sets of the core divide, as seen from one place.
using Splits = std::map<int, const SetSplit*>;

/// Adds each member's share of `any`, the probability that the set has a fault.
void add_fault_shares(const SetSplit& split, double any, std::vector<double>& fault);

/// The hypotheses that a key stands for, likeliest first, with their shares of `share`: those of at least
/// `least`.
[[nodiscard]] std::vector<std::pair<Hypothesis, double>> divided(const ParallelSets& sets,
                                                                 const Splits& splits, const Hypothesis& key,
                                                                 double share, double least);

}  // namespace ohmtrail::diagnose::inference
