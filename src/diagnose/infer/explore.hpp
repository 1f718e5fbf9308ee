#pragma once
#include <map>
#include <memory>
#include <utility>
#include <vector>

#include "diagnose/infer/screen.hpp"
#include "diagnose/infer/set_splits.hpp"

/// Best-first search over hypotheses from one optimum.
///
/// Unknowns that the readings only see as a sum count as one thing that may have a fault: hypotheses are met
/// by their key (`ParallelSets::key`), and what a key weighs is the sum over all divisions of its faults.
namespace ohmtrail::diagnose::inference {

/// An optimum and the screen about it.
struct Frame {
  Frame(const Model& model, Optimum at) : optimum(std::move(at)), screen(model, optimum) {}
  Frame(const Frame&) = delete;
  Frame& operator=(const Frame&) = delete;

  Optimum optimum;
  Screen screen;
};

struct Expanded {
  std::shared_ptr<const Frame> frame;  ///< in whose coordinates the belief and the moves are written
  Belief belief;
  std::vector<Move> moves;
  std::size_t parent = 0;  ///< the expanded hypothesis that it was reached from; of the first: itself
  double log_divided = 0;  ///< ln of what its key weighs over what it weighs itself
  std::map<int, double> log_divided_in{};  ///< the same by set, of those with a faulty member

  /// The frame is that of this very hypothesis.
  [[nodiscard]] bool own() const { return belief.updates.empty(); }
  [[nodiscard]] double log_weight() const { return belief.log_weight + log_divided; }
  [[nodiscard]] Belief after(std::size_t move) const { return frame->screen.after(belief, moves[move]); }
};

/// A key with its share of the probability, not yet normalised.
struct Weighed {
  double log_weight = 0;   ///< with the bystanders' factor
  std::size_t source = 0;  ///< the expanded hypothesis that it was reached from, or itself
  int move = -1;           ///< which of the source's moves leads to it; −1: it is the source itself
  bool from_own = false;   ///< the source has a frame of its own
};

struct Exploration {
  std::vector<Expanded> expanded;         ///< the optimum's own hypothesis is 0
  double top = 0;                         ///< ln weight of the heaviest of them
  std::map<Hypothesis, Weighed> weighed;  ///< every key met that explains something
  Hypothesis core;      ///< the unknowns and readings whose change explains something somewhere
  double left_out = 0;  ///< as in InferResult
};

struct Limits {
  int expansions = 40;
  /// How many get a frame of their own: the optimum of the linear function under that hypothesis. A chain of
  /// steps from another optimum loses a factor of several where two or three wide unknowns are changed.
  int own_frames = 0;
  double negligible = 1e-5;  ///< share of the weight met so far below which a hypothesis is not expanded
  /// ln of how much better than the optimum a hypothesis may look from another's frame. The optimum is the
  /// best of its neighbourhood: what a screen finds far better has left the range where it can be trusted.
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
[[nodiscard]] Exploration explore(const Model& model, std::shared_ptr<const Frame> start,
                                  const ParallelSets& sets, SetSplits& splits, const Limits& limits);

/// How a set divides, as seen from a hypothesis.
[[nodiscard]] const SetSplit& split_at(const Screen& screen, const ParallelSets& sets, SetSplits& splits,
                                       const Belief& belief, int set);

/// By set with a faulty member: ln of what all divisions of its fault weigh over the present one.
[[nodiscard]] std::map<int, double> log_divided(const Screen& screen, const ParallelSets& sets,
                                                SetSplits& splits, const Belief& belief);

}  // namespace ohmtrail::diagnose::inference
