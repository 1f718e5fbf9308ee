#pragma once
#include <Eigen/SparseCholesky>
#include <Eigen/SparseCore>
#include <vector>

#include "ohmtrail/solve/circuit.hpp"
#include "solve/merge_points.hpp"

/// Currents of branches that fix their voltage, from Kirchhoff's current law at their points. Where such
/// branches make loops the split is not determined by the circuit: it is taken as if all of them had one
/// like, very small resistance (the split of least Σi²).
namespace ohmtrail::solve {

class MergedCurrents {
 public:
  MergedCurrents(const Circuit& circuit, const Merged& merged);

  [[nodiscard]] bool any() const { return !branches_.empty(); }
  [[nodiscard]] const std::vector<int>& branches() const { return branches_; }

  /// `into` is per point: A that the other branches bring. Sets `current` of the fixed branches.
  void find(const std::vector<double>& into, std::vector<double>& current) const;

  /// Potentials y with current(branch) = Σ y(point) · into(point); per point, 0 away from the cluster.
  [[nodiscard]] std::vector<double> weights(int branch) const;

 private:
  [[nodiscard]] Eigen::VectorXd potentials(const Eigen::VectorXd& right) const;

  const Circuit& circuit_;
  std::vector<int> branches_;
  std::vector<int> row_;  ///< per point; −1: not merged, or the base of its cluster
  Eigen::SparseMatrix<double> laplacian_;
  Eigen::SimplicialLDLT<Eigen::SparseMatrix<double>, Eigen::Lower> ldlt_;
};

}  // namespace ohmtrail::solve
