#include "diagnose/infer/explore.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <queue>

namespace ohmtrail::diagnose::inference {
namespace {

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
    out_.core.assign(static_cast<std::size_t>(screen_.root().mean.size()), 0);
    expand(screen_.root());
    expand_removals();
    while (!waiting_.empty() && static_cast<int>(out_.expanded.size()) < limits_.expansions) {
      const Waiting next = waiting_.top();
      waiting_.pop();
      if (next.log_weight < log_total() + std::log(limits_.negligible)) {
        break;
      }
      const Belief& from = out_.expanded[next.from].belief;
      if (!expanded_.contains(screen_.hypothesis_after(from.hypothesis, next.move.coordinate))) {
        expand(screen_.after(from, next.move));
      }
    }
    complete();
    return std::move(out_);
  }

 private:
  void expand(Belief belief) {
    expanded_.emplace(belief.hypothesis, out_.expanded.size());
    note(belief.hypothesis, belief.log_weight);
    out_.expanded.push_back({std::move(belief), {}});
    Expanded& here = out_.expanded.back();
    here.moves = screen_.moves(here.belief);
    for (const Move& move : here.moves) {
      if (log_bayes_factor(model_, screen_, here.belief.hypothesis, move) > std::log(explains)) {
        out_.core[static_cast<std::size_t>(move.coordinate)] = 1;
      }
      if (out_.core[static_cast<std::size_t>(move.coordinate)] != 0) {
        waiting_.push({here.belief.log_weight + move.log_ratio, out_.expanded.size() - 1, move});
      }
    }
  }

  // What the optimum holds faulty may be the wrong one of several that explain the same: look behind each.
  void expand_removals() {
    const Hypothesis& start = screen_.optimum().hypothesis;
    const std::vector<Move> moves = out_.expanded.front().moves;
    for (const Move& move : moves) {
      const bool member = screen_.is_error(move.coordinate) ? start.is_wrong(move.coordinate)
                                                            : start.is_faulty(screen_.parameter(move.coordinate));
      if (member) {
        out_.core[static_cast<std::size_t>(move.coordinate)] = 1;
        expand(screen_.after(out_.expanded.front().belief, move));
      }
    }
  }

  void note(const Hypothesis& hypothesis, double log_weight) {
    const auto [place, fresh] = out_.log_weights.emplace(hypothesis, log_weight);
    if (!fresh) {
      place->second = std::max(place->second, log_weight);
    }
    top_ = std::max(top_, log_weight);
  }

  [[nodiscard]] double log_total() const { return top_; }

  // Every core move of every expanded hypothesis gets its weight; what two steps away was never weighed is estimated
  // from how much one step adds.
  void complete() {
    double known = 0, frontier = 0, growth = 0;
    for (const Expanded& e : out_.expanded) {
      double added = 0;
      for (const Move& move : e.moves) {
        if (out_.core[static_cast<std::size_t>(move.coordinate)] == 0) {
          continue;
        }
        const Hypothesis there = screen_.hypothesis_after(e.belief.hypothesis, move.coordinate);
        const double log_weight = e.belief.log_weight + move.log_ratio;
        if (log_weight > top_ - 25) {
          note(there, log_weight);
          if (!expanded_.contains(there)) {
            frontier += std::exp(log_weight - top_);
            added += std::exp(std::min(move.log_ratio, 0.0));
          }
        }
      }
      growth = std::max(growth, added * std::exp(std::min(0.0, e.belief.log_weight - top_)));
    }
    for (const auto& [hypothesis, log_weight] : out_.log_weights) {
      known += std::exp(log_weight - top_);
    }
    out_.left_out = frontier * std::min(1.0, growth) / known;
  }

  const Model& model_;
  const Screen& screen_;
  Limits limits_;
  Exploration out_;
  std::map<Hypothesis, std::size_t> expanded_;
  std::priority_queue<Waiting> waiting_;
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

double log_bystanders(const Screen& screen, const Expanded& expanded, const std::vector<char>& core) {
  double sum = 0;
  for (const Move& move : expanded.moves) {
    const bool member = screen.is_error(move.coordinate)
                            ? expanded.belief.hypothesis.is_wrong(move.coordinate)
                            : expanded.belief.hypothesis.is_faulty(screen.parameter(move.coordinate));
    if (core[static_cast<std::size_t>(move.coordinate)] == 0 && !member) {
      sum += std::log1p(std::exp(move.log_ratio));
    }
  }
  return sum;
}

Exploration explore(const Model& model, const Screen& screen, const Limits& limits) {
  return Search(model, screen, limits).run();
}

}  // namespace ohmtrail::diagnose::inference
