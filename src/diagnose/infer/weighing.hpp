#pragma once
#include <map>
#include <memory>
#include <optional>
#include <utility>
#include <vector>

#include "diagnose/infer/explore.hpp"
#include "diagnose/infer/forward.hpp"
#include "ohmtrail/diagnose/infer.hpp"

/// Which hypotheses the readings leave, and how probable each is.
namespace ohmtrail::diagnose::inference {

/// A key that was weighed through its likeliest hypothesis' own optimum of the real network.
struct Candidate {
  std::shared_ptr<const Frame> frame;
  double log_weight = 0;    ///< of the key, bystanders included
  std::vector<Move> moves;  ///< at its root; bystanders' odds capped
};

struct Weighing {
  std::shared_ptr<const Frame> base;   ///< where the climb ended
  std::unique_ptr<ParallelSets> sets;  ///< of it
  std::unique_ptr<SetSplits> splits;
  Exploration around;                          ///< of it
  std::map<Hypothesis, Candidate> candidates;  ///< by key: the heaviest; the base is one of them
  /// Every key of `around.weighed` with its probability, most probable first; they add up to one.
  std::vector<std::pair<const Hypothesis*, double>> shares;

  /// The frame in whose coordinates the moves of a key are written, and those moves.
  [[nodiscard]] const Frame& frame_of(const Hypothesis& key) const;
  [[nodiscard]] const std::vector<Move>& moves_of(const Hypothesis& key) const;
  /// The expanded hypothesis that it was reached from.
  [[nodiscard]] const Expanded& source_of(const Hypothesis& key) const;
};

/// Climbs to the best hypothesis, explores around it on the screen, and gives the heaviest their own optimum.
/// Empty where the system has no solution near its ratings.
[[nodiscard]] std::optional<Weighing> weigh_hypotheses(Forward& forward, const InferOptions& options);

}  // namespace ohmtrail::diagnose::inference
