#pragma once
#include <string>
#include <vector>

#include "diagnose/infer/posterior.hpp"
#include "ohmtrail/diagnose/infer.hpp"

namespace ohmtrail::diagnose::inference {

/// The repair that an element belongs to: its run, `RUN/return`, or itself. A cable is redone with its lugs.
[[nodiscard]] std::string repair_of(const std::string& element);

/// Every conductor of a run with its terminations, from stud to stud; file order.
[[nodiscard]] std::vector<InferredConductor> describe_conductors(const Posterior& posterior);

}  // namespace ohmtrail::diagnose::inference
