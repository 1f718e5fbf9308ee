#include "solve/jacobian.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "solve/elimination_order.hpp"
#include "units/index.hpp"

namespace ohmtrail::solve {

namespace {

bool may_conduct(const Branch& branch) {
  return branch.law == Law::resistor || branch.law == Law::source || branch.law == Law::diode ||
         branch.law == Law::power;
}

}  // namespace

Jacobian::Jacobian(const Circuit& circuit, const Merged& merged) {
  number_unknowns(circuit, merged);
  of_point_.assign(merged.cluster.size(), -1);
  for (std::size_t p = 0; p < of_point_.size(); ++p) {
    if (merged.cluster[p] >= 0) of_point_[p] = of_cluster_[at(merged.cluster[p])];
  }
  has_entry_.assign(circuit.branches.size(), 0);
  ends_.reserve(circuit.branches.size());
  for (std::size_t b = 0; b < circuit.branches.size(); ++b) {
    const Branch& branch = circuit.branches[b];
    ends_.emplace_back(unknown(branch.from), unknown(branch.to));
    has_entry_[b] = may_conduct(branch) && !merged.fixes[b] && ends_[b].first != ends_[b].second;
  }
  if (unknowns_ > 0) make_pattern();
}

void Jacobian::number_unknowns(const Circuit& circuit, const Merged& merged) {
  std::vector<int> vertex(merged.base_point.size(), -1);
  for (std::size_t c = 0; c < vertex.size(); ++c) {
    if (!merged.grounded[c]) vertex[c] = unknowns_++;
  }
  std::vector<std::pair<int, int>> edges;
  edges.reserve(circuit.branches.size());
  const auto vertex_at = [&](int point) {
    const int cluster = merged.cluster[at(point)];
    return cluster < 0 ? -1 : vertex[at(cluster)];
  };
  for (std::size_t b = 0; b < circuit.branches.size(); ++b) {
    const Branch& branch = circuit.branches[b];
    if (may_conduct(branch) && !merged.fixes[b])
      edges.emplace_back(vertex_at(branch.from), vertex_at(branch.to));
  }
  const std::vector<int> place = elimination_order(unknowns_, edges);
  of_cluster_.assign(vertex.size(), -1);
  island_.resize(at(unknowns_));
  for (std::size_t c = 0; c < vertex.size(); ++c) {
    if (vertex[c] < 0) continue;
    of_cluster_[c] = place[at(vertex[c])];
    island_[at(of_cluster_[c])] = merged.island[c];
  }
}

namespace {

/// Stable sort by `key`, which is below `keys`.
template <class KeyOf>
std::vector<int> sorted_by(const std::vector<int>& items, int keys, KeyOf key) {
  std::vector<int> start(at(keys) + 1, 0);
  for (const int item : items) ++start[at(key(item)) + 1];
  std::partial_sum(start.begin(), start.end(), start.begin());
  std::vector<int> sorted(items.size());
  for (const int item : items) sorted[at(start[at(key(item))]++)] = item;
  return sorted;
}

}  // namespace

/// Compressed columns, rows rising, the diagonal last; branches between the same clusters share an entry.
void Jacobian::make_pattern() {
  std::vector<int> coupling;
  for (std::size_t b = 0; b < ends_.size(); ++b) {
    if (has_entry_[b] && ends_[b].first >= 0 && ends_[b].second >= 0) coupling.push_back(static_cast<int>(b));
  }
  const auto above = [this](int b) { return std::minmax(ends_[at(b)].first, ends_[at(b)].second); };
  coupling = sorted_by(coupling, unknowns_, [&](int b) { return above(b).first; });
  coupling = sorted_by(coupling, unknowns_, [&](int b) { return above(b).second; });

  matrix_.resize(unknowns_, unknowns_);
  matrix_.reserve(unknowns_ + static_cast<int>(coupling.size()));
  slots_.resize(ends_.size());
  std::vector<int> diagonal(at(unknowns_));
  int used = 0;
  auto next = coupling.begin();
  for (int column = 0; column < unknowns_; ++column) {
    matrix_.outerIndexPtr()[column] = used;
    int row = -1;
    for (; next != coupling.end() && above(*next).second == column; ++next) {
      if (above(*next).first != row) matrix_.innerIndexPtr()[used++] = row = above(*next).first;
      slots_[at(*next)].both = used - 1;
    }
    matrix_.innerIndexPtr()[diagonal[at(column)] = used++] = column;
  }
  matrix_.outerIndexPtr()[unknowns_] = used;
  matrix_.resizeNonZeros(used);
  for (std::size_t b = 0; b < ends_.size(); ++b) {
    if (!has_entry_[b]) continue;
    if (ends_[b].first >= 0) slots_[b].from = diagonal[at(ends_[b].first)];
    if (ends_[b].second >= 0) slots_[b].to = diagonal[at(ends_[b].second)];
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
    if (!(pivots[u] > 0)) marks[at(island_[at(u)])] = 1;
  }
}

Eigen::VectorXd Jacobian::solve(const Eigen::VectorXd& right) const {
  if (unknowns_ == 0) return right;
  return ldlt_.solve(right);
}

}  // namespace ohmtrail::solve
