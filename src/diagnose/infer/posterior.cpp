#include "diagnose/infer/posterior.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "diagnose/infer/weighing.hpp"

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
    fill_probabilities();
    fill_marginals();
    hand_over();
  }

 private:
  // A bystander's chance under a hypothesis.
  static double chance(const Move& move) { return 1 / (1 + std::exp(-move.log_ratio)); }

  void fill_probabilities() {
    out_.fault.assign(model_.parameters.size(), 0);
    out_.wrong.assign(model_.observations.size(), 0);
    out_.informed.assign(model_.parameters.size(), 0);
    for (const int p : weighing_.base.columns) {
      out_.informed[static_cast<std::size_t>(p)] = 1;
    }
    for (const auto& [hypothesis, share] : weighing_.shares) {
      add_members(*hypothesis, share);
      add_bystanders(*hypothesis, share);
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
      out_.fault[static_cast<std::size_t>(p)] += share;
    }
    for (const int o : hypothesis.wrong) {
      out_.wrong[static_cast<std::size_t>(o)] += share;
    }
  }

  void add_bystanders(const Hypothesis& hypothesis, double share) {
    const Optimum& frame = weighing_.frame_of(hypothesis);
    const int m = static_cast<int>(frame.residual.size());
    for (const Move& move : weighing_.moves_of(hypothesis)) {
      const bool error = move.coordinate < m;
      const int which =
          error ? move.coordinate : frame.columns[static_cast<std::size_t>(move.coordinate - m)];
      const bool known = error ? weighing_.around.core.is_wrong(which) || hypothesis.is_wrong(which)
                               : weighing_.around.core.is_faulty(which) || hypothesis.is_faulty(which);
      if (!known) {
        (error ? out_.wrong : out_.fault)[static_cast<std::size_t>(which)] += share * chance(move);
      }
    }
  }

  void fill_marginals() {
    out_.marginal.resize(model_.parameters.size());
    for (const auto& [hypothesis, share] : weighing_.shares) {
      if (share > worth_a_part) {
        add_parts(*hypothesis, share);
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

  void add_prior(int p, Mixture& mixture) {
    const Parameter& unknown = model_.parameters[static_cast<std::size_t>(p)];
    const double fault = out_.fault[static_cast<std::size_t>(p)];
    mixture.add(1 - fault, unknown.sound.mean, unknown.sound.sd * unknown.sound.sd);
    if (unknown.fault) {
      mixture.add(fault, unknown.fault->prior.mean, unknown.fault->prior.sd * unknown.fault->prior.sd);
    }
  }

  // Every informed unknown under one hypothesis: those with a fault by their exact one-dimensional density,
  // the others by the Gaussian at the optimum.
  void add_parts(const Hypothesis& hypothesis, double share) {
    const Optimum& frame = weighing_.frame_of(hypothesis);
    const int m = static_cast<int>(frame.residual.size());
    std::vector<char> done(model_.parameters.size(), 0);
    const bool own = weighing_.candidates.contains(hypothesis);
    for (const Move& move : weighing_.moves_of(hypothesis)) {
      if (move.coordinate < m) {
        continue;
      }
      const int p = frame.columns[static_cast<std::size_t>(move.coordinate - m)];
      add_part(hypothesis, share, p, move, own);
      done[static_cast<std::size_t>(p)] = 1;
    }
    if (own) {
      add_gaussian_parts(frame, share, done);
    }
  }

  void add_part(const Hypothesis& hypothesis, double share, int p, const Move& move, bool own) {
    Mixture& mixture = out_.marginal[static_cast<std::size_t>(p)];
    // Moves were taken at the source: the one that led here is seen from its other side.
    const Hypothesis& source =
        own ? hypothesis
            : weighing_.around.expanded[weighing_.around.weighed.at(hypothesis).source].belief.hypothesis;
    const bool crossed = source.is_faulty(p) != hypothesis.is_faulty(p);
    const Tilted& here = crossed ? move.changed : move.present;
    if (weighing_.around.core.is_faulty(p) || hypothesis.is_faulty(p)) {
      mixture.add(share, here.mean_x, here.variance_x);
      return;
    }
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

  void hand_over() {
    std::map<Hypothesis, std::size_t> place;
    for (const auto& [hypothesis, share] : weighing_.shares) {
      if (const auto found = weighing_.candidates.find(*hypothesis); found != weighing_.candidates.end()) {
        place[*hypothesis] = out_.components.size();
        out_.components.push_back({std::move(found->second.optimum), share});
      }
    }
    for (const auto& [hypothesis, share] : weighing_.shares) {
      out_.alternatives.push_back({*hypothesis, share, nearest(place, *hypothesis)});
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
};

}  // namespace

std::shared_ptr<Posterior> find_posterior(Survey survey, const InferOptions& options) {
  auto out = std::make_shared<Posterior>();
  out->survey = std::move(survey);
  Forward forward(out->survey.model);
  auto weighing = weigh_hypotheses(forward, options);
  if (!weighing) {
    return nullptr;
  }
  Mixer(std::move(*weighing), options, *out).run();
  return out;
}

double deviation_of(const Model& model, const Optimum& optimum, const Eigen::VectorXd& by_value) {
  const auto c = static_cast<Eigen::Index>(optimum.columns.size());
  Eigen::VectorXd scaled(c);
  double uninformed = 0;
  for (Eigen::Index p = 0, k = 0; p < by_value.size(); ++p) {
    const Parameter& unknown = model.parameters[static_cast<std::size_t>(p)];
    const double a = by_value[p] * unknown.slope(optimum.x[p]) *
                     prior_of(model, optimum.hypothesis, static_cast<int>(p)).sd;
    if (k < c && optimum.columns[static_cast<std::size_t>(k)] == p) {
      scaled[k++] = a;
    } else {
      uninformed += a * a;
    }
  }
  const Eigen::VectorXd explained = optimum.fit.basis.bottomRows(c).transpose() * scaled;
  return std::sqrt(std::max(0.0, scaled.squaredNorm() - explained.squaredNorm()) + uninformed);
}

}  // namespace ohmtrail::diagnose::inference
