#pragma once
#include <cmath>
#include <map>
#include <utility>
#include <vector>

#include "diagnose/infer/parallel_sets.hpp"
#include "diagnose/infer/tilted.hpp"

/// How the odds of a fault divide among the members of a set that the readings see only as a sum.
///
/// With s = Σ length · value, everything else says exp(−½ precision (s − at)²) of the sum. Under each choice
/// of faulty members the integral of that over their priors is the choice's weight: the faulty ones exactly
/// (one by its integral, two by a double one), the sound ones as a normal with the mean and variance of their
/// sum (Fenton's log-normal where all are sound, or three and more faulty).
namespace ohmtrail::diagnose::inference {

/// Which members are faulty, and ln of how much that weighs.
struct SetState {
  std::vector<int> faulty;  ///< parameters, ascending
  double log_weight = 0;
};

/// What is said of one member of the set under one of its states.
struct MemberView {
  double mean_x = 0, variance_x = 0;  ///< of x
};

struct SetSplit {
  Cavity sum;                    ///< what all else says of the sum
  std::vector<SetState> states;  ///< the first: none is faulty
  double log_any = 0;            ///< ln of what all states with a fault weigh together
  /// What a state with a fault weighs of all such.
  [[nodiscard]] double share(std::size_t state) const { return std::exp(states[state].log_weight - log_any); }
};

class SetPrior {
 public:
  /// Both must outlive it.
  SetPrior(const Model& model, const ParallelSet& set);

  /// All single faults, and the pairs among the likeliest of them; of members that are alike all or none.
  [[nodiscard]] SetSplit split(const Cavity& sum) const;
  /// ln of what one choice of faulty members weighs.
  [[nodiscard]] double log_weight(const Cavity& sum, const std::vector<int>& faulty) const;
  /// Of every member, in the set's order.
  [[nodiscard]] std::vector<MemberView> members(const Cavity& sum, const SetState& state) const;

 private:
  struct Moments {
    double mean = 0, variance = 0;  ///< of length · value
  };
  [[nodiscard]] const Parameter& unknown(std::size_t k) const {
    return model_.parameters[static_cast<std::size_t>(set_.member[k])];
  }
  /// Members that differ in nothing but their odds are of one kind, named by the first of them.
  [[nodiscard]] std::size_t kind(std::size_t k) const;
  [[nodiscard]] std::vector<SetState> pairs(const Cavity& sum, const std::vector<SetState>& single) const;
  [[nodiscard]] std::vector<std::size_t> places(const std::vector<int>& faulty) const;
  [[nodiscard]] const Moments& moments(std::size_t k, bool faulty) const {
    return faulty ? faulty_[k] : sound_[k];
  }
  [[nodiscard]] Moments sum_of(const std::vector<std::size_t>& faulty, std::size_t except) const;
  [[nodiscard]] Moments culprit(const Cavity& sum, std::size_t k) const;
  [[nodiscard]] Cavity cavity_of(std::size_t k, const Cavity& sum, const Moments& others) const;
  [[nodiscard]] double log_odds(const std::vector<std::size_t>& faulty) const;
  [[nodiscard]] double log_one(const Cavity& sum, std::size_t k) const;
  [[nodiscard]] double log_two(const Cavity& sum, std::size_t a, std::size_t b) const;
  [[nodiscard]] double log_all(const Cavity& sum, const std::vector<std::size_t>& faulty) const;

  const Model& model_;
  const ParallelSet& set_;
  std::vector<Moments> sound_, faulty_;  ///< by member
};

}  // namespace ohmtrail::diagnose::inference
