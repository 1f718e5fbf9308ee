#include "diagnose/infer/weighing.hpp"

#include <algorithm>
#include <cmath>
#include <set>
#include <utility>

#include "diagnose/infer/bystanders.hpp"
#include "diagnose/infer/climb.hpp"

namespace ohmtrail::diagnose::inference {
namespace {

constexpr double worth_optimising = 0.01;  // share of the probability
constexpr double worth_a_look = 1e-3;      // of the likeliest
// Frames of their own: as many as a few milliseconds allow, in multiplications of which each takes a multiple
// of m² (m + c).
constexpr double work_for_frames = 2e6, fewest_frames = 4, most_frames = 400;

class Weigher {
 public:
  Weigher(Forward& forward, const InferOptions& options)
      : forward_(forward), options_(options), model_(forward.model()) {}

  std::optional<Weighing> run() {
    auto best = climb(forward_, options_.faults);
    if (!best) {
      return std::nullopt;
    }
    start(std::move(*best));
    if (options_.faults) {
      optimise_probable();
    }
    normalise();
    return std::move(out_);
  }

 private:
  // Explores around the best hypothesis; its own optimum is the first candidate.
  void start(Optimum best) {
    out_.base = std::make_shared<const Frame>(model_, std::move(best));
    out_.sets = std::make_unique<ParallelSets>();
    out_.splits = std::make_unique<SetSplits>(model_, *out_.sets);
    if (options_.faults) {
      *out_.sets = parallel_sets(model_, out_.base->optimum);
      out_.around = explore(model_, out_.base, *out_.sets, *out_.splits, limits());
      for (Expanded& e : out_.around.expanded) {
        for (Move& move : e.moves) {
          cap(e.frame->screen, e.belief.hypothesis, move);
        }
      }
      settle_frontier();
    } else {
      out_.around.weighed[out_.base->optimum.hypothesis] = {};
      out_.around.expanded.push_back({out_.base, out_.base->screen.root(), {}});
    }
    add_candidate(out_.base);
  }

  int own_frames() const {
    const auto m = static_cast<double>(model_.observations.size());
    const auto c = static_cast<double>(out_.base->optimum.columns.size());
    const double affordable = std::clamp(work_for_frames / (m * m * (m + c)), fewest_frames, most_frames);
    return options_.own_optima.value_or(static_cast<int>(affordable));
  }

  Limits limits() const {
    const int own = own_frames();
    return {.expansions = std::max(options_.expansions, own), .own_frames = own};
  }

  // A single step is weighed on the Gaussian of where it starts; that of the probable ones is looked at from
  // where it ends, which tells whether a resistance had to go below nothing for it.
  void settle_frontier() {
    double top = -1e300;
    for (const auto& [hypothesis, weighed] : out_.around.weighed) {
      top = std::max(top, weighed.log_weight);
    }
    for (auto& [hypothesis, weighed] : out_.around.weighed) {
      if (weighed.move < 0 || weighed.log_weight < top + std::log(worth_a_look)) {
        continue;
      }
      const Expanded& source = out_.around.expanded[weighed.source];
      const Move& move = source.moves[static_cast<std::size_t>(weighed.move)];
      const double there = source.after(static_cast<std::size_t>(weighed.move)).log_weight;
      weighed.log_weight += std::min(0.0, there - source.belief.log_base - move.log_ratio);
    }
  }

  void add_candidate(std::shared_ptr<const Frame> frame) {
    Candidate out{std::move(frame), 0, {}};
    const Screen& screen = out.frame->screen;
    const Belief root = screen.root();
    out.moves = options_.faults ? screen.moves(root) : std::vector<Move>{};
    out.log_weight =
        root.log_weight + log_bystanders(model_, screen, root.hypothesis, out.moves, out_.around.core);
    for (const auto& [set, more] : log_divided(screen, *out_.sets, *out_.splits, root)) {
      out.log_weight += more;
    }
    if (!std::isfinite(out.log_weight)) {
      return;
    }
    for (Move& move : out.moves) {
      cap(screen, root.hypothesis, move);
    }
    const Hypothesis key = out_.sets->key(out.frame->optimum.hypothesis);
    out_.candidates.emplace(key, std::move(out));
  }

  // From here on moves only serve for bystanders and for densities.
  void cap(const Screen& screen, const Hypothesis& from, Move& move) const {
    if (!contains(out_.around.core, screen, move.coordinate) && !contains(from, screen, move.coordinate)) {
      move.log_ratio = log_bystander_odds(model_, screen, from, move);
    }
  }

  // The heaviest hypotheses are weighed again, each at its own optimum of the real network.
  void optimise_probable() {
    while (static_cast<int>(out_.candidates.size() + failed_.size()) < options_.optimised) {
      const Hypothesis* heaviest = heaviest_on_screen();
      if (heaviest == nullptr) {
        return;
      }
      const Hypothesis key = *heaviest;
      if (auto optimum = optimise(forward_, linear_optimum(key))) {
        add_candidate(std::make_shared<const Frame>(model_, std::move(*optimum)));
      }
      if (out_.candidates.contains(key)) {
        correct_descendants(key);
      } else {
        failed_.insert(key);
      }
    }
  }

