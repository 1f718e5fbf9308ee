#pragma once
#include <Eigen/Core>
#include <vector>

#include "ohmtrail/solve/circuit.hpp"
#include "solve/factor.hpp"
#include "solve/merge_points.hpp"

/// The derivative of the currents that leave each unknown cluster: a symmetric sparse matrix, Σ g (e_a −
/// e_b)(e_a − e_b)ᵀ over the branches between clusters a and b. Unknowns are numbered in the order of
/// elimination, so that the factorisation permutes nothing. Pattern and ordering are made once, values as
/// often as wanted.
namespace ohmtrail::solve {

class Jacobian {
 public:
  Jacobian(const Circuit& circuit, const Merged& merged);

  [[nodiscard]] int unknowns() const { return unknowns_; }
  /// Unknown of a point's cluster; −1: known, or no voltage at all.
  [[nodiscard]] int unknown(int point) const { return of_point_[static_cast<std::size_t>(point)]; }
  [[nodiscard]] int unknown_of_cluster(int cluster) const {
    return of_cluster_[static_cast<std::size_t>(cluster)];
  }

  /// `conductance` per branch, S. False where a pivot vanished.
  bool factor(const std::vector<double>& conductance);
  [[nodiscard]] bool factored() const { return factored_; }
  void forget() { factored_ = false; }
  /// Largest relative change of a conductance since the last factorisation.
  [[nodiscard]] double drift(const std::vector<double>& conductance) const;

  /// Marks the islands (by `islands` per unknown) in which the factored matrix is not positive definite.
  void mark_indefinite(std::vector<char>& marks) const;

  /// One forward and one back substitution; `right` is per unknown.
  [[nodiscard]] Eigen::VectorXd solve(Eigen::VectorXd right) const { return factor_.solve(std::move(right)); }

  /// Unknowns at the ends of a branch; −1 as above.
  [[nodiscard]] const std::pair<int, int>& ends(std::size_t branch) const { return ends_[branch]; }
  [[nodiscard]] int island(int unknown) const { return island_[static_cast<std::size_t>(unknown)]; }

  /// Entries of e_a − e_b for the points of a branch; an end without unknown has none.
  void add_between(Eigen::VectorXd& vector, int from, int to, double value) const {
    if (unknown(from) >= 0) vector[unknown(from)] += value;
    if (unknown(to) >= 0) vector[unknown(to)] -= value;
  }
  [[nodiscard]] double between(const Eigen::VectorXd& vector, int from, int to) const {
    return (unknown(from) >= 0 ? vector[unknown(from)] : 0) - (unknown(to) >= 0 ? vector[unknown(to)] : 0);
  }

  /// Per branch, (e_a − e_b)ᵀ J⁻¹ (e_a − e_b) in Ω: the resistance that the circuit shows at its points.
  [[nodiscard]] std::vector<double> resistance_seen() const {
    return factor_.resistance_seen(ends_, has_entry_);
  }

 private:
  void find_ends(const Circuit& circuit, const Merged& merged);
  [[nodiscard]] BranchEnds entries() const;
  void renumber(const std::vector<int>& place, const Merged& merged);

  int unknowns_ = 0;
  std::vector<int> of_point_, of_cluster_, island_;  ///< island_ is per unknown
  BranchEnds ends_;
  std::vector<char> has_entry_;
  Factor factor_;
  std::vector<double> factored_conductance_;
  bool factored_ = false;
};

}  // namespace ohmtrail::solve
