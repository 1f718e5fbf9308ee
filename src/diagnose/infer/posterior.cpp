#include "diagnose/infer/posterior.hpp"

#include <algorithm>
#include <cmath>
#include <set>

#include "diagnose/infer/climb.hpp"

namespace ohmtrail::diagnose::inference {
namespace {

constexpr double worth_optimising = 0.01;  // share of the probability
constexpr double worth_a_part = 1e-4;

// One hypothesis that was weighed through its own optimum.
struct Candidate {
  Optimum optimum;
  double log_weight = 0;
  std::vector<Move> moves;  // at its root
};

class Mixer {
 public:
  Mixer(Forward& forward, const InferOptions& options, Posterior& out)
      : forward_(forward), options_(options), out_(out), model_(forward.model()) {}

  bool run() {
    auto best = climb(forward_, options_.faults);
    if (!best) {
      return false;
    }
    start(std::move(*best));
    if (options_.faults) {
      optimise_probable();
    }
    normalise();
    fill_probabilities();
    fill_marginals();
    return true;
  }

 private:
  // Explores around the best hypothesis; its own optimum is the first candidate.
  void start(Optimum best) {
    base_ = std::move(best);
    const Screen screen(model_, base_);
    if (options_.faults) {
      around_ = explore(model_, screen, {options_.expansions, 1e-5});
      for (Expanded& e : around_.expanded) {
        for (Move& move : e.moves) {
          cap(screen, e.belief.hypothesis, move);
        }
      }
    } else {
      around_.weighed[base_.hypothesis] = {0, 0, -1};
      around_.expanded.push_back({screen.root(), {}});
    }
    add_candidate(base_);
  }

  void add_candidate(Optimum optimum) {
    Candidate out{std::move(optimum), 0, {}};
    const Screen screen(model_, out.optimum);
    const Expanded root{screen.root(), options_.faults ? screen.moves(screen.root()) : std::vector<Move>{}};
    out.log_weight = root.belief.log_weight + log_bystanders(model_, screen, root, around_.core);
    out.moves = root.moves;
    if (!std::isfinite(out.log_weight)) {
      return;
    }
    for (Move& move : out.moves) {
      cap(screen, root.belief.hypothesis, move);
    }
    candidates_.emplace(out.optimum.hypothesis, std::move(out));
  }

  // From here on moves only serve for bystanders and for densities.
  void cap(const Screen& screen, const Hypothesis& from, Move& move) const {
    if (!contains(around_.core, screen, move.coordinate) && !contains(from, screen, move.coordinate)) {
      move.log_ratio = log_bystander_odds(model_, screen, from, move);
    }
  }

  // The heaviest hypotheses are weighed again, each at its own optimum of the real network.
  void optimise_probable() {
    std::vector<std::pair<double, const Hypothesis*>> order;
    double total = 0, top = -1e300;
    for (const auto& [hypothesis, weighed] : around_.weighed) {
      top = std::max(top, weighed.log_weight);
    }
    for (const auto& [hypothesis, weighed] : around_.weighed) {
      total += std::exp(weighed.log_weight - top);
      order.emplace_back(weighed.log_weight, &hypothesis);
    }
    std::stable_sort(order.begin(), order.end(),
                     [](const auto& a, const auto& b) { return a.first > b.first; });
    const Screen screen(model_, base_);
    for (const auto& [log_weight, hypothesis] : order) {
      if (static_cast<int>(candidates_.size()) >= options_.optimised ||
          log_weight - top < std::log(worth_optimising * total)) {
        break;
      }
      if (candidates_.contains(*hypothesis)) {
        continue;
      }
      const Eigen::VectorXd start = screen.start(belief_at(screen, *hypothesis));
      if (auto optimum = optimise(forward_, optimise_linear(model_, base_.near, *hypothesis, start))) {
        add_candidate(std::move(*optimum));
      } else {
        failed_.insert(*hypothesis);
      }
    }
  }

  Belief belief_at(const Screen& screen, const Hypothesis& hypothesis) const {
    const Weighed& weighed = around_.weighed.at(hypothesis);
    const Expanded& source = around_.expanded[weighed.source];
    return weighed.move < 0
               ? source.belief
               : screen.after(source.belief, source.moves[static_cast<std::size_t>(weighed.move)]);
  }

  // A hypothesis that outweighs every optimised one in the screen alone, yet found no optimum, is not
  // believed.
  void drop_unconfirmed() {
    double best = -1e300;
    for (const auto& [hypothesis, candidate] : candidates_) {
      best = std::max(best, candidate.log_weight);
    }
    std::erase_if(around_.weighed, [&](const auto& entry) {
      const bool optimised = candidates_.contains(entry.first);
      return failed_.contains(entry.first) || (!optimised && entry.second.log_weight > best + 0.5);
    });
  }