  // The most probable hypothesis that only the screen has weighed; null where none is worth an optimum.
  const Hypothesis* heaviest_on_screen() const {
    const Hypothesis* out = nullptr;
    double top = -1e300, heaviest = -1e300, total = 0;
    for (const auto& [hypothesis, weighed] : out_.around.weighed) {
      top = std::max(top, weight_of(hypothesis, weighed));
    }
    for (const auto& [hypothesis, weighed] : out_.around.weighed) {
      total += std::exp(weight_of(hypothesis, weighed) - top);
      const bool done = out_.candidates.contains(hypothesis) || failed_.contains(hypothesis);
      if (!done && weighed.log_weight > heaviest) {
        heaviest = weighed.log_weight;
        out = &hypothesis;
      }
    }
    return heaviest - top < std::log(worth_optimising * total) ? nullptr : out;
  }

  double weight_of(const Hypothesis& hypothesis, const Weighed& weighed) const {
    const auto found = out_.candidates.find(hypothesis);
    return found != out_.candidates.end() ? found->second.log_weight : weighed.log_weight;
  }

  // A chain of steps on one linear function may overrate where it leads: what an own optimum takes away is
  // taken from everything that was reached through that hypothesis.
  void correct_descendants(const Hypothesis& key) {
    const auto& expanded = out_.around.expanded;
    std::vector<char> below(expanded.size(), 0);
    for (std::size_t k = 0; k < expanded.size(); ++k) {
      below[k] = out_.sets->key(expanded[k].belief.hypothesis) == key ||
                 (!expanded[k].own() && below[expanded[k].parent] != 0);
    }
    const double overrated =
        std::min(0.0, out_.candidates.at(key).log_weight - out_.around.weighed.at(key).log_weight);
    for (auto& [other, weighed] : out_.around.weighed) {
      weighed.log_weight += below[weighed.source] != 0 && other != key ? overrated : 0;
    }
  }

  Optimum linear_optimum(const Hypothesis& key) const {
    const Weighed& weighed = out_.around.weighed.at(key);
    const Expanded& source = out_.around.expanded[weighed.source];
    if (weighed.move < 0 && source.own()) {
      return source.frame->optimum;
    }
    const Belief there =
        weighed.move < 0 ? source.belief : source.after(static_cast<std::size_t>(weighed.move));
    return optimise_linear(model_, out_.base->optimum.near, there.hypothesis,
                           source.frame->screen.start(there));
  }

  // A hypothesis that outweighs every optimised one in the screen alone, yet found no optimum, is not
  // believed.
  void drop_unconfirmed() {
    double best = -1e300;
    for (const auto& [hypothesis, candidate] : out_.candidates) {
      best = std::max(best, candidate.log_weight);
    }
    std::erase_if(out_.around.weighed, [&](const auto& entry) {
      const bool optimised = out_.candidates.contains(entry.first);
      return failed_.contains(entry.first) || (!optimised && entry.second.log_weight > best + 0.5);
    });
  }

  // Shares of all hypotheses: the real evidence where there is one, else the screened one.
  void normalise() {
    drop_unconfirmed();
    double top = -1e300, total = 0;
    for (auto& [hypothesis, weighed] : out_.around.weighed) {
      if (const auto found = out_.candidates.find(hypothesis); found != out_.candidates.end()) {
        weighed.log_weight = found->second.log_weight;
      }
      top = std::max(top, weighed.log_weight);
    }
    for (const auto& [hypothesis, weighed] : out_.around.weighed) {
      total += std::exp(weighed.log_weight - top);
    }
    for (const auto& [hypothesis, weighed] : out_.around.weighed) {
      const double share = std::exp(weighed.log_weight - top) / total;
      if (share > 1e-9) {
        out_.shares.emplace_back(&hypothesis, share);
      }
    }
    std::stable_sort(out_.shares.begin(), out_.shares.end(),
                     [](const auto& a, const auto& b) { return a.second > b.second; });
  }

  Forward& forward_;
  const InferOptions& options_;
  const Model& model_;
  Weighing out_;
  std::set<Hypothesis> failed_;  // found no optimum of their own
};

}  // namespace

const Frame& Weighing::frame_of(const Hypothesis& hypothesis) const {
  const auto found = candidates.find(hypothesis);
  return *(found != candidates.end() ? found->second.frame : source_of(hypothesis).frame);
}

const std::vector<Move>& Weighing::moves_of(const Hypothesis& hypothesis) const {
  const auto found = candidates.find(hypothesis);
  return found != candidates.end() ? found->second.moves : source_of(hypothesis).moves;
}

const Expanded& Weighing::source_of(const Hypothesis& key) const {
  return around.expanded[around.weighed.at(key).source];
}

std::optional<Weighing> weigh_hypotheses(Forward& forward, const InferOptions& options) {
  return Weigher(forward, options).run();
}

}  // namespace ohmtrail::diagnose::inference
