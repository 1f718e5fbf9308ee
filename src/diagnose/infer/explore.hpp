#pragma once
#include <map>
#include <vector>

#include "diagnose/infer/screen.hpp"

/// Best-first search over hypotheses around one optimum.
namespace ohmtrail::diagnose::inference {

struct Expanded {
  Belief belief;
  std::vector<Move> moves;
};

struct Exploration {
  std::vector<Expanded> expanded;             ///< heaviest first found first; the optimum's own hypothesis is 0
  std::map<Hypothesis, double> log_weights;   ///< every hypothesis met that explains something
  std::vector<char> core;  ///< per coordinate of the screen: changing it explains something somewhere
  double left_out = 0;     ///< estimate of the share of probability in hypotheses never weighed
};

struct Limits {
  int expansions = 40;
  double negligible = 1e-5;  ///< share of the weight met so far below which a hypothesis is not expanded
};

/// Expands hypotheses in the order of their weight until those not yet expanded cannot matter.
/// A coordinate whose change explains nothing anywhere (its odds are no better than before the readings) is kept out of
/// the enumeration: its own chance is carried along as a factor, since hypotheses with it differ by that factor alone.
[[nodiscard]] Exploration explore(const Model& model, const Screen& screen, const Limits& limits);

/// Bayes factor above which a change is said to explain something.
inline constexpr double explains = 1.5;

/// ln of the Bayes factor of a move: its odds over the odds before any reading.
[[nodiscard]] double log_bayes_factor(const Model& model, const Screen& screen, const Hypothesis& from, const Move& move);

/// ln Π (1 + odds) over the coordinates that are not in the core.
[[nodiscard]] double log_bystanders(const Screen& screen, const Expanded& expanded, const std::vector<char>& core);

}  // namespace ohmtrail::diagnose::inference
