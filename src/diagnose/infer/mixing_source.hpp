#pragma once
#include <utility>
#include <vector>

#include "diagnose/infer/mixing_sets.hpp"
#include "diagnose/infer/weighing.hpp"

namespace ohmtrail::diagnose::inference {

/// Keys that were reached from one place. They share its moves: all that is said there of an unknown holds
/// for each of them, but for those whose state it is that differs.
struct MixingSource {
  const Hypothesis* at = nullptr;
  const Optimum* frame = nullptr;
  const std::vector<Move>* moves = nullptr;
  bool own = false;  ///< the moves were taken at the hypothesis' own optimum
  Splits splits{};   ///< of the sets of the core
  std::vector<std::pair<const Hypothesis*, double>> reached{};
  double share = 0;  ///< of all `reached` together

  [[nodiscard]] bool is_error(const Move& move) const;
  /// The observation or unknown that a move is about.
  [[nodiscard]] int subject(const Move& move) const;
  /// The share of those hypotheses in which the move's subject is neither in the core nor a member.
  [[nodiscard]] double bystander_share(const Hypothesis& core, const Move& move) const;
  /// The share of the keys in which the set has a fault.
  [[nodiscard]] double touching(const ParallelSets& sets, int set) const;
};

/// A bystander's chance under a hypothesis.
[[nodiscard]] double chance_of(const Move& move);

/// All of `weighing.shares`, by where they were reached from. It must outlive them.
[[nodiscard]] std::vector<MixingSource> mixing_sources(const Weighing& weighing);

}  // namespace ohmtrail::diagnose::inference
