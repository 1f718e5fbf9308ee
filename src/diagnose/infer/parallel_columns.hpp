#pragma once
#include <Eigen/Core>
#include <vector>

namespace ohmtrail::diagnose::inference {

/// A matrix whose parallel columns were merged: column j of the original is `share[j]` times column
/// `group[j]` of `merged`, and the shares of a group are a unit vector, so that A Aᵀ stays what it was.
/// Elements in series that were only read as a whole are such columns; there are many of them where few
/// points were read.
struct ParallelColumns {
  Eigen::MatrixXd merged;
  std::vector<int> group;
  Eigen::VectorXd share;
};

[[nodiscard]] ParallelColumns merge_parallel(const Eigen::MatrixXd& matrix);

}  // namespace ohmtrail::diagnose::inference
