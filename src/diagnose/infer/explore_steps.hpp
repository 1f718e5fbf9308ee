#pragma once
#include <cstddef>
#include <vector>

#include "diagnose/infer/explore.hpp"

/// Steps from one key to the next.
namespace ohmtrail::diagnose::inference {

/// ln of the ratio to the heaviest beyond which a hypothesis is not looked at.
inline constexpr double out_of_reach = 14;

struct Step {
  std::size_t move;   ///< the likeliest of those that lead there
  double log_weight;  ///< of the key there, bystanders left out
  double log_single;  ///< of that move's own hypothesis
};

/// One step a coordinate of its own, and one a set: into it by the likeliest member, out of it where one
/// member alone is faulty.
[[nodiscard]] std::vector<Step> steps_from(const Expanded& from, const ParallelSets& sets);

/// The key that a move leads to.
[[nodiscard]] Hypothesis key_after(const Expanded& from, std::size_t move, const ParallelSets& sets);

/// Neither hopeless nor better than can be believed.
[[nodiscard]] bool in_range(const Exploration& explored, const Limits& limits, double log_weight);

}  // namespace ohmtrail::diagnose::inference
