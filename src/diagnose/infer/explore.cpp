#include "diagnose/infer/explore.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <queue>

namespace ohmtrail::diagnose::inference {
namespace {

constexpr double out_of_reach =
    14;  // ln of the ratio to the heaviest beyond which a hypothesis is not looked at

// A hypothesis that was met as a move but not yet expanded.
struct Waiting {
  double log_weight;
  std::size_t from;  // index into expanded
  Move move;
  friend bool operator<(const Waiting& a, const Waiting& b) { return a.log_weight < b.log_weight; }
};

class Search {
 public:
  Search(const Model& model, const Screen& screen, const Limits& limits)
      : model_(model), screen_(screen), limits_(limits) {}

  Exploration run() {
    Belief root = screen_.root();
    start_ = root.log_weight;
    // A member may be one too many: taking it out is always looked at.
    out_.core = root.hypothesis;
    expand(std::move(root), 0);
    if (limits_.look_behind) {
      expand_removals();
    }
    while (!waiting_.empty() && static_cast<int>(out_.expanded.size()) < limits_.expansions) {
      const Waiting next = waiting_.top();
      waiting_.pop();
      if (next.log_weight < top_ + std::log(limits_.negligible)) {
        break;
      }
      const Belief& from = out_.expanded[next.from].belief;
      if (!expanded_.contains(screen_.hypothesis_after(from.hypothesis, next.move.coordinate))) {
        expand(screen_.after(from, next.move), next.from);
      }
    }
    complete();
    return std::move(out_);
  }

 private:
  void add_to_core(int coordinate) {
    if (!contains(out_.core, screen_, coordinate)) {
      out_.core = screen_.hypothesis_after(out_.core, coordinate);
    }
  }

  void expand(Belief belief, std::size_t parent) {
    // It was promising from where it was met; what it looks like now, the screen cannot know.
    if (belief.log_weight > start_ + limits_.surprise) {
      return;
    }
    expanded_.emplace(belief.hypothesis, out_.expanded.size());
    top_ = std::max(top_, belief.log_weight);
    out_.expanded.push_back({std::move(belief), {}, parent});
    Expanded& here = out_.expanded.back();
    here.moves =
        screen_.moves(here.belief, out_.expanded.size() > 1 ? &out_.expanded.front().moves : nullptr);
    for (const Move& move : here.moves) {
      const double there = here.belief.log_base + move.log_ratio;
      if (there < top_ - out_of_reach || there > start_ + limits_.surprise) {
        continue;
      }
      if (log_bayes_factor(model_, screen_, here.belief.hypothesis, move) > std::log(explains)) {
        add_to_core(move.coordinate);
      }
      if (contains(out_.core, screen_, move.coordinate)) {
        waiting_.push({there, out_.expanded.size() - 1, move});
      }
    }
  }

  // What the optimum holds faulty may be the wrong one of several that explain the same: look behind each.
  void expand_removals() {
    const std::vector<Move> moves = out_.expanded.front().moves;
    for (const Move& move : moves) {
      if (contains(screen_.optimum().hypothesis, screen_, move.coordinate)) {
        add_to_core(move.coordinate);
        expand(screen_.after(out_.expanded.front().belief, move), 0);
      }
    }
  }

  void note(const Hypothesis& hypothesis, const Weighed& weighed) {
    const auto [place, fresh] = out_.weighed.emplace(hypothesis, weighed);
    if (!fresh && place->second.move >= 0 && place->second.log_weight < weighed.log_weight) {
      place->second = weighed;
    }
  }

  // Every core move of every expanded hypothesis gets its weight. What lies two steps away from all of them
  // was never weighed; it is estimated from how much one step adds.
  void complete() {
    double frontier = 0, growth = 0, total = 0;
    for (std::size_t k = 0; k < out_.expanded.size(); ++k) {
      if (within_reach(k)) {
        note(out_.expanded[k].belief.hypothesis,
             {out_.expanded[k].belief.log_weight +
                  log_bystanders(model_, screen_, out_.expanded[k], out_.core),
              k, -1});
      }
    }
    for (std::size_t k = 0; k < out_.expanded.size(); ++k) {
      if (within_reach(k)) {
        growth = std::max(growth, note_moves(k, k));
      } else if (limits_.exchanges) {
        note_moves(k, 0);
      }
    }
    for (const auto& [hypothesis, weighed] : out_.weighed) {
      total += std::exp(weighed.log_weight - top_);
      frontier += weighed.move >= 0 ? std::exp(weighed.log_weight - top_) : 0;
    }
    out_.left_out = frontier * std::min(1.0, growth) / total;
  }

