#pragma once
#include "diagnose/infer/posterior.hpp"
#include "ohmtrail/diagnose/infer.hpp"

namespace ohmtrail::diagnose::inference {

/// Sets of unknowns (columns of `jacobian`, one a reading a row) that the readings determine only together:
/// the connected parts of the null space, found by singular values before any prior enters. Columns of zeros
/// (nothing was read of them) belong to none.
[[nodiscard]] std::vector<std::vector<int>> unresolved_sets(const Eigen::MatrixXd& jacobian);

[[nodiscard]] std::vector<UnresolvedGroup> describe_groups(const Posterior& posterior);

}  // namespace ohmtrail::diagnose::inference
