#include "solve/jacobian.hpp"

#include <algorithm>
#include <cmath>

namespace ohmtrail::solve {

namespace {

std::size_t at(int index) {
  return static_cast<std::size_t>(index);
}

}  // namespace

Jacobian::Jacobian(const Circuit& circuit, const Merged& merged) {
  of_cluster_.assign(merged.base_point.size(), -1);
  for (std::size_t c = 0; c < merged.base_point.size(); ++c) {
    if (merged.grounded[c]) continue;
    of_cluster_[c] = unknowns_++;
    island_.push_back(merged.island[c]);
  }
  of_point_.assign(merged.cluster.size(), -1);
  for (std::size_t p = 0; p < of_point_.size(); ++p) {
    if (merged.cluster[p] >= 0) of_point_[p] = of_cluster_[at(merged.cluster[p])];
  }
  has_entry_.assign(circuit.branches.size(), 0);
  for (std::size_t b = 0; b < circuit.branches.size(); ++b) {
    const Branch& branch = circuit.branches[b];
    const bool may_conduct = branch.law == Law::resistor || branch.law == Law::source ||
                             branch.law == Law::diode || branch.law == Law::power;
    ends_.emplace_back(unknown(branch.from), unknown(branch.to));
    has_entry_[b] = may_conduct && !merged.fixes[b] && ends_[b].first != ends_[b].second;
  }
  if (unknowns_ > 0) make_pattern(circuit);
}

void Jacobian::make_pattern(const Circuit& circuit) {
  std::vector<Eigen::Triplet<double>> entries;
  for (int u = 0; u < unknowns_; ++u) entries.emplace_back(u, u, 0.0);
  for (std::size_t b = 0; b < circuit.branches.size(); ++b) {
    const auto [from, to] = ends_[b];
    if (has_entry_[b] && from >= 0 && to >= 0)
      entries.emplace_back(std::max(from, to), std::min(from, to), 0.0);
  }
  matrix_.resize(unknowns_, unknowns_);
  matrix_.setFromTriplets(entries.begin(), entries.end());
  const auto place = [&](int row, int column) {
    const int* first = matrix_.innerIndexPtr() + matrix_.outerIndexPtr()[column];
    const int* last = matrix_.innerIndexPtr() + matrix_.outerIndexPtr()[column + 1];
    return static_cast<int>(std::lower_bound(first, last, row) - matrix_.innerIndexPtr());
  };
  slots_.resize(circuit.branches.size());
  for (std::size_t b = 0; b < circuit.branches.size(); ++b) {
    const auto [from, to] = ends_[b];
    if (!has_entry_[b]) continue;
    if (from >= 0) slots_[b].from = place(from, from);
    if (to >= 0) slots_[b].to = place(to, to);
    if (from >= 0 && to >= 0) slots_[b].both = place(std::max(from, to), std::min(from, to));
  }
  ldlt_.analyzePattern(matrix_);
}

bool Jacobian::factor(const std::vector<double>& conductance) {
  factored_conductance_ = conductance;
  factored_ = true;
  if (unknowns_ == 0) return true;
  double* values = matrix_.valuePtr();
  std::fill(values, values + matrix_.nonZeros(), 0.0);
  for (std::size_t b = 0; b < slots_.size(); ++b) {
    if (!has_entry_[b]) continue;
    if (slots_[b].from >= 0) values[slots_[b].from] += conductance[b];
    if (slots_[b].to >= 0) values[slots_[b].to] += conductance[b];
    if (slots_[b].both >= 0) values[slots_[b].both] -= conductance[b];
  }
  ldlt_.factorize(matrix_);
  factored_ = ldlt_.info() == Eigen::Success;
  return factored_;
}

double Jacobian::drift(const std::vector<double>& conductance) const {
  double largest = 0;
  for (std::size_t b = 0; b < conductance.size(); ++b) {
    if (!has_entry_[b]) continue;
    const double change = std::abs(conductance[b] - factored_conductance_[b]);
    if (change > 0) largest = std::max(largest, change / std::abs(factored_conductance_[b]));
  }
  return largest;
}

void Jacobian::mark_indefinite(std::vector<char>& marks) const {
  if (unknowns_ == 0) return;
  const auto pivots = ldlt_.vectorD();
  for (int u = 0; u < unknowns_; ++u) {
    if (!(pivots[ldlt_.permutationP().indices()[u]] > 0)) marks[at(island_[at(u)])] = 1;
  }
}

Eigen::VectorXd Jacobian::solve(const Eigen::VectorXd& right) const {
  if (unknowns_ == 0) return right;
  return ldlt_.solve(right);
}

void Jacobian::add_between(Eigen::VectorXd& vector, int from, int to, double value) const {
  if (unknown(from) >= 0) vector[unknown(from)] += value;
  if (unknown(to) >= 0) vector[unknown(to)] -= value;
}

double Jacobian::between(const Eigen::VectorXd& vector, int from, int to) const {
  return (unknown(from) >= 0 ? vector[unknown(from)] : 0) - (unknown(to) >= 0 ? vector[unknown(to)] : 0);
}

}  // namespace ohmtrail::solve
