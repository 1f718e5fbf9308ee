#pragma once
#include "diagnose/infer/posterior.hpp"
#include "ohmtrail/diagnose/infer.hpp"

/// From the posterior to what the results list.
namespace ohmtrail::diagnose::inference {

[[nodiscard]] std::vector<InferredElement> describe_elements(const Posterior& posterior);
[[nodiscard]] std::vector<InferredBattery> describe_batteries(const Posterior& posterior);
[[nodiscard]] std::vector<InferredLoad> describe_loads(const Posterior& posterior);
[[nodiscard]] std::vector<Explanation> describe_explanations(const Posterior& posterior);
[[nodiscard]] Fit describe_fit(const Posterior& posterior);

/// Readings against the most probable explanation; slips are not looked for here.
[[nodiscard]] std::vector<InferredReading> describe_readings(const netlist::System& system,
                                                             const Posterior& posterior);

/// Resistance at the temperature of the case with most current over the unknown's value (at 20 °C for wires
/// that heat), per unknown.
[[nodiscard]] std::vector<double> display_factors(const Survey& survey, const Optimum& best);

}  // namespace ohmtrail::diagnose::inference
