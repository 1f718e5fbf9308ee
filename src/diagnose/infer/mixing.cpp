#include "diagnose/infer/mixing.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

#include "diagnose/infer/mixing_sets.hpp"

namespace ohmtrail::diagnose::inference {
namespace {

constexpr double worth_a_part = 1e-4;

// From weighed hypotheses to probabilities and densities of each unknown.
class Mixer {
 public:
  Mixer(Weighing weighing, const InferOptions& options, Posterior& out)
      : weighing_(std::move(weighing)), options_(options), out_(out), model_(out.survey.model) {}

  void run() {
    out_.left_out = weighing_.around.left_out;
    gather_sources();
    fill_probabilities();
    divide_alternatives();
    fill_marginals();
    hand_over();
  }

 private:
  // Keys that were reached from one place. They share its moves: all that is said there of an unknown holds
  // for each of them, but for those whose state it is that differs.
  struct Source {
    const Hypothesis* at;
    const Optimum* frame;
    const std::vector<Move>* moves;
    bool own;       // the moves were taken at the hypothesis' own optimum
    Splits splits;  // of the sets of the core
    std::vector<std::pair<const Hypothesis*, double>> reached;
    double share = 0;
  };

  void gather_sources() {
    std::map<const std::vector<Move>*, std::size_t> place;
    for (const auto& [hypothesis, share] : weighing_.shares) {
      const std::vector<Move>& moves = weighing_.moves_of(*hypothesis);
      const auto [found, fresh] = place.emplace(&moves, sources_.size());
      if (fresh) {
        sources_.push_back(source_of(*hypothesis, moves));
      }
      sources_[found->second].reached.emplace_back(hypothesis, share);
      sources_[found->second].share += share;
    }
  }

  Source source_of(const Hypothesis& key, const std::vector<Move>& moves) {
    const bool own = weighing_.candidates.contains(key);
    const Optimum& frame = weighing_.frame_of(key);
    const Hypothesis* at = own ? &frame.hypothesis : &weighing_.source_of(key).hypothesis;
    Source out{at, &frame, &moves, own, {}, {}, 0};
    const Screen screen(model_, frame);
    const Belief belief = own ? screen.root() : weighing_.source_of(key);
    for (const int set : weighing_.sets->touched(weighing_.around.core)) {
      out.splits[set] = &split_at(screen, *weighing_.sets, *weighing_.splits, belief, set);
    }
    return out;
  }

  // A bystander's chance under a hypothesis.
  static double chance(const Move& move) { return 1 / (1 + std::exp(-move.log_ratio)); }

  static bool is_error(const Source& source, const Move& move) {
    return move.coordinate < source.frame->residual.size();
  }

  // The observation or unknown that a move is about.
  static int subject(const Source& source, const Move& move) {
    const auto m = static_cast<int>(source.frame->residual.size());
    return is_error(source, move) ? move.coordinate
                                  : source.frame->columns[static_cast<std::size_t>(move.coordinate - m)];
  }

  static bool holds(const Hypothesis& hypothesis, bool error, int which) {
    return error ? hypothesis.is_wrong(which) : hypothesis.is_faulty(which);
  }

  // The share of those hypotheses in which the move's subject is neither in the core nor a member.
  double bystander_share(const Source& source, const Move& move) const {
    const bool error = is_error(source, move);
    const int which = subject(source, move);
    if (holds(weighing_.around.core, error, which)) {
      return 0;
    }
    double members = 0;
    for (const auto& [hypothesis, share] : source.reached) {
      members += holds(*hypothesis, error, which) ? share : 0;
    }
    return source.share - members;
  }

