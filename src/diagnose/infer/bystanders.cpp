#include "diagnose/infer/bystanders.hpp"

#include <cmath>

namespace ohmtrail::diagnose::inference {

double log_bayes_factor(const Model& model, const Screen& screen, const Hypothesis& from, const Move& move) {
  if (screen.is_error(move.coordinate)) {
    const double odds = model.observations[static_cast<std::size_t>(move.coordinate)].wrong_log_odds;
    return from.is_wrong(move.coordinate) ? move.log_ratio + odds : move.log_ratio - odds;
  }
  const int p = screen.parameter(move.coordinate);
  const double odds = model.parameters[static_cast<std::size_t>(p)].fault->log_odds;
  return from.is_faulty(p) ? move.log_ratio + odds : move.log_ratio - odds;
}

bool contains(const Hypothesis& set, const Screen& screen, int coordinate) {
  return screen.is_error(coordinate) ? set.is_wrong(coordinate) : set.is_faulty(screen.parameter(coordinate));
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
