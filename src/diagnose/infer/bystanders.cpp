#include "diagnose/infer/bystanders.hpp"

#include <cmath>

namespace ohmtrail::diagnose::inference {

bool contains(const Hypothesis& set, const Screen& screen, int coordinate) {
  return screen.is_error(coordinate) ? set.is_wrong(coordinate) : set.is_faulty(screen.parameter(coordinate));
}

double log_bayes_factor(const Model& model, const Screen& screen, const Hypothesis& from, const Move& move) {
  const auto at = [](int index) { return static_cast<std::size_t>(index); };
  const double prior_odds = screen.is_error(move.coordinate)
                                ? model.observations[at(move.coordinate)].wrong_log_odds
                                : model.parameters[at(screen.parameter(move.coordinate))].fault->log_odds;
  return contains(from, screen, move.coordinate) ? move.log_ratio + prior_odds : move.log_ratio - prior_odds;
}

double log_bystander_odds(const Model& model, const Screen& screen, const Hypothesis& from,
                          const Move& move) {
  const double beyond = log_bayes_factor(model, screen, from, move) - std::log(explains);
  return beyond > 0 ? move.log_ratio - beyond : move.log_ratio;
}

double log_bystanders(const Model& model, const Screen& screen, const Hypothesis& from,
                      const std::vector<Move>& moves, const Hypothesis& core) {
  double sum = 0;
  for (const Move& move : moves) {
    if (!contains(core, screen, move.coordinate) && !contains(from, screen, move.coordinate)) {
      sum += std::log1p(std::exp(log_bystander_odds(model, screen, from, move)));
    }
  }
  return sum;
}

}  // namespace ohmtrail::diagnose::inference
