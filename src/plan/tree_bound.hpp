#pragma once
#include <vector>

#include "plan/front.hpp"
#include "plan/node_current.hpp"

/// The least cost of a box of designs in one case, by dynamic programming over the load tree.
///
/// From the loads to the supply each node gets a front: what the cable beyond costs, against the drop that
/// may already be lost before it. A load tolerates its limit; branches at a point add their costs and the
/// least tolerance counts; an arm with candidate c turns a tolerance t into t − r(c, I) I, with I the least
/// current at drop t. What is lost within the bank before it feeds the tree is known (nothing where there is
/// one string); the cheapest label that tolerates it bounds the cost. Back from the supply to the loads, what
/// all the rest costs at least at a given drop is known in the same way; both together bound the cost of each
/// candidate of each arm.
namespace ohmtrail::plan {

/// [arm][candidate]; of a fixed arm one entry.
using ArmCosts = std::vector<std::vector<double>>;

struct TreeProblem {
  const RadialCase& in_case;
  const LoadTree& tree;
  const Box& box;
  const Bounds& known;
  const ArmCosts& costs;
  double ceiling = 0;      ///< designs above this cost are not wanted
  std::size_t labels = 0;  ///< kept in a front; more make a tighter bound
  double share = 1;        ///< of each drop limit that may be used; 1 for a bound
};

class TreeBound {
 public:
  explicit TreeBound(const TreeProblem& problem);

  /// No design in the box costs less; infinite: none costs less than the ceiling.
  [[nodiscard]] double bound() const;
  /// Candidate per arm of the design that reaches the bound, −1 for fixed arms. The bound must be finite.
  [[nodiscard]] std::vector<int> choices() const;
  /// The same bound for designs that take a certain candidate.
  [[nodiscard]] ArmCosts marginals() const;

 private:
  [[nodiscard]] Hull hull(int arm, std::size_t candidate) const;
  void fill(std::size_t node);
  [[nodiscard]] Front bottom(std::size_t node) const;
  [[nodiscard]] Front pass(std::size_t node, int arm, const Front& beyond) const;
  [[nodiscard]] bool allowed(const Arm& arm, std::size_t candidate) const;
  void spread(std::size_t node, const Front& above, std::vector<Front>& outside, ArmCosts& least) const;
  [[nodiscard]] Front descend(std::size_t node, int arm, const Front& beyond, const Front& above) const;
  void note_marginals(std::size_t node, int arm, const Front& beyond, const Front& above,
                      std::vector<double>& least) const;
  void choose(std::size_t node, double drop, std::vector<int>& choices) const;

  TreeProblem problem_;
  std::vector<NodeCurrent> currents_;       ///< per node
  std::vector<std::vector<Front>> fronts_;  ///< per node: before its first arm, after each
  std::vector<double> cheapest_;            ///< per arm
  std::vector<double> passed_;              ///< per node: Σ of the cheapest of its arms and those beyond
  double total_ = 0;                        ///< Σ of the cheapest
  double ceiling_ = 0;
};

}  // namespace ohmtrail::plan
