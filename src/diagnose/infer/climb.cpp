#include "diagnose/infer/climb.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <memory>
#include <set>
#include <utility>
#include <vector>

namespace ohmtrail::diagnose::inference {
namespace {

constexpr int most_moves = 30;
constexpr int most_rounds = 5;

using Place = std::shared_ptr<const Frame>;

// A neighbour that the screen finds better, at its own optimum; null where it turns out not to be.
Place better_neighbour(const Model& model, const Linearisation& near, const Place& here, bool look_behind,
                       std::set<Hypothesis>& seen) {
  constexpr double worth_it = 0.05;
  constexpr int tries = 3;
  const ParallelSets apart;  // which member of a set it is matters here
  SetSplits none;
  Limits limits{.expansions = 1, .negligible = 1, .surprise = 1e300, .look_behind = look_behind};
  limits.exchanges = true;
  const Exploration around = explore(model, here, apart, none, limits);
  const double present = here->screen.root().log_weight;
  std::vector<std::pair<double, const Hypothesis*>> order;
  for (const auto& [hypothesis, weighed] : around.weighed) {
    if (!seen.contains(hypothesis) && weighed.log_weight > present + worth_it) {
      order.emplace_back(-weighed.log_weight, &hypothesis);
    }
  }
  std::stable_sort(order.begin(), order.end(),
                   [](const auto& a, const auto& b) { return a.first < b.first; });
  order.resize(std::min<std::size_t>(order.size(), tries));
  for (const auto& [weight, hypothesis] : order) {
    const Weighed& weighed = around.weighed.at(*hypothesis);
    const Expanded& source = around.expanded[weighed.source];
    const Belief there =
        weighed.move < 0 ? source.belief : source.after(static_cast<std::size_t>(weighed.move));
    seen.insert(*hypothesis);
    auto candidate = std::make_shared<const Frame>(
        model, optimise_linear(model, near, *hypothesis, here->screen.start(there)));
    if (candidate->screen.root().log_weight > present + worth_it) {
      return candidate;
    }
  }
  return nullptr;
}

// Moves to a better neighbour as long as there is one, on one linearisation.
Optimum climb_linear(const Model& model, const Linearisation& near, Optimum start) {
  std::set<Hypothesis> seen{start.hypothesis};
  auto here = std::make_shared<const Frame>(model, std::move(start));
  for (int k = 0; k < most_moves; ++k) {
    // One member in or out is cheap to see; one for another only where that leads nowhere.
    Place next = better_neighbour(model, near, here, false, seen);
    if (next == nullptr) {
      next = better_neighbour(model, near, here, true, seen);
    }
    if (next == nullptr) {
      break;
    }
    here = std::move(next);
  }
  return here->optimum;
}

}  // namespace

std::optional<Linearisation> linearise_at_priors(Forward& forward, const Hypothesis& hypothesis) {
  Eigen::VectorXd x = prior_means(forward.model(), hypothesis);
  for (int k = 0; k < 6; ++k) {
    if (auto out = forward.linearise(values_at(forward.model(), x))) {
      return out;
    }
    for (Eigen::Index p = 0; p < x.size(); ++p) {
      x[p] -= forward.model().parameters[static_cast<std::size_t>(p)].kind == Kind::load ? 0.5 : 0;
    }
  }
  return std::nullopt;
}

namespace {

std::optional<Optimum> climb_from(Forward& forward, const Hypothesis& start, bool faults) {
  const Model& model = forward.model();
  auto near = linearise_at_priors(forward, start);
  if (!near) {
    return std::nullopt;
  }
  Optimum here = optimise_linear(model, *near, start, prior_means(model, start));
  for (int k = 0; k < most_rounds; ++k) {
    const Hypothesis before = here.hypothesis;
    if (faults) {
      here = climb_linear(model, *near, std::move(here));
    }
    // The same on a linearisation about itself: that is where the climb ends.
    if (k > 0 && here.hypothesis == before) {
      break;
    }
    auto real = optimise(forward, std::move(here));
    if (!real) {
      return std::nullopt;
    }
    here = std::move(*real);
    auto again = forward.linearise(values_at(model, here.x));
    if (!again) {
      return std::nullopt;
    }
    near = std::move(again);
    here = optimise_linear(model, *near, here.hypothesis, here.x);
  }
  return here;
}

// Chi-square about twelve deviations over its mean, or not a number.
bool hopeless(const Optimum& optimum) {
  return !(optimum.fit.chi_square < optimum.counted + 12 * std::sqrt(2.0 * optimum.counted));
}

double log_weight(const Model& model, const Optimum& optimum) {
  const double out = Screen(model, optimum).root().log_weight;
  return std::isfinite(out) ? out : -std::numeric_limits<double>::infinity();
}

}  // namespace

// A missing cell in one of several banks sends currents round that the linearisation of a sound system does
// not know: where the climb from there fits nothing, it starts anew from each such fault.
std::optional<Optimum> climb(Forward& forward, bool faults) {
  const Model& model = forward.model();
  auto best = climb_from(forward, {}, faults);
  if (!faults || (best && !hopeless(*best))) {
    return best;
  }
  for (int p = 0; p < static_cast<int>(model.parameters.size()); ++p) {
    const Parameter& unknown = model.parameters[static_cast<std::size_t>(p)];
    if (unknown.kind == Kind::emf && unknown.fault) {
      auto other = climb_from(forward, {{p}, {}}, faults);
      if (other && (!best || log_weight(model, *other) > log_weight(model, *best))) {
        best = std::move(other);
      }
    }
  }
  return best;
}

}  // namespace ohmtrail::diagnose::inference