  // Shares of all hypotheses: the real evidence where there is one, else the screened one.
  void normalise() {
    drop_unconfirmed();
    double top = -1e300, total = 0;
    for (auto& [hypothesis, weighed] : around_.weighed) {
      if (const auto found = candidates_.find(hypothesis); found != candidates_.end()) {
        weighed.log_weight = found->second.log_weight;
      }
      top = std::max(top, weighed.log_weight);
    }
    for (const auto& [hypothesis, weighed] : around_.weighed) {
      total += std::exp(weighed.log_weight - top);
    }
    for (const auto& [hypothesis, weighed] : around_.weighed) {
      const double share = std::exp(weighed.log_weight - top) / total;
      if (share > 1e-9) {
        shares_.emplace_back(&hypothesis, share);
      }
    }
    std::stable_sort(shares_.begin(), shares_.end(),
                     [](const auto& a, const auto& b) { return a.second > b.second; });
    out_.left_out = around_.left_out;
  }

  // A bystander's chance under a hypothesis.
  static double chance(const Move& move) { return 1 / (1 + std::exp(-move.log_ratio)); }

  // The screen in whose coordinates the moves of a hypothesis are written, and those moves.
  const Optimum& frame_of(const Hypothesis& hypothesis) const {
    const auto found = candidates_.find(hypothesis);
    return found != candidates_.end() ? found->second.optimum : base_;
  }

  const std::vector<Move>& moves_of(const Hypothesis& hypothesis) const {
    const auto found = candidates_.find(hypothesis);
    return found != candidates_.end() ? found->second.moves
                                      : around_.expanded[around_.weighed.at(hypothesis).source].moves;
  }

  void fill_probabilities() {
    out_.fault.assign(model_.parameters.size(), 0);
    out_.wrong.assign(model_.observations.size(), 0);
    out_.informed.assign(model_.parameters.size(), 0);
    for (const int p : base_.columns) {
      out_.informed[static_cast<std::size_t>(p)] = 1;
    }
    for (const auto& [hypothesis, share] : shares_) {
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
    const Optimum& frame = frame_of(hypothesis);
    const int m = static_cast<int>(frame.residual.size());
    for (const Move& move : moves_of(hypothesis)) {
      const bool error = move.coordinate < m;
      const int which =
          error ? move.coordinate : frame.columns[static_cast<std::size_t>(move.coordinate - m)];
      const bool known = error ? around_.core.is_wrong(which) || hypothesis.is_wrong(which)
                               : around_.core.is_faulty(which) || hypothesis.is_faulty(which);
      if (!known) {
        (error ? out_.wrong : out_.fault)[static_cast<std::size_t>(which)] += share * chance(move);
      }
    }
  }

  void fill_marginals() {
    out_.marginal.resize(model_.parameters.size());
    for (const auto& [hypothesis, share] : shares_) {
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
    const Optimum& frame = frame_of(hypothesis);
    const int m = static_cast<int>(frame.residual.size());
    std::vector<char> done(model_.parameters.size(), 0);
    const bool own = candidates_.contains(hypothesis);
    for (const Move& move : moves_of(hypothesis)) {
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
        own ? hypothesis : around_.expanded[around_.weighed.at(hypothesis).source].belief.hypothesis;
    const bool crossed = source.is_faulty(p) != hypothesis.is_faulty(p);
    const Tilted& here = crossed ? move.changed : move.present;
    if (around_.core.is_faulty(p) || hypothesis.is_faulty(p)) {
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

 public:
  void hand_over() {
    std::map<Hypothesis, std::size_t> place;
    for (const auto& [hypothesis, share] : shares_) {
      if (const auto found = candidates_.find(*hypothesis); found != candidates_.end()) {
        place[*hypothesis] = out_.components.size();
        out_.components.push_back({std::move(found->second.optimum), share});
      }
    }
    for (const auto& [hypothesis, share] : shares_) {
      out_.alternatives.push_back({*hypothesis, share, nearest(place, *hypothesis)});
    }
  }

 private:
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

  Forward& forward_;
  const InferOptions& options_;
  Posterior& out_;
  const Model& model_;
  Optimum base_;
  Exploration around_;
  std::map<Hypothesis, Candidate> candidates_;
  std::set<Hypothesis> failed_;  // found no optimum of their own
  std::vector<std::pair<const Hypothesis*, double>> shares_;
};

}  // namespace

std::shared_ptr<Posterior> find_posterior(Survey survey, const InferOptions& options) {
  auto out = std::make_shared<Posterior>();
  out->survey = std::move(survey);
  Forward forward(out->survey.model);
  Mixer mixer(forward, options, *out);
  if (!mixer.run()) {
    return nullptr;
  }
  mixer.hand_over();
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
