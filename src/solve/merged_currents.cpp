#include "solve/merged_currents.hpp"

#include <algorithm>

#include "units/index.hpp"

namespace ohmtrail::solve {

MergedCurrents::MergedCurrents(const Circuit& circuit, const Merged& merged) : circuit_(circuit) {
  for (std::size_t b = 0; b < merged.fixes.size(); ++b) {
    const Branch& branch = circuit.branches[b];
    if (merged.fixes[b] && merged.cluster[at(branch.from)] >= 0) branches_.push_back(static_cast<int>(b));
  }
  if (branches_.empty()) return;
  row_.assign(at(circuit.points), -1);
  int rows = 0;
  for (const int b : branches_) {
    for (const int point : {circuit.branches[at(b)].from, circuit.branches[at(b)].to}) {
      const bool base = merged.base_point[at(merged.cluster[at(point)])] == point;
      if (!base && row_[at(point)] < 0) row_[at(point)] = rows++;
    }
  }
  std::vector<Eigen::Triplet<double>> entries;
  for (const int b : branches_) {
    const int from = row_[at(circuit.branches[at(b)].from)];
    const int to = row_[at(circuit.branches[at(b)].to)];
    if (from == to) continue;
    if (from >= 0) entries.emplace_back(from, from, 1.0);
    if (to >= 0) entries.emplace_back(to, to, 1.0);
    if (from >= 0 && to >= 0) entries.emplace_back(std::max(from, to), std::min(from, to), -1.0);
  }
  laplacian_.resize(rows, rows);
  laplacian_.setFromTriplets(entries.begin(), entries.end());
  if (rows > 0) ldlt_.compute(laplacian_);
}

Eigen::VectorXd MergedCurrents::potentials(const Eigen::VectorXd& right) const {
  if (right.size() == 0) return right;
  Eigen::VectorXd potential = ldlt_.solve(right);
  const Eigen::VectorXd rest = right - laplacian_.selfadjointView<Eigen::Lower>() * potential;
  potential += ldlt_.solve(rest);
  return potential;
}

void MergedCurrents::find(const std::vector<double>& into, std::vector<double>& current) const {
  if (branches_.empty()) return;
  Eigen::VectorXd right = Eigen::VectorXd::Zero(laplacian_.rows());
  for (std::size_t p = 0; p < row_.size(); ++p) {
    if (row_[p] >= 0) right[row_[p]] = into[p];
  }
  const Eigen::VectorXd potential = potentials(right);
  const auto value = [&](int point) { return row_[at(point)] >= 0 ? potential[row_[at(point)]] : 0.0; };
  for (const int b : branches_) {
    current[at(b)] = value(circuit_.branches[at(b)].from) - value(circuit_.branches[at(b)].to);
  }
}

std::vector<double> MergedCurrents::weights(int branch) const {
  Eigen::VectorXd right = Eigen::VectorXd::Zero(laplacian_.rows());
  const int from = row_[at(circuit_.branches[at(branch)].from)];
  const int to = row_[at(circuit_.branches[at(branch)].to)];
  if (from >= 0) right[from] += 1;
  if (to >= 0) right[to] -= 1;
  const Eigen::VectorXd potential = potentials(right);
  std::vector<double> of_point(row_.size(), 0.0);
  for (std::size_t p = 0; p < row_.size(); ++p) {
    if (row_[p] >= 0) of_point[p] = potential[row_[p]];
  }
  return of_point;
}

}  // namespace ohmtrail::solve
