#pragma once
#include <string>
#include <vector>

#include "ohmtrail/diagnose/infer.hpp"
#include "ohmtrail/netlist/system.hpp"

namespace ohmtrail::diagnose {

/// What a load loses between its supply's posts and itself, given the readings: shares of its nominal
/// voltage, between which the truth lies with 90 % probability. A state in which the load stops counts as
/// everything lost.
struct LossInterval {
  std::string in_case, load;
  double low = 0, median = 0, high = 0;
};

/// For every running load of every case, also of those in which nothing was read. `result` was inferred from
/// `system`. A case that has no solution under the likeliest explanation is left out.
[[nodiscard]] std::vector<LossInterval> loss_intervals(const netlist::System& system,
                                                       const InferResult& result);

}  // namespace ohmtrail::diagnose
