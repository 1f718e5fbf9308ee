#include "solve/operating_point.hpp"

#include <algorithm>
#include <cmath>

#include "solve/by_island.hpp"
#include "solve/expect.hpp"
#include "units/index.hpp"

namespace ohmtrail::solve {

OperatingPoint::OperatingPoint(const Circuit& circuit, const Merged& merged, const Jacobian& jacobian,
                               const Modes& modes)
    : circuit_(&circuit),
      merged_(&merged),
      jacobian_(&jacobian),
      base_(merged.base_point.size()),
      drop_(circuit.branches.size()),
      current_(circuit.branches.size()),
      conductance_(circuit.branches.size()),
      flow_(circuit.branches.size(), Flow::none),
      island_(circuit.branches.size(), -1),
      at_point_(merged.cluster.size()) {
  for (std::size_t b = 0; b < flow_.size(); ++b) {
    expect_points(circuit.branches, b, merged.cluster);
    const Branch& branch = circuit.branches[b];
    const int cluster = merged.cluster[at(branch.from)];
    if (cluster < 0 || branch.law == Law::open) continue;
    island_[b] = merged.island[at(cluster)];
    if (merged.fixes[b] || modes[b] == Mode::idle) continue;
    flow_[b] = is_ohmic(branch) ? Flow::ohmic : Flow::by_law;
    if (branch.law == Law::power) power_loads_.push_back(b);
  }
  for (const int island : merged.island) islands_ = std::max(islands_, at(island) + 1);
}

void OperatingPoint::start_at(const std::vector<Precise>& point_voltage) {
  for (std::size_t c = 0; c < base_.size(); ++c) {
    if (!merged_->grounded[c]) base_[c] = point_voltage[at(merged_->base_point[c])];
  }
  take_values();
}

void OperatingPoint::start_at_zero() {
  for (std::size_t c = 0; c < base_.size(); ++c) {
    if (!merged_->grounded[c]) base_[c] = {};
  }
  take_values();
}

void OperatingPoint::take_values() {
  for (std::size_t b = 0; b < flow_.size(); ++b) take_value(b);
}

void OperatingPoint::take_value(std::size_t branch) {
  if (flow_[branch] == Flow::ohmic) conductance_[branch] = 1 / circuit_->branches[branch].resistance;
}

void OperatingPoint::move(const Eigen::VectorXd& step, const std::vector<double>& length_of_island) {
  const auto unknown_of = [this](int cluster) { return jacobian_->unknown_of_cluster(cluster); };
  for (std::size_t c = 0; c < base_.size(); ++c) {
    expect_unknown(c, base_.size(), unknown_of, step);
    const int unknown = unknown_of(static_cast<int>(c));
    const double length = length_of_island[at(merged_->island[c])];
    if (unknown >= 0 && length != 0) base_[c] = add(base_[c], length * step[unknown]);
  }
}

void OperatingPoint::find_voltages() {
  for (std::size_t p = 0; p < at_point_.size(); ++p) {
    const int cluster = merged_->cluster[p];
    if (cluster < 0) continue;
    const Precise base = base_[at(cluster)];
    at_point_[p] = {merged_->offset.empty() ? base : add(base, merged_->offset[p])};
  }
}

std::vector<Precise> OperatingPoint::voltage() const {
  std::vector<Precise> voltage;
  voltage.reserve(at_point_.size());
  for (const AtPoint& point : at_point_) voltage.push_back(point.voltage);
  return voltage;
}

void OperatingPoint::evaluate(const Demand& demand) {
  find_voltages();
  find_currents(demand);
  find_imbalance();
}

void OperatingPoint::find_currents(const Demand& demand) {
  largest_current_.assign(islands_, 0.0);
  LargestByIsland largest(largest_current_);
  for (std::size_t b = 0; b < drop_.size(); ++b) {
    expect_points(circuit_->branches, b, at_point_);
    if (island_[b] < 0) continue;
    const Branch& branch = circuit_->branches[b];
    const double before = drop_[b];
    drop_[b] = difference(at_point_[at(branch.from)].voltage, at_point_[at(branch.to)].voltage);
    if (!flows(b)) continue;
    if (flow_[b] == Flow::ohmic)
      current_[b] = drop_[b] / branch.resistance;
    else
      operate_by_law(b, demand, drop_[b] - before);
    const double amperes = std::abs(current_[b]);
    AtPoint &from = at_point_[at(branch.from)], &to = at_point_[at(branch.to)];
    from.leaving += current_[b], from.meeting += amperes;
    to.leaving -= current_[b], to.meeting += amperes;
    largest.add(island_[b], amperes);
  }
}

void OperatingPoint::operate_by_law(std::size_t b, const Demand& demand, double rise) {
  const Branch& branch = circuit_->branches[b];
  const double power = branch.law == Law::power ? demand.power[b] * demand.share[at(island_[b])] : 0;
  const double series = series_volts(branch);
  const double across = series == 0 ? drop_[b]
                                    : difference(add(at_point_[at(branch.from)].voltage, -series),
                                                 at_point_[at(branch.to)].voltage);
  const Operating operating = operate(branch, across, power, current_[b] + conductance_[b] * rise);
  current_[b] = operating.current;
  conductance_[b] = operating.conductance;
}

/// A cluster is left by what leaves its points.
void OperatingPoint::find_imbalance() {
  imbalance_.leaving.setZero(jacobian_->unknowns());
  meeting_.setZero(jacobian_->unknowns());
  const auto unknown_of = [this](int point) { return jacobian_->unknown(point); };
  for (std::size_t p = 0; p < at_point_.size(); ++p) {
    expect_unknown(p, at_point_.size(), unknown_of, imbalance_.leaving, meeting_);
    const int unknown = unknown_of(static_cast<int>(p));
    if (unknown < 0) continue;
    imbalance_.leaving[unknown] += at_point_[p].leaving;
    meeting_[unknown] += at_point_[p].meeting;
  }
  imbalance_.relative.assign(islands_, 0.0);
  LargestByIsland relative(imbalance_.relative);
  for (int u = 0; u < jacobian_->unknowns(); ++u) {
    const int island = jacobian_->island(u);
    // Beside the island's largest current anything below 1e-20 of it is the noise of the voltages.
    const double scale = std::max({meeting_[u], 1e-7 * largest_current_[at(island)], 1e-14});
    relative.add(island, std::abs(imbalance_.leaving[u]) / scale);
  }
}

}  // namespace ohmtrail::solve
