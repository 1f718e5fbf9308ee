#pragma once
#include <Eigen/SparseCholesky>
#include <Eigen/SparseCore>
#include <utility>
#include <vector>

#include "solve/elimination_order.hpp"

namespace ohmtrail::solve {

/// Per branch, the unknowns at its ends; −1: none.
using BranchEnds = std::vector<std::pair<int, int>>;

/// L D L' of the symmetric matrix Σ g (e_a − e_b)(e_a − e_b)ᵀ over branches between unknowns a and b, which
/// are numbered in the order of elimination. Leaves are eliminated here, where one needs but its one
/// neighbour; the library is left with the rings. The pattern is made once, values as often as wanted.
class Factor {
 public:
  /// `has_entry` per branch: whether it may ever have a conductance.
  void analyze(const Elimination& order, const BranchEnds& ends, const std::vector<char>& has_entry);

  /// `conductance` per branch, S; 0 where there is no entry. False where a pivot vanished.
  bool compute(const BranchEnds& ends, const std::vector<double>& conductance);

  /// Per unknown; all are positive where the matrix is positive definite.
  [[nodiscard]] double pivot(int unknown) const { return pivot_[static_cast<std::size_t>(unknown)]; }

  /// One forward and one back substitution; `right` is per unknown.
  [[nodiscard]] Eigen::VectorXd solve(Eigen::VectorXd right) const;

  /// Per branch with an entry, (e_a − e_b)ᵀ J⁻¹ (e_a − e_b), else 0. Only the entries of J⁻¹ at the places of
  /// L are formed (Takahashi's recurrence).
  [[nodiscard]] std::vector<double> resistance_seen(const BranchEnds& ends,
                                                    const std::vector<char>& has_entry) const;

 private:
  struct CoreBranch {
    int branch;
    int place;  ///< of its coupling among the values of `core_`
  };
  void make_core(int unknowns, const BranchEnds& ends, const std::vector<char>& has_entry);
  void fill(const BranchEnds& ends, const std::vector<double>& conductance);
  bool eliminate_leaves();
  bool factor_core();

  std::size_t leaves_ = 0;
  std::vector<int> inner_;     ///< per leaf, its one later neighbour; −1: none
  std::vector<double> link_;   ///< per leaf, the conductance to it, S
  std::vector<double> ratio_;  ///< per leaf, −L(inner, leaf)
  std::vector<double> pivot_;  ///< D, per unknown
  std::vector<CoreBranch> core_branches_;
  Eigen::SparseMatrix<double> core_;  ///< upper triangle, the diagonal last in each column
  Eigen::SimplicialLDLT<Eigen::SparseMatrix<double>, Eigen::Upper, Eigen::NaturalOrdering<int>> ldlt_;
};

}  // namespace ohmtrail::solve
