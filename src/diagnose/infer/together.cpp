#include "diagnose/infer/together.hpp"

#include <algorithm>
#include <cmath>

#include "units/index.hpp"

namespace ohmtrail::diagnose::inference {

double to_a_millionth(double probability) {
  return std::round(std::clamp(probability, 0.0, 1.0) * 1e6) / 1e6;
}

Together::Together(const Posterior& posterior)
    : posterior_(posterior), enumerated_(posterior.model().parameters.size(), 0) {
  for (const Posterior::Alternative& one : posterior.alternatives) {
    for (const int p : one.hypothesis.faulty) {
      enumerated_[at(p)] = 1;
    }
  }
}

bool Together::enumerated(int parameter) const {
  return enumerated_[at(parameter)] != 0;
}

// Under each component a normal in the resistances, cut at nothing.
Spread Together::sum(const std::vector<int>& members) const {
  Mixture sum;
  for (const Posterior::Component& component : posterior_.components) {
    const Eigen::VectorXd value = values_at(posterior_.model(), component.optimum.x);
    Eigen::VectorXd direction = Eigen::VectorXd::Zero(value.size());
    for (const int p : members) {
      direction[p] = posterior_.survey.display_factor[at(p)];
    }
    const double total = direction.dot(value);
    const double sd = deviation_of(posterior_.model(), component.optimum, direction) / total;
    sum.add(component.share, std::log(total), sd * sd);
  }
  return {std::exp(sum.quantile(0.5)), std::exp(sum.quantile(0.05)), std::exp(sum.quantile(0.95))};
}

double Together::any_faulty(const std::vector<int>& members) const {
  double explained = 0, bystanders_sound = 1;
  for (const Posterior::Alternative& one : posterior_.alternatives) {
    const bool has =
        std::any_of(members.begin(), members.end(), [&](int p) { return one.hypothesis.is_faulty(p); });
    explained += has ? one.share : 0;
  }
  // Bystanders are in no hypothesis: they count as independent.
  for (const int p : members) {
    bystanders_sound *= enumerated(p) ? 1 : 1 - posterior_.fault[at(p)];
  }
  const double sure = std::min(1.0, explained);
  return to_a_millionth(sure + (1 - sure) * (1 - bystanders_sound));
}

}  // namespace ohmtrail::diagnose::inference
