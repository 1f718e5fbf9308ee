#include "diagnose/infer/hypothesis.hpp"

#include <algorithm>

namespace ohmtrail::diagnose::inference {
namespace {

std::vector<int> toggled(std::vector<int> members, int which) {
  const auto place = std::lower_bound(members.begin(), members.end(), which);
  if (place != members.end() && *place == which) {
    members.erase(place);
  } else {
    members.insert(place, which);
  }
  return members;
}

}  // namespace

bool Hypothesis::is_faulty(int parameter) const {
  return std::binary_search(faulty.begin(), faulty.end(), parameter);
}

bool Hypothesis::is_wrong(int observation) const {
  return std::binary_search(wrong.begin(), wrong.end(), observation);
}

Hypothesis Hypothesis::with_toggled_parameter(int parameter) const {
  return {toggled(faulty, parameter), wrong};
}

Hypothesis Hypothesis::with_toggled_observation(int observation) const {
  return {faulty, toggled(wrong, observation)};
}

const Normal& prior_of(const Model& model, const Hypothesis& hypothesis, int parameter) {
  const Parameter& p = model.parameters[static_cast<std::size_t>(parameter)];
  return hypothesis.is_faulty(parameter) ? p.fault->prior : p.sound;
}

double log_prior_odds(const Model& model, const Hypothesis& hypothesis) {
  double sum = 0;
  for (const int p : hypothesis.faulty) {
    sum += model.parameters[static_cast<std::size_t>(p)].fault->log_odds;
  }
  for (const int o : hypothesis.wrong) {
    sum += model.observations[static_cast<std::size_t>(o)].wrong_log_odds;
  }
  return sum;
}

}  // namespace ohmtrail::diagnose::inference