  // From a hypothesis that explains nothing everything looks faulty: it only served to look behind a fault,
  // and what it led to stands on its own.
  [[nodiscard]] bool within_reach(std::size_t k) const {
    return k == 0 || out_.expanded[k].belief.log_weight > top_ - out_of_reach;
  }

  // Returns how much all steps from k add, as a share of what is there; steps that raise the weight do not
  // count. Bystanders are those of `like`.
  double note_moves(std::size_t k, std::size_t like) {
    const Expanded& e = out_.expanded[k];
    const double bystanders = log_bystanders(model_, screen_, out_.expanded[like], out_.core);
    double added = 0;
    for (std::size_t j = 0; j < e.moves.size(); ++j) {
      const Move& move = e.moves[j];
      const double there = e.belief.log_base + move.log_ratio;
      if (!contains(out_.core, screen_, move.coordinate) || there < top_ - out_of_reach ||
          there > start_ + limits_.surprise) {
        continue;
      }
      // What was expanded has its own weight, which may have turned out to be hopeless.
      Hypothesis hypothesis = screen_.hypothesis_after(e.belief.hypothesis, move.coordinate);
      if (!expanded_.contains(hypothesis)) {
        note(hypothesis, {there + bystanders, k, static_cast<int>(j)});
      }
      added += move.log_ratio < 0 ? std::exp(move.log_ratio) : 0;
    }
    return added * std::exp(std::min(0.0, e.belief.log_weight - top_));
  }

  const Model& model_;
  const Screen& screen_;
  Limits limits_;
  Exploration out_;
  std::map<Hypothesis, std::size_t> expanded_;
  std::priority_queue<Waiting> waiting_;
  double start_ = 0;
  double top_ = -std::numeric_limits<double>::infinity();
};

}  // namespace

double log_bayes_factor(const Model& model, const Screen& screen, const Hypothesis& from, const Move& move) {
  if (screen.is_error(move.coordinate)) {
    const double odds = model.observations[static_cast<std::size_t>(move.coordinate)].wrong_log_odds;
    return from.is_wrong(move.coordinate) ? move.log_ratio + odds : move.log_ratio - odds;
  }
  const int p = screen.parameter(move.coordinate);
  const double odds = model.parameters[static_cast<std::size_t>(p)].fault->log_odds;
  return from.is_faulty(p) ? move.log_ratio + odds : move.log_ratio - odds;
}

bool contains(const Hypothesis& set, const Screen& screen, int coordinate) {
  return screen.is_error(coordinate) ? set.is_wrong(coordinate) : set.is_faulty(screen.parameter(coordinate));
}

double log_bystander_odds(const Model& model, const Screen& screen, const Hypothesis& from,
                          const Move& move) {
  const double beyond = log_bayes_factor(model, screen, from, move) - std::log(explains);
  return beyond > 0 ? move.log_ratio - beyond : move.log_ratio;
}

double log_bystanders(const Model& model, const Screen& screen, const Expanded& expanded,
                      const Hypothesis& core) {
  double sum = 0;
  for (const Move& move : expanded.moves) {
    if (!contains(core, screen, move.coordinate) &&
        !contains(expanded.belief.hypothesis, screen, move.coordinate)) {
      sum += std::log1p(std::exp(log_bystander_odds(model, screen, expanded.belief.hypothesis, move)));
    }
  }
  return sum;
}

Exploration explore(const Model& model, const Screen& screen, const Limits& limits) {
  return Search(model, screen, limits).run();
}

}  // namespace ohmtrail::diagnose::inference
