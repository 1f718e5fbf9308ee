#pragma once
#include <vector>

#include "plan/box_bounds.hpp"

/// How the search takes a box of designs apart.
namespace ohmtrail::plan {

struct BoxNode {
  double bound = 0;  ///< no design in the box costs less
  Box box;
  friend bool operator<(const BoxNode& a, const BoxNode& b) { return a.bound > b.bound; }  // least on top
};

/// What is left of a box without a refused one inside it: one box a run that must then choose otherwise. The
/// dearest first, so that those after it choose inside for all the runs before; what costs `wanted` or more
/// is left out. `least`: [run][candidate], bound of the designs that take it.
[[nodiscard]] std::vector<BoxNode> outside_of(BoxNode node, const Box& refused,
                                              const std::vector<std::vector<double>>& least, double wanted);

/// The box in two at a run: up to a candidate, and above it. Empty where the run has no choice left.
[[nodiscard]] std::vector<BoxNode> split_at(const BoxNode& node, int run, int candidate);

/// Every run has one candidate left.
[[nodiscard]] bool is_point(const Box& box);

/// All runs, those off the broken load's path first: they mostly do not matter to it.
[[nodiscard]] std::vector<int> off_path_first(const RadialCase& in_case, const Bounds& broken,
                                              std::size_t runs);

}  // namespace ohmtrail::plan
