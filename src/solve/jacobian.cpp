#include "solve/jacobian.hpp"

#include <algorithm>
#include <cmath>

#include "solve/elimination_order.hpp"
#include "units/index.hpp"

namespace ohmtrail::solve {

namespace {

bool may_conduct(const Branch& branch) {
  return branch.law == Law::resistor || branch.law == Law::source || branch.law == Law::diode ||
         branch.law == Law::power;
}

}  // namespace

Jacobian::Jacobian(const Circuit& circuit, const Merged& merged)
    : of_point_(merged.cluster.size(), -1), has_entry_(circuit.branches.size()) {
  ends_.reserve(circuit.branches.size());
  const Elimination order = number_unknowns(circuit, merged);
  for (std::size_t p = 0; p < of_point_.size(); ++p) {
    if (merged.cluster[p] >= 0) of_point_[p] = of_cluster_[at(merged.cluster[p])];
  }
  for (std::size_t b = 0; b < circuit.branches.size(); ++b) {
    const Branch& branch = circuit.branches[b];
    ends_.emplace_back(unknown(branch.from), unknown(branch.to));
    has_entry_[b] = may_conduct(branch) && !merged.fixes[b] && ends_[b].first != ends_[b].second;
  }
  factor_.analyze(order, ends_, has_entry_);
}

Elimination Jacobian::number_unknowns(const Circuit& circuit, const Merged& merged) {
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
  Elimination order = elimination_order(unknowns_, edges);
  of_cluster_.assign(vertex.size(), -1);
  island_.resize(at(unknowns_));
  for (std::size_t c = 0; c < vertex.size(); ++c) {
    if (vertex[c] < 0) continue;
    of_cluster_[c] = order.place[at(vertex[c])];
    island_[at(of_cluster_[c])] = merged.island[c];
  }
  return order;
}

bool Jacobian::factor(const std::vector<double>& conductance) {
  factored_conductance_ = conductance;
  factored_ = factor_.compute(ends_, conductance);
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
  for (int u = 0; u < unknowns_; ++u) {
    if (!(factor_.pivot(u) > 0)) marks[at(island_[at(u)])] = 1;
  }
}

}  // namespace ohmtrail::solve