  void fill_probabilities() {
    out_.fault.assign(model_.parameters.size(), 0);
    out_.wrong.assign(model_.observations.size(), 0);
    out_.informed.assign(model_.parameters.size(), 0);
    for (const int p : weighing_.base.columns) {
      out_.informed[static_cast<std::size_t>(p)] = 1;
    }
    for (const auto& [key, share] : weighing_.shares) {
      add_members(*key, share);
    }
    for (const Source& source : sources_) {
      for (const auto& [set, split] : source.splits) {
        add_fault_shares(*split, touching(source, set), out_.fault);
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

  // The share of a source's keys in which the set has a fault.
  double touching(const Source& source, int set) const {
    double out = 0;
    for (const auto& [key, share] : source.reached) {
      out += weighing_.sets->faulty_in(set, *key).empty() ? 0 : share;
    }
    return out;
  }

  void add_bystanders(const Source& source) {
    for (const Move& move : *source.moves) {
      auto& probability = is_error(source, move) ? out_.wrong : out_.fault;
      probability[static_cast<std::size_t>(subject(source, move))] +=
          bystander_share(source, move) * chance(move);
    }
  }

  void fill_marginals() {
    out_.marginal.resize(model_.parameters.size());
    for (Source& source : sources_) {
      drop_light(source);
      if (source.share > 0) {
        add_parts(source);
      }
    }
    for (std::size_t p = 0; p < out_.marginal.size(); ++p) {
      Mixture& mixture = out_.marginal[p];
      if (mixture.empty()) {
        add_prior(static_cast<int>(p), mixture);
      }
      mixture.condense(10);
    }
  }

  static void drop_light(Source& source) {
    std::erase_if(source.reached, [](const auto& entry) { return entry.second <= worth_a_part; });
    source.share = 0;
    for (const auto& [hypothesis, share] : source.reached) {
      source.share += share;
    }
  }

  void add_prior(int p, Mixture& mixture) {
    const Parameter& unknown = model_.parameters[static_cast<std::size_t>(p)];
    const double fault = out_.fault[static_cast<std::size_t>(p)];
    mixture.add(1 - fault, unknown.sound.mean, unknown.sound.sd * unknown.sound.sd);
    if (unknown.fault) {
      mixture.add(fault, unknown.fault->prior.mean, unknown.fault->prior.sd * unknown.fault->prior.sd);
    }
  }

  // Every informed unknown: those with a fault by their exact one-dimensional density, the others by the
  // Gaussian at the optimum.
  void add_parts(const Source& source) {
    std::vector<char> done(model_.parameters.size(), 0);
    for (const auto& [set, split] : source.splits) {
      const std::vector<int>& members = weighing_.sets->sets[static_cast<std::size_t>(set)].member;
      const double any = touching(source, set);
      for (std::size_t k = 0; k < split->states.size(); ++k) {
        const double share = k == 0 ? source.share - any : any * split->share(k);
        if (share > worth_a_part) {
          add_views(members, weighing_.splits->views(set, *split, k), share);
        }
      }
      for (const int p : members) {
        done[static_cast<std::size_t>(p)] = 1;
      }
    }
    for (const Move& move : *source.moves) {
      if (!is_error(source, move) && done[static_cast<std::size_t>(subject(source, move))] == 0) {
        add_parts_of_members(source, move);
        add_part_of_bystander(source, move);
        done[static_cast<std::size_t>(subject(source, move))] = 1;
      }
    }
    if (source.own) {
      add_gaussian_parts(*source.frame, source.share, done);
    }
  }

  void add_views(const std::vector<int>& members, const std::vector<MemberView>& views, double share) {
    for (std::size_t j = 0; j < members.size(); ++j) {
      out_.marginal[static_cast<std::size_t>(members[j])].add(share, views[j].mean_x, views[j].variance_x);
    }
  }

  // Moves were taken at the source: the one that led to a hypothesis is seen from its other side.
  void add_parts_of_members(const Source& source, const Move& move) {
    const int p = subject(source, move);
    const bool core = weighing_.around.core.is_faulty(p), before = source.at->is_faulty(p);
    for (const auto& [hypothesis, share] : source.reached) {
      const bool faulty = hypothesis->is_faulty(p);
      if (core || faulty) {
        const Tilted& here = before != faulty ? move.changed : move.present;
        out_.marginal[static_cast<std::size_t>(p)].add(share, here.mean_x, here.variance_x);
      }
    }
  }

  void add_part_of_bystander(const Source& source, const Move& move) {
    Mixture& mixture = out_.marginal[static_cast<std::size_t>(subject(source, move))];
    const double share = bystander_share(source, move);
    mixture.add(share * (1 - chance(move)), move.present.mean_x, move.present.variance_x);
    mixture.add(share * chance(move), move.changed.mean_x, move.changed.variance_x);
  }

  void add_gaussian_parts(const Optimum& frame, double share, const std::vector<char>& done) {
    const Eigen::Index m = frame.residual.size();
    for (std::size_t k = 0; k < frame.columns.size(); ++k) {
      const int p = frame.columns[k];
      if (done[static_cast<std::size_t>(p)] == 0) {
        const Normal& prior = prior_of(model_, frame.hypothesis, p);
        const Eigen::Index row = m + static_cast<Eigen::Index>(k);
        const double variance = std::max(0.0, 1 - frame.fit.basis.row(row).squaredNorm());
        out_.marginal[static_cast<std::size_t>(p)].add(share, frame.x[p], variance * prior.sd * prior.sd);
      }
    }
  }

  void divide_alternatives() {
    constexpr double least = 1e-5;
    for (const Source& source : sources_) {
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
        place[found->second.optimum.hypothesis] = out_.components.size();
        out_.components.push_back({std::move(found->second.optimum), share});
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
  std::vector<Source> sources_;
  const InferOptions& options_;
  Posterior& out_;
  const Model& model_;
};

}  // namespace

void mix(Weighing weighing, const InferOptions& options, Posterior& out) {
  Mixer(std::move(weighing), options, out).run();
}

}  // namespace ohmtrail::diagnose::inference
