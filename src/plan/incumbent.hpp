#pragma once
#include <optional>

#include "plan/search.hpp"

namespace ohmtrail::plan {

/// What every search carries along: the cheapest design that was accepted, and the bound below which none
/// lies. Costs are in the unit of the objective.
class Incumbent {
 public:
  Incumbent(const DesignSpace& space, const Judge& judge) : space_(space), judge_(judge) {}

  [[nodiscard]] const Found& found() const { return found_; }
  [[nodiscard]] const std::optional<Design>& design() const { return found_.design; }

  /// A design must cost less than this to be of use; infinite where none is known.
  [[nodiscard]] double wanted() const;
  /// The same for the MIP library, which takes no limit for an infinite one.
  [[nodiscard]] std::optional<double> cutoff() const;
  /// Whether the bound has reached the design.
  [[nodiscard]] bool closed() const { return found_.design && found_.bound >= wanted(); }

  /// Takes an accepted design where it is cheaper.
  void keep(const Design& design);
  /// Asks the judge, where the design is cheaper.
  void offer(const Design& design);
  void raise_bound(double bound);
  void count_round() { ++found_.rounds; }

  void report() const;
  /// The best accepted design is the cheapest, or none exists.
  [[nodiscard]] Found proved();

 private:
  [[nodiscard]] std::optional<double> best_cost() const;

  const DesignSpace& space_;
  const Judge& judge_;
  Found found_;
};

}  // namespace ohmtrail::plan
