#include "diagnose/infer/explore.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <queue>

#include "diagnose/infer/bystanders.hpp"

namespace ohmtrail::diagnose::inference {
namespace {

// ln of the ratio to the heaviest beyond which a hypothesis is not looked at
constexpr double out_of_reach = 14;

// A key that was met as a step but not yet expanded.
struct Waiting {
  double log_weight;
  std::size_t from;  // index into expanded
  Move move;
  friend bool operator<(const Waiting& a, const Waiting& b) { return a.log_weight < b.log_weight; }
};

// From one key to the next.
struct Step {
  std::size_t move;   // the likeliest of those that lead there
  double log_weight;  // of the key there, bystanders left out
  double log_single;  // of that move's own hypothesis
};

class Search {
 public:
  Search(const Model& model, const Screen& screen, const ParallelSets& sets, SetSplits& splits,
         const Limits& limits)
      : model_(model), screen_(screen), sets_(sets), splits_(splits), limits_(limits) {}

  Exploration run() {
    Belief root = screen_.root();
    start_ = root.log_weight;
    // A member may be one too many: taking it out is always looked at.
    for (const int p : root.hypothesis.faulty) {
      add_to_core(screen_.coordinate_of(p));
    }
    for (const int o : root.hypothesis.wrong) {
      add_to_core(o);
    }
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
      if (!expanded_.contains(key_after(from, next.move))) {
        expand(screen_.after(from, next.move), next.from);
      }
    }
    complete();
    return std::move(out_);
  }

 private:
  [[nodiscard]] Hypothesis key_after(const Belief& from, const Move& move) const {
    return sets_.key(screen_.hypothesis_after(from.hypothesis, move.coordinate));
  }

  [[nodiscard]] int set_of(int coordinate) const {
    return screen_.is_error(coordinate) ? -1 : sets_.set_of(screen_.parameter(coordinate));
  }

  void add_to_core(int coordinate) {
    if (coordinate < 0 || contains(out_.core, screen_, coordinate)) {
      return;
    }
    out_.core = screen_.hypothesis_after(out_.core, coordinate);
    if (const int set = set_of(coordinate); set >= 0) {
      for (const int p : sets_.sets[static_cast<std::size_t>(set)].member) {
        add_to_core(screen_.coordinate_of(p));
      }
    }
  }

  void expand(Belief belief, std::size_t parent) {
    // It was promising from where it was met; what it looks like now, the screen cannot know.
    if (belief.log_weight > start_ + limits_.surprise) {
      return;
    }
    expanded_.emplace(sets_.key(belief.hypothesis), out_.expanded.size());
    out_.expanded.push_back({std::move(belief), {}, parent});
    Expanded& here = out_.expanded.back();
    here.log_divided_in = diagnose::inference::log_divided(screen_, sets_, splits_, here.belief);
    for (const auto& [set, more] : here.log_divided_in) {
      here.log_divided += more;
    }
    top_ = std::max(top_, here.belief.log_weight + here.log_divided);
    here.moves =
        screen_.moves(here.belief, out_.expanded.size() > 1 ? &out_.expanded.front().moves : nullptr);
    for (const Move& move : here.moves) {
      if (in_range(here.belief.log_base + move.log_ratio) &&
          log_bayes_factor(model_, screen_, here.belief.hypothesis, move) > std::log(explains)) {
        add_to_core(move.coordinate);
      }
    }
    for (const Step& step : steps_from(here)) {
      const Move& move = here.moves[step.move];
      if (in_range(step.log_single) && contains(out_.core, screen_, move.coordinate)) {
        waiting_.push({step.log_weight, out_.expanded.size() - 1, move});
      }
    }
  }

  [[nodiscard]] bool in_range(double log_weight) const {
    return log_weight >= top_ - out_of_reach && log_weight <= start_ + limits_.surprise;
  }

