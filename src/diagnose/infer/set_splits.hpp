#pragma once
#include <list>
#include <map>
#include <utility>
#include <vector>

#include "diagnose/infer/set_prior.hpp"

namespace ohmtrail::diagnose::inference {

/// The splits of all sets, each worked out once for all hypotheses that leave what is said of its sum as it
/// was.
class SetSplits {
 public:
  SetSplits() = default;
  /// Both must outlive it.
  SetSplits(const Model& model, const ParallelSets& sets) : model_(&model), sets_(&sets) {}

  /// Stays valid as long as this does.
  [[nodiscard]] const SetSplit& of(int set, const Cavity& sum);
  /// ln of what all divisions of the set's fault weigh over the one with these faulty members.
  [[nodiscard]] double log_divided(int set, const Cavity& sum, const std::vector<int>& faulty);
  /// Of every member under one state, in the set's order.
  [[nodiscard]] const std::vector<MemberView>& views(int set, const SetSplit& split, std::size_t state);

 private:
  const SetPrior& prior(int set);

  const Model* model_ = nullptr;
  const ParallelSets* sets_ = nullptr;
  std::map<int, SetPrior> priors_;
  std::map<int, std::list<SetSplit>> known_;
  std::map<std::pair<const SetSplit*, std::size_t>, std::vector<MemberView>> views_;
};

}  // namespace ohmtrail::diagnose::inference
