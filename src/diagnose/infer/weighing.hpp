#pragma once
#include <map>
#include <optional>
#include <utility>
#include <vector>

#include "diagnose/infer/explore.hpp"
#include "diagnose/infer/forward.hpp"
#include "ohmtrail/diagnose/infer.hpp"

/// Which hypotheses the readings leave, and how probable each is.
namespace ohmtrail::diagnose::inference {

/// A hypothesis that was weighed through its own optimum of the real network.
struct Candidate {
  Optimum optimum;
  double log_weight = 0;    ///< bystanders included
  std::vector<Move> moves;  ///< at its root; bystanders' odds capped
};

struct Weighing {
  Optimum base;                                ///< where the climb ended
  Exploration around;                          ///< of it
  std::map<Hypothesis, Candidate> candidates;  ///< the heaviest; the base is one of them
  /// Every hypothesis of `around.weighed` with its probability, most probable first; they add up to one.
  std::vector<std::pair<const Hypothesis*, double>> shares;

  /// The optimum in whose coordinates the moves of a hypothesis are written, and those moves.
  [[nodiscard]] const Optimum& frame_of(const Hypothesis& hypothesis) const;
  [[nodiscard]] const std::vector<Move>& moves_of(const Hypothesis& hypothesis) const;
  /// The expanded hypothesis that it was reached from.
  [[nodiscard]] const Hypothesis& source_of(const Hypothesis& hypothesis) const;
};

/// Climbs to the best hypothesis, explores around it on the screen, and gives the heaviest their own optimum.
/// Empty where the system has no solution near its ratings.
[[nodiscard]] std::optional<Weighing> weigh_hypotheses(Forward& forward, const InferOptions& options);

}  // namespace ohmtrail::diagnose::inference
