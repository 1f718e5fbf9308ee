#pragma once
#include <Eigen/Core>
#include <vector>

namespace ohmtrail::diagnose::inference {

/// The directions that a matrix's columns have: column j is `length[j]` times column `group[j]` of `unit`.
/// Elements in series that were only read as a whole share one; there are many of them where few points were
/// read.
struct ColumnDirections {
  Eigen::MatrixXd unit;    ///< m × directions
  std::vector<int> group;  ///< n
  Eigen::VectorXd length;  ///< n, either sign
};

/// A matrix whose parallel columns were merged: column j of the original is `share[j]` times column
/// `group[j]` of `merged`, and the shares of a group are a unit vector, so that A Aᵀ stays what it was.
struct ParallelColumns {
  Eigen::MatrixXd merged;
  std::vector<int> group;
  Eigen::VectorXd share;

  /// A z from z, n × k.
  template <class Rows>
  [[nodiscard]] Rows times(const Rows& z) const {
    Rows gathered = Rows::Zero(merged.cols(), z.cols());
    for (Eigen::Index j = 0; j < share.size(); ++j) {
      gathered.row(group[static_cast<std::size_t>(j)]) += share[j] * z.row(j);
    }
    return merged * gathered;
  }

  /// From rows that stand for merged columns to one row for each original column.
  template <class Rows>
  [[nodiscard]] auto spread(const Rows& rows) const {
    Eigen::Matrix<double, Eigen::Dynamic, Rows::ColsAtCompileTime> out(share.size(), rows.cols());
    for (Eigen::Index j = 0; j < share.size(); ++j) {
      out.row(j) = share[j] * rows.row(group[static_cast<std::size_t>(j)]);
    }
    return out;
  }
};

[[nodiscard]] ColumnDirections directions_of(const Eigen::MatrixXd& matrix);

/// Merges the columns of the matrix times diag(scale), whose directions are those of the matrix.
[[nodiscard]] ParallelColumns merge_scaled(const ColumnDirections& directions, const Eigen::VectorXd& scale);

[[nodiscard]] ParallelColumns merge_parallel(const Eigen::MatrixXd& matrix);

}  // namespace ohmtrail::diagnose::inference
