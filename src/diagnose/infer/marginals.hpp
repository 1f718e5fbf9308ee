#pragma once
#include <vector>

#include "diagnose/infer/mixing_source.hpp"
#include "diagnose/infer/mixture.hpp"

namespace ohmtrail::diagnose::inference {

/// The density of each unknown's x. `fault`: the probability of each unknown's fault, for those of which no
/// reading says anything.
[[nodiscard]] std::vector<Mixture> marginals(const Model& model, const Weighing& weighing,
                                             std::vector<MixingSource> sources,
                                             const std::vector<double>& fault);

}  // namespace ohmtrail::diagnose::inference
