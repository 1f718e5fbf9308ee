#include "solve/jacobian.hpp"

#include <algorithm>
#include <cmath>

#include "solve/elimination_order.hpp"
#include "solve/expect.hpp"
#include "units/index.hpp"

namespace ohmtrail::solve {

namespace {

bool may_conduct(const Branch& branch) {
  return branch.law == Law::resistor || branch.law == Law::source || branch.law == Law::diode ||
         branch.law == Law::power;
}

}  // namespace

Jacobian::Jacobian(const Circuit& circuit, const Merged& merged)
    : of_point_(merged.cluster.size(), -1),
      of_cluster_(merged.base_point.size(), -1),
      has_entry_(circuit.branches.size()) {
  for (std::size_t c = 0; c < of_cluster_.size(); ++c) {
    if (!merged.grounded[c]) of_cluster_[c] = unknowns_++;
  }
  for (std::size_t p = 0; p < of_point_.size(); ++p) {
    if (merged.cluster[p] >= 0) of_point_[p] = of_cluster_[at(merged.cluster[p])];
  }
  find_ends(circuit, merged);
  const Elimination order = elimination_order(unknowns_, entries());
  renumber(order.place, merged);
  factor_.analyze(order, ends_, has_entry_);
}

/// With the unknowns as they are numbered first.
void Jacobian::find_ends(const Circuit& circuit, const Merged& merged) {
  ends_.reserve(circuit.branches.size());
  for (std::size_t b = 0; b < circuit.branches.size(); ++b) {
    expect_points(circuit.branches, b, of_point_);
    const Branch& branch = circuit.branches[b];
    ends_.emplace_back(unknown(branch.from), unknown(branch.to));
    has_entry_[b] = may_conduct(branch) && !merged.fixes[b] && ends_[b].first != ends_[b].second;
  }
}

BranchEnds Jacobian::entries() const {
  BranchEnds entries;
  entries.reserve(ends_.size());
  for (std::size_t b = 0; b < ends_.size(); ++b) {
    if (has_entry_[b]) entries.push_back(ends_[b]);
  }
  return entries;
}

/// `place` per unknown as it was numbered first.
void Jacobian::renumber(const std::vector<int>& place, const Merged& merged) {
  const auto anew = [&](int& unknown) {
    if (unknown >= 0) unknown = place[at(unknown)];
  };
  for (auto& [from, to] : ends_) anew(from), anew(to);
  island_.resize(at(unknowns_));
  for (std::size_t c = 0; c < of_cluster_.size(); ++c) {
    anew(of_cluster_[c]);
    if (of_cluster_[c] >= 0) island_[at(of_cluster_[c])] = merged.island[c];
  }
  for (int& unknown : of_point_) anew(unknown);
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
