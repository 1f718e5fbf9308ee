#include "diagnose/infer/climb.hpp"

#include <set>
#include <utility>

namespace ohmtrail::diagnose::inference {
namespace {

constexpr int most_moves = 30;
constexpr int most_rounds = 5;

// Moves to the best neighbour as long as there is a better one, on one linearisation.
Optimum climb_linear(const Model& model, const Linearisation& near, Optimum here) {
  std::set<Hypothesis> seen{here.hypothesis};
  for (int k = 0; k < most_moves; ++k) {
    const Screen screen(model, here);
    const Belief root = screen.root();
    const Exploration around = explore(model, screen, {1, 1.0});
    const Weighed* best = nullptr;
    const Hypothesis* to = nullptr;
    for (const auto& [hypothesis, weighed] : around.weighed) {
      if (!seen.contains(hypothesis) && (best == nullptr || weighed.log_weight > best->log_weight)) {
        best = &weighed;
        to = &hypothesis;
      }
    }
    const double present = around.weighed.at(here.hypothesis).log_weight;
    if (best == nullptr || best->log_weight <= present + 0.05 || best->move < 0) {
      break;
    }
    const Expanded& source = around.expanded[best->source];
    const Belief there = screen.after(source.belief, source.moves[static_cast<std::size_t>(best->move)]);
    seen.insert(*to);
    here = optimise_linear(model, near, *to, screen.start(there));
  }
  return here;
}

}  // namespace

std::optional<Linearisation> linearise_at_priors(Forward& forward) {
  Eigen::VectorXd x = prior_means(forward.model(), {});
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

std::optional<Optimum> climb(Forward& forward, bool faults) {
  const Model& model = forward.model();
  auto near = linearise_at_priors(forward);
  if (!near) {
    return std::nullopt;
  }
  Optimum here = optimise_linear(model, *near, {}, prior_means(model, {}));
  for (int k = 0; k < most_rounds; ++k) {
    const Hypothesis before = here.hypothesis;
    if (faults) {
      here = climb_linear(model, *near, std::move(here));
    }
    auto real = optimise(forward, *near, here.hypothesis, here.x);
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
    if (k > 0 && here.hypothesis == before) {
      break;
    }
  }
  return here;
}

}  // namespace ohmtrail::diagnose::inference
