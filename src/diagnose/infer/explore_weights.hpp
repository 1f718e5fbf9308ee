#pragma once
#include <set>

#include "diagnose/infer/explore.hpp"

namespace ohmtrail::diagnose::inference {

/// Gives every core step of every expanded hypothesis its weight, and estimates what was left out.
/// `expanded_keys` are those of `explored.expanded`.
void weigh_explored(const Model& model, const ParallelSets& sets, const Limits& limits,
                    const std::set<Hypothesis>& expanded_keys, Exploration& explored);

}  // namespace ohmtrail::diagnose::inference
