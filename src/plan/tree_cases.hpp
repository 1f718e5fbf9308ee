#pragma once
#include <optional>
#include <string>
#include <vector>

#include "plan/tree_bound.hpp"

/// The bound of several cases together: each is bounded alone, with a part of every run's cost.
///
/// Any split of the costs over the cases makes the sum of their bounds a bound for all. Only cases that
/// turned out to matter take part. First each run's whole cost goes to the case in which it carries most;
/// `improve` then moves costs towards cases that would rather pay more for a candidate than the others
/// (averaging of the marginals of a dual decomposition), for as long as the bound rises.
namespace ohmtrail::plan {

/// What the cases together say of a box.
struct JointBound {
  double bound = 0;                        ///< infinite: no design below the ceiling
  Design design;                           ///< candidate per run, where the cases differ the thickest
  std::vector<std::vector<double>> least;  ///< [run][candidate]: bound of the designs that take it
};

struct TreeQuestion {
  const Box& box;
  const std::vector<Bounds>& known;  ///< of the box, per case
  double ceiling;                    ///< designs above this cost are not wanted; finite
  std::size_t labels = 0;            ///< kept in a front
  double share = 1;                  ///< of the drop limits; 1 for a bound
};

class TreeCases {
 public:
  TreeCases(const DesignSpace& space, const std::vector<RadialCase>& cases, std::vector<LoadTree> trees);

  [[nodiscard]] bool is_active(std::size_t in_case) const { return active_[in_case]; }
  /// Lets a case take part from now on and splits the costs anew.
  void activate(std::size_t in_case, const std::vector<Bounds>& known);
  [[nodiscard]] JointBound bound(const TreeQuestion& question) const;
  /// Moves costs between the cases to raise the bound.
  void improve(const TreeQuestion& question);

 private:
  struct Copy {
    std::size_t in_case;
    int arm;
  };
  struct Bounded {
    std::size_t in_case;
    TreeBound tree;
  };
  void split_costs(const std::vector<Bounds>& known);
  [[nodiscard]] double unowned_cost(const Box& box) const;
  [[nodiscard]] double floor_of(std::size_t in_case, const Box& box) const;
  [[nodiscard]] std::vector<Bounded> bound_each(const TreeQuestion& question, double& total) const;
  [[nodiscard]] std::vector<std::vector<double>> joint_marginals(const std::vector<Bounded>& each,
                                                                 const Box& box, double total) const;
  void average(const TreeQuestion& question, double step);
  [[nodiscard]] Design proposed(const std::vector<Bounded>& each, const JointBound& joint,
                                const Box& box) const;

  const DesignSpace& space_;
  const std::vector<RadialCase>& cases_;
  std::vector<LoadTree> trees_;
  std::vector<bool> active_;
  std::vector<ArmCosts> costs_;            ///< per case
  std::vector<std::vector<Copy>> copies_;  ///< per run: its arms in active cases
};

}  // namespace ohmtrail::plan
