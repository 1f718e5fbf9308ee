#pragma once
#include <vector>

#include "diagnose/infer/hypothesis.hpp"
#include "diagnose/infer/optimum.hpp"

/// Resistances that every reading sees only as one sum: a run whose lugs and wire were read as a whole.
///
/// Hypotheses that differ only in which members of such a set are faulty need not be searched one by one: the
/// search asks whether the set has a fault, and the odds are divided among its members afterwards.
namespace ohmtrail::diagnose::inference {

struct ParallelSet {
  std::vector<int> member;     ///< parameters, ascending; at least two
  std::vector<double> length;  ///< what an ohm of each does, in ohms of the first; positive
};

struct ParallelSets {
  std::vector<ParallelSet> sets;
  std::vector<int> of;  ///< per parameter: its set, −1: none. Empty: there are none at all.

  [[nodiscard]] int set_of(int parameter) const {
    return of.empty() ? -1 : of[static_cast<std::size_t>(parameter)];
  }
  /// The hypothesis with the first member of each set standing for whichever of them are faulty.
  [[nodiscard]] Hypothesis key(const Hypothesis& hypothesis) const;
  /// Members of a set that are faulty under a hypothesis, ascending.
  [[nodiscard]] std::vector<int> faulty_in(int set, const Hypothesis& hypothesis) const;
  /// The sets with a faulty member, ascending.
  [[nodiscard]] std::vector<int> touched(const Hypothesis& hypothesis) const;
};

/// The sets among the unknowns that can be faulty, by the linearisation at an optimum.
[[nodiscard]] ParallelSets parallel_sets(const Model& model, const Optimum& optimum);

}  // namespace ohmtrail::diagnose::inference