  // One step a coordinate of its own, and one a set: into it by the likeliest member, out of it where one
  // member alone is faulty.
  [[nodiscard]] std::vector<Step> steps_from(const Expanded& e) const {
    std::vector<Step> out;
    std::vector<int> step_of(sets_.sets.size(), -1);
    for (std::size_t j = 0; j < e.moves.size(); ++j) {
      const Move& move = e.moves[j];
      const int set = set_of(move.coordinate);
      const double single = e.belief.log_base + move.log_ratio, there = single + e.log_divided;
      if (set < 0) {
        out.push_back({j, there, single});
        continue;
      }
      const std::vector<int> faulty = sets_.faulty_in(set, e.belief.hypothesis);
      int& known = step_of[static_cast<std::size_t>(set)];
      if (faulty.empty() && known < 0) {
        known = static_cast<int>(out.size());
        out.push_back({j, there, single});
      } else if (faulty.empty()) {
        Step& step = out[static_cast<std::size_t>(known)];
        step.log_weight += std::log1p(std::exp(there - step.log_weight));
        if (single > step.log_single) {
          step.move = j;
          step.log_single = single;
        }
      } else if (faulty.size() == 1 && move.other_state) {
        out.push_back({j, there - e.log_divided_in.at(set), single});
      }
    }
    return out;
  }

  // What the optimum holds faulty may be the wrong one of several that explain the same: look behind each.
  void expand_removals() {
    const std::vector<Move> moves = out_.expanded.front().moves;
    const Belief root = out_.expanded.front().belief;
    for (const Move& move : moves) {
      if (move.other_state && !expanded_.contains(key_after(root, move))) {
        expand(screen_.after(root, move), 0);
      }
    }
  }

  void note(const Hypothesis& key, const Weighed& weighed) {
    const auto [place, fresh] = out_.weighed.emplace(key, weighed);
    if (!fresh && place->second.move >= 0 && place->second.log_weight < weighed.log_weight) {
      place->second = weighed;
    }
  }

  [[nodiscard]] double bystanders(std::size_t k) const {
    const Expanded& e = out_.expanded[k];
    return log_bystanders(model_, screen_, e.belief.hypothesis, e.moves, out_.core);
  }

  // Every core step of every expanded hypothesis gets its weight. What lies two steps away from all of them
  // was never weighed; it is estimated from how much one step adds.
  void complete() {
    double frontier = 0, growth = 0, total = 0;
    for (std::size_t k = 0; k < out_.expanded.size(); ++k) {
      if (within_reach(k)) {
        const Expanded& e = out_.expanded[k];
        note(sets_.key(e.belief.hypothesis), {e.belief.log_weight + e.log_divided + bystanders(k), k, -1});
      }
    }
    for (std::size_t k = 0; k < out_.expanded.size(); ++k) {
      if (within_reach(k)) {
        growth = std::max(growth, note_steps(k, k));
      } else if (limits_.exchanges) {
        note_steps(k, 0);
      }
    }
    for (const auto& [key, weighed] : out_.weighed) {
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
  double note_steps(std::size_t k, std::size_t like) {
    const Expanded& e = out_.expanded[k];
    const double beside = bystanders(like);
    double added = 0;
    for (const Step& step : steps_from(e)) {
      const Move& move = e.moves[step.move];
      if (!contains(out_.core, screen_, move.coordinate) || !in_range(step.log_single)) {
        continue;
      }
      // What was expanded has its own weight, which may have turned out to be hopeless.
      const Hypothesis key = key_after(e.belief, move);
      if (!expanded_.contains(key)) {
        note(key, {step.log_weight + beside, k, static_cast<int>(step.move)});
      }
      added += std::exp(std::min(0.0, step.log_weight - e.belief.log_weight - e.log_divided));
    }
    return added * std::exp(std::min(0.0, e.belief.log_weight - top_));
  }

  const Model& model_;
  const Screen& screen_;
  const ParallelSets& sets_;
  SetSplits& splits_;
  Limits limits_;
  Exploration out_;
  std::map<Hypothesis, std::size_t> expanded_;
  std::priority_queue<Waiting> waiting_;
  double start_ = 0;
  double top_ = -std::numeric_limits<double>::infinity();
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

Exploration explore(const Model& model, const Screen& screen, const ParallelSets& sets, SetSplits& splits,
                    const Limits& limits) {
  return Search(model, screen, sets, splits, limits).run();
}

}  // namespace ohmtrail::diagnose::inference
