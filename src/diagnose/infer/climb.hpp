#pragma once
#include <optional>

#include "diagnose/infer/explore.hpp"
#include "diagnose/infer/optimum.hpp"

namespace ohmtrail::diagnose::inference {

/// The most probable hypothesis that single moves lead to from "all sound", at its optimum through the real
/// network. With `faults` false: that of "all sound, all right". Empty where no start has a solution.
[[nodiscard]] std::optional<Optimum> climb(Forward& forward, bool faults);

/// A linearisation at the centre of a hypothesis' priors, with the loads made smaller where the rated ones
/// collapse it.
[[nodiscard]] std::optional<Linearisation> linearise_at_priors(Forward& forward,
                                                               const Hypothesis& hypothesis = {});

}  // namespace ohmtrail::diagnose::inference
