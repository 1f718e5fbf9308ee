#pragma once
#include <optional>
#include <vector>

#include "plan/search.hpp"

/// Good designs of radial cases, without any claim: what they cost is a mark to beat.
namespace ohmtrail::plan {

class LocalSearch {
 public:
  LocalSearch(const DesignSpace& space, const std::vector<RadialCase>& cases, const Judge& judge)
      : space_(space), cases_(cases), judge_(judge) {}

  /// Whether a design keeps every limit of every case: the judge is asked where the bounds do not tell.
  [[nodiscard]] bool keeps_limits(const Design& design) const;

  /// Moves run after run to a cheaper candidate in the box that still keeps every limit, until none moves.
  [[nodiscard]] Design thinned(Design design, const Box& box) const;

  /// The cheapest change of one run within the box that makes the design keep every limit for less than
  /// `below`.
  [[nodiscard]] std::optional<Design> mended(const Design& design, const Box& box, double below) const;

  /// Thickens every run by a step until every limit is kept, then thins again.
  [[nodiscard]] std::optional<Design> repaired(Design design, const Box& box) const;

  [[nodiscard]] static Design thickest(const Box& box);

 private:
  [[nodiscard]] std::vector<int> cheaper(std::size_t run, int than, const Box& box) const;

  const DesignSpace& space_;
  const std::vector<RadialCase>& cases_;
  const Judge& judge_;
};

}  // namespace ohmtrail::plan
