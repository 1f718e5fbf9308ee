#include "plan/incumbent.hpp"

#include <algorithm>
#include <limits>

namespace ohmtrail::plan {

namespace {

/// Two costs closer than this share are one.
constexpr double kSameCost = 1e-9;

}  // namespace

std::optional<double> Incumbent::best_cost() const {
  return found_.design ? std::optional(cost(space_, *found_.design)) : std::nullopt;
}

std::optional<double> Incumbent::cutoff() const {
  const auto best = best_cost();
  return best ? std::optional(*best * (1 - kSameCost)) : std::nullopt;
}

double Incumbent::wanted() const {
  return cutoff().value_or(std::numeric_limits<double>::infinity());
}

void Incumbent::keep(const Design& design) {
  const auto best = best_cost();
  if (!best || cost(space_, design) < *best) found_.design = design;
}

void Incumbent::offer(const Design& design) {
  if (cost(space_, design) < wanted() && judge_.accepts(design)) found_.design = design;
}

void Incumbent::raise_bound(double bound) {
  found_.bound = std::max(found_.bound, bound);
}

void Incumbent::report() const {
  if (judge_.progress) judge_.progress({found_.bound, best_cost(), found_.rounds});
}

Found Incumbent::proved() {
  found_.proved = true;
  if (const auto best = best_cost()) found_.bound = *best;
  return found_;
}

}  // namespace ohmtrail::plan
