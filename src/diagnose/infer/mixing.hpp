#pragma once
#include "diagnose/infer/posterior.hpp"
#include "diagnose/infer/weighing.hpp"

namespace ohmtrail::diagnose::inference {

/// Fills everything but the survey of a posterior: from weighed hypotheses to the probabilities and densities
/// of each unknown.
void mix(Weighing weighing, const InferOptions& options, Posterior& out);

}  // namespace ohmtrail::diagnose::inference
