#pragma once
#include <map>
#include <vector>

#include "diagnose/infer/screen.hpp"

/// Best-first search over hypotheses around one optimum.
namespace ohmtrail::diagnose::inference {

struct Expanded {
  Belief belief;
  std::vector<Move> moves;
  std::size_t parent = 0;  ///< the expanded hypothesis that it was reached from; of the first: itself
};

/// A hypothesis with its share of the probability, not yet normalised.
struct Weighed {
  double log_weight = 0;   ///< with the bystanders' factor
  std::size_t source = 0;  ///< the expanded hypothesis that it was reached from, or itself
  int move = -1;           ///< which of the source's moves leads to it; −1: it is the source itself
};

struct Exploration {
  std::vector<Expanded> expanded;         ///< the optimum's own hypothesis is 0
  std::map<Hypothesis, Weighed> weighed;  ///< every hypothesis met that explains something
  Hypothesis core;      ///< the unknowns and readings whose change explains something somewhere
  double left_out = 0;  ///< estimate of the share of probability in hypotheses never weighed
};

struct Limits {
  int expansions = 40;
  double negligible = 1e-5;  ///< share of the weight met so far below which a hypothesis is not expanded
  /// ln of how much better than the optimum a hypothesis may look. The optimum is the best of its
  /// neighbourhood: what the screen finds far better, after several steps on one linearisation, has left the
  /// range where it can be trusted.
  double surprise = 3;
  bool look_behind = true;  ///< also expand the hypothesis without each of the optimum's own members
  /// Weigh what a hopeless hypothesis leads to even where that is not expanded itself: enough to see which
  /// exchange of one member for another is worth trying, not for probabilities.
  bool exchanges = false;
};

/// Expands hypotheses in the order of their weight until those not yet expanded cannot matter.
/// A coordinate whose change explains nothing anywhere (its odds are no better than before the readings) is
/// kept out of the enumeration: its own chance is carried along as a factor, since hypotheses with it differ
/// by that factor alone.
[[nodiscard]] Exploration explore(const Model& model, const Screen& screen, const Limits& limits);

/// Bayes factor above which a change is said to explain something.
inline constexpr double explains = 1.5;

/// ln of the Bayes factor of a move: its odds over the odds before any reading.
[[nodiscard]] double log_bayes_factor(const Model& model, const Screen& screen, const Hypothesis& from,
                                      const Move& move);

/// Whether the coordinate belongs to such a set of unknowns and readings.
[[nodiscard]] bool contains(const Hypothesis& set, const Screen& screen, int coordinate);

/// ln of the odds of a bystander's change. By its name it explains nothing: what a strained screen says
/// beyond that is cut.
[[nodiscard]] double log_bystander_odds(const Model& model, const Screen& screen, const Hypothesis& from,
                                        const Move& move);

/// ln Π (1 + odds) over the coordinates that are neither in the core nor in the hypothesis.
[[nodiscard]] double log_bystanders(const Model& model, const Screen& screen, const Expanded& expanded,
                                    const Hypothesis& core);

}  // namespace ohmtrail::diagnose::inference
