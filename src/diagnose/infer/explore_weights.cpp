#include "diagnose/infer/explore_weights.hpp"

#include <algorithm>
#include <cmath>
#include <tuple>

#include "diagnose/infer/bystanders.hpp"
#include "diagnose/infer/explore_steps.hpp"

namespace ohmtrail::diagnose::inference {
namespace {

// Share of probability in what no step from anywhere leads to: see `InferResult::left_out`.
constexpr double unseen = 1e-3;

class Tally {
 public:
  Tally(const Model& model, const ParallelSets& sets, const Limits& limits,
        const std::set<Hypothesis>& expanded_keys, Exploration& out)
      : model_(model), sets_(sets), limits_(limits), expanded_keys_(expanded_keys), out_(out) {}

  // What lies two steps away from every expanded hypothesis was never weighed; a second step is taken to add
  // as much as the first does where it adds most.
  void run() {
    for (std::size_t k = 0; k < out_.expanded.size(); ++k) {
      const Expanded& e = out_.expanded[k];
      if (within_reach(k)) {
        note(sets_.key(e.belief.hypothesis), {e.log_weight() + bystanders(e), k, -1, e.own()});
      }
    }
    double growth = 0;
    for (std::size_t k = 0; k < out_.expanded.size(); ++k) {
      if (within_reach(k)) {
        growth = std::max(growth, note_steps(k, bystanders(out_.expanded[k])));
      } else if (limits_.exchanges) {
        note_steps(k, bystanders(out_.expanded.front()));
      }
    }
    double frontier = 0, total = 0;
    for (const auto& [key, weighed] : out_.weighed) {
      total += std::exp(weighed.log_weight - out_.top);
      frontier += weighed.move >= 0 ? std::exp(weighed.log_weight - out_.top) : 0;
    }
    out_.left_out = std::min(1.0, unseen + frontier * std::min(1.0, growth) / total);
  }

 private:
  // What is seen from a frame of its own is believed before what a chain of steps says.
  void note(const Hypothesis& key, const Weighed& weighed) {
    const auto [place, fresh] = out_.weighed.emplace(key, weighed);
    const auto rank = [](const Weighed& w) { return std::tuple(w.from_own, w.move < 0, w.log_weight); };
    if (!fresh && rank(place->second) < rank(weighed)) {
      place->second = weighed;
    }
  }

  [[nodiscard]] double bystanders(const Expanded& e) const {
    return log_bystanders(model_, e.frame->screen, e.belief.hypothesis, e.moves, out_.core);
  }

  // From a hypothesis that explains nothing everything looks faulty: it only served to look behind a fault,
  // and what it led to stands on its own.
  [[nodiscard]] bool within_reach(std::size_t k) const {
    return k == 0 || out_.expanded[k].belief.log_weight > out_.top - out_of_reach;
  }

  // Returns how much all steps from k add, as a share of what is there; steps that raise the weight do not
  // count.
  double note_steps(std::size_t k, double beside) {
    const Expanded& e = out_.expanded[k];
    double added = 0;
    for (const Step& step : steps_from(e, sets_)) {
      const bool core = contains(out_.core, e.frame->screen, e.moves[step.move].coordinate);
      if (!core || !in_range(out_, limits_, step.log_single)) {
        continue;
      }
      // What was expanded has its own weight, which may have turned out to be hopeless.
      const Hypothesis key = key_after(e, step.move, sets_);
      if (!expanded_keys_.contains(key)) {
        note(key, {step.log_weight + beside, k, static_cast<int>(step.move), e.own()});
      }
      added += std::exp(std::min(0.0, step.log_weight - e.log_weight()));
    }
    return added * std::exp(std::min(0.0, e.belief.log_weight - out_.top));
  }

  const Model& model_;
  const ParallelSets& sets_;
  const Limits& limits_;
  const std::set<Hypothesis>& expanded_keys_;
  Exploration& out_;
};

}  // namespace

void weigh_explored(const Model& model, const ParallelSets& sets, const Limits& limits,
                    const std::set<Hypothesis>& expanded_keys, Exploration& explored) {
  Tally(model, sets, limits, expanded_keys, explored).run();
}

}  // namespace ohmtrail::diagnose::inference
