#include "diagnose/infer/explore.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <queue>
#include <set>
#include <utility>

#include "diagnose/infer/bystanders.hpp"
#include "diagnose/infer/explore_steps.hpp"
#include "diagnose/infer/explore_weights.hpp"

namespace ohmtrail::diagnose::inference {
namespace {

// A key that was met as a step but not yet expanded.
struct Waiting {
  double log_weight;
  std::size_t from;  // index into expanded
  std::size_t move;  // of its moves
  friend bool operator<(const Waiting& a, const Waiting& b) { return a.log_weight < b.log_weight; }
};

class Search {
 public:
  Search(const Model& model, std::shared_ptr<const Frame> start, const ParallelSets& sets, SetSplits& splits,
         const Limits& limits)
      : model_(model), start_(std::move(start)), sets_(sets), splits_(splits), limits_(limits) {}

  Exploration run() {
    out_.top = -std::numeric_limits<double>::infinity();
    expand(start_, start_->screen.root(), 0);
    if (limits_.look_behind) {
      expand_removals();
    }
    while (!waiting_.empty() && static_cast<int>(out_.expanded.size()) < limits_.expansions) {
      const Waiting next = waiting_.top();
      waiting_.pop();
      if (!frames_left() && next.log_weight < out_.top + std::log(limits_.negligible)) {
        break;
      }
      if (!expanded_keys_.contains(key_after(out_.expanded[next.from], next.move, sets_))) {
        follow(next);
      }
    }
    weigh_explored(model_, sets_, limits_, expanded_keys_, out_);
    return std::move(out_);
  }

 private:
  [[nodiscard]] bool frames_left() const { return own_frames_ < limits_.own_frames; }

  // What the optimum holds faulty may be the wrong one of several that explain the same: look behind each.
  void expand_removals() {
    const std::size_t moves = out_.expanded.front().moves.size();
    for (std::size_t j = 0; j < moves; ++j) {
      const Expanded& root = out_.expanded.front();
      if (root.moves[j].other_state && !expanded_keys_.contains(key_after(root, j, sets_))) {
        expand(start_, root.after(j), 0);
      }
    }
  }

  // In a frame of its own as long as there are any left.
  void follow(const Waiting& next) {
    const Expanded& from = out_.expanded[next.from];
    if (!frames_left()) {
      expand(from.frame, from.after(next.move), next.from);
      return;
    }
    ++own_frames_;
    const Hypothesis there =
        from.frame->screen.hypothesis_after(from.belief.hypothesis, from.moves[next.move].coordinate);
    const Optimum& near = start_->optimum;
    auto frame = std::make_shared<const Frame>(model_, optimise_linear(model_, near.near, there, near.x));
    Belief root = frame->screen.root();
    expand(std::move(frame), std::move(root), next.from);
  }

  void expand(std::shared_ptr<const Frame> frame, Belief belief, std::size_t parent) {
    Expanded here{std::move(frame), std::move(belief), {}, parent};
    // It was promising from where it was met; what it looks like now, the screen cannot know.
    if (!here.own() && here.belief.log_weight > log_start() + limits_.surprise) {
      return;
    }
    divide(here);
    const bool comparable = !out_.expanded.empty() && here.frame->optimum.columns == start_->optimum.columns;
    here.moves = here.frame->screen.moves(here.belief, comparable ? &out_.expanded.front().moves : nullptr);
    out_.top = std::max(out_.top, here.log_weight());
    if (here.own() || !frames_left()) {
      expanded_keys_.insert(sets_.key(here.belief.hypothesis));
    }
    out_.expanded.push_back(std::move(here));
    extend_core(out_.expanded.back());
    queue_steps(out_.expanded.back());
  }

  [[nodiscard]] double log_start() const {
    return out_.expanded.empty() ? 0 : out_.expanded.front().belief.log_weight;
  }

  // Where the readings cry for a fault that is missing, what they say of a sum is no guide to it.
  void divide(Expanded& here) const {
    const bool hopeless = !out_.expanded.empty() && here.belief.log_weight < out_.top - out_of_reach;
    here.log_divided_in = log_divided(here.frame->screen, sets_, splits_, here.belief);
    for (auto& [set, more] : here.log_divided_in) {
      more = hopeless || here.belief.strained ? 0 : more;
      here.log_divided += more;
    }
  }

  // Its own members, one of which may be one too many, and whatever explains something here.
  void extend_core(const Expanded& here) {
    const Screen& screen = here.frame->screen;
    for (const Move& move : here.moves) {
      const bool member = move.other_state && here.belief.log_weight > out_.top - out_of_reach;
      if (member ||
          (in_range(out_, limits_, here.belief.log_base + move.log_ratio) && explaining(here, move))) {
        add_to_core(screen, move.coordinate);
      }
    }
  }

  [[nodiscard]] bool explaining(const Expanded& here, const Move& move) const {
    return log_bayes_factor(model_, here.frame->screen, here.belief.hypothesis, move) > std::log(explains);
  }

  void add_to_core(const Screen& screen, int coordinate) {
    if (coordinate < 0 || contains(out_.core, screen, coordinate)) {
      return;
    }
    out_.core = screen.hypothesis_after(out_.core, coordinate);
    const int set = screen.is_error(coordinate) ? -1 : sets_.set_of(screen.parameter(coordinate));
    if (set >= 0) {
      for (const int p : sets_.sets[static_cast<std::size_t>(set)].member) {
        add_to_core(screen, screen.coordinate_of(p));
      }
    }
  }

  // Two changes may explain together what neither does alone: as long as there are frames to tell how good a
  // hypothesis really is, what explains something is followed even from where nothing is explained.
  void queue_steps(const Expanded& here) {
    for (const Step& step : steps_from(here, sets_)) {
      const Move& move = here.moves[step.move];
      const bool promising = in_range(out_, limits_, step.log_single) &&
                             contains(out_.core, here.frame->screen, move.coordinate);
      if (promising || (frames_left() && (move.other_state || explaining(here, move)))) {
        waiting_.push({step.log_weight, out_.expanded.size() - 1, step.move});
      }
    }
  }

  const Model& model_;
  const std::shared_ptr<const Frame> start_;
  const ParallelSets& sets_;
  SetSplits& splits_;
  const Limits& limits_;
  Exploration out_;
  std::set<Hypothesis> expanded_keys_;
  std::priority_queue<Waiting> waiting_;
  int own_frames_ = 0;
};

}  // namespace

const SetSplit& split_at(const Screen& screen, const ParallelSets& sets, SetSplits& splits,
                         const Belief& belief, int set) {
  return splits.of(set, screen.cavity_of_sum(belief, sets.sets[static_cast<std::size_t>(set)]));
}

std::map<int, double> log_divided(const Screen& screen, const ParallelSets& sets, SetSplits& splits,
                                  const Belief& belief) {
  std::map<int, double> out;
  for (const int set : sets.touched(belief.hypothesis)) {
    const Cavity sum = screen.cavity_of_sum(belief, sets.sets[static_cast<std::size_t>(set)]);
    out[set] = splits.log_divided(set, sum, sets.faulty_in(set, belief.hypothesis));
  }
  return out;
}

Exploration explore(const Model& model, std::shared_ptr<const Frame> start, const ParallelSets& sets,
                    SetSplits& splits, const Limits& limits) {
  return Search(model, std::move(start), sets, splits, limits).run();
}

}  // namespace ohmtrail::diagnose::inference
