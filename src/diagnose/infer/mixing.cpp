#include "diagnose/infer/mixing.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

#include "diagnose/infer/marginals.hpp"
#include "diagnose/infer/mixing_sets.hpp"
#include "diagnose/infer/mixing_source.hpp"

namespace ohmtrail::diagnose::inference {
namespace {

// From weighed hypotheses to probabilities and densities of each unknown.
class Mixer {
 public:
  Mixer(Weighing weighing, const InferOptions& options, Posterior& out)
      : weighing_(std::move(weighing)),
        options_(options),
        out_(out),
        model_(out.survey.model),
        sources_(mixing_sources(weighing_)) {}

  void run() {
    out_.left_out = weighing_.around.left_out;
    fill_probabilities();
    divide_alternatives();
    out_.marginal = marginals(model_, weighing_, std::move(sources_), out_.fault);
    hand_over();
  }

 private:
  void fill_probabilities() {
    out_.fault.assign(model_.parameters.size(), 0);
    out_.wrong.assign(model_.observations.size(), 0);
    out_.informed.assign(model_.parameters.size(), 0);
    for (const int p : weighing_.base->optimum.columns) {
      out_.informed[static_cast<std::size_t>(p)] = 1;
    }
    for (const auto& [key, share] : weighing_.shares) {
      add_members(*key, share);
    }
    for (const MixingSource& source : sources_) {
      for (const auto& [set, split] : source.splits) {
        add_fault_shares(*split, source.touching(*weighing_.sets, set), out_.fault);
      }
      add_bystanders(source);
    }
    for (std::size_t p = 0; p < out_.fault.size(); ++p) {
      const auto& fault = model_.parameters[p].fault;
      if (out_.informed[p] == 0 && fault && options_.faults) {
        out_.fault[p] = 1 / (1 + std::exp(-fault->log_odds));
      }
    }
  }

  void add_members(const Hypothesis& hypothesis, double share) {
    for (const int p : hypothesis.faulty) {
      out_.fault[static_cast<std::size_t>(p)] += weighing_.sets->set_of(p) < 0 ? share : 0;
    }
    for (const int o : hypothesis.wrong) {
      out_.wrong[static_cast<std::size_t>(o)] += share;
    }
  }

  void add_bystanders(const MixingSource& source) {
    for (const Move& move : *source.moves) {
      auto& probability = source.is_error(move) ? out_.wrong : out_.fault;
      probability[static_cast<std::size_t>(source.subject(move))] +=
          source.bystander_share(weighing_.around.core, move) * chance_of(move);
    }
  }

  void divide_alternatives() {
    constexpr double least = 1e-5;
    for (const MixingSource& source : sources_) {
      for (const auto& [key, share] : source.reached) {
        for (auto& [hypothesis, part] : divided(*weighing_.sets, source.splits, *key, share, least)) {
          out_.alternatives.push_back({std::move(hypothesis), part, 0});
        }
      }
    }
    std::stable_sort(out_.alternatives.begin(), out_.alternatives.end(),
                     [](const auto& a, const auto& b) { return a.share > b.share; });
  }

  void hand_over() {
    std::map<Hypothesis, std::size_t> place;
    for (const auto& [key, share] : weighing_.shares) {
      if (const auto found = weighing_.candidates.find(*key); found != weighing_.candidates.end()) {
        const Optimum& optimum = found->second.frame->optimum;
        place[optimum.hypothesis] = out_.components.size();
        out_.components.push_back({optimum, share});
      }
    }
    for (Posterior::Alternative& one : out_.alternatives) {
      one.component = nearest(place, one.hypothesis);
    }
  }

  // The component that differs in fewest members; the most probable of those.
  std::size_t nearest(const std::map<Hypothesis, std::size_t>& place, const Hypothesis& hypothesis) const {
    if (const auto found = place.find(hypothesis); found != place.end()) {
      return found->second;
    }
    std::size_t best = 0, fewest = static_cast<std::size_t>(-1);
    for (std::size_t k = 0; k < out_.components.size(); ++k) {
      const Hypothesis& other = out_.components[k].optimum.hypothesis;
      const std::size_t apart =
          difference(other.faulty, hypothesis.faulty) + difference(other.wrong, hypothesis.wrong);
      if (apart < fewest) {
        fewest = apart;
        best = k;
      }
    }
    return best;
  }

  static std::size_t difference(const std::vector<int>& a, const std::vector<int>& b) {
    std::vector<int> out;
    std::set_symmetric_difference(a.begin(), a.end(), b.begin(), b.end(), std::back_inserter(out));
    return out.size();
  }

  Weighing weighing_;
  const InferOptions& options_;
  Posterior& out_;
  const Model& model_;
  std::vector<MixingSource> sources_;
};

}  // namespace

void mix(Weighing weighing, const InferOptions& options, Posterior& out) {
  Mixer(std::move(weighing), options, out).run();
}

}  // namespace ohmtrail::diagnose::inference
