#include "diagnose/infer/set_splits.hpp"

#include <algorithm>

namespace ohmtrail::diagnose::inference {

const SetPrior& SetSplits::prior(int set) {
  return priors_.try_emplace(set, *model_, sets_->sets[static_cast<std::size_t>(set)]).first->second;
}

const SetSplit& SetSplits::of(int set, const Cavity& sum) {
  std::list<SetSplit>& known = known_[set];
  for (const SetSplit& one : known) {
    if (nearly_equal(one.sum, sum)) {
      return one;
    }
  }
  known.push_back(prior(set).split(sum));
  return known.back();
}

double SetSplits::log_divided(int set, const Cavity& sum, const std::vector<int>& faulty) {
  const SetSplit& split = of(set, sum);
  const auto own = std::find_if(split.states.begin(), split.states.end(),
                                [&](const SetState& state) { return state.faulty == faulty; });
  const double weight =
      own != split.states.end() ? own->log_weight : prior(set).log_weight(split.sum, faulty);
  return std::max(0.0, split.log_any - weight);
}

const std::vector<MemberView>& SetSplits::views(int set, const SetSplit& split, std::size_t state) {
  std::vector<MemberView>& out = views_[{&split, state}];
  if (out.empty()) {
    out = prior(set).members(split.sum, split.states[state]);
  }
  return out;
}

}  // namespace ohmtrail::diagnose::inference
