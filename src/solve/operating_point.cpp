#include "solve/operating_point.hpp"

#include <algorithm>
#include <cmath>

#include "units/index.hpp"

namespace ohmtrail::solve {

OperatingPoint::OperatingPoint(const Circuit& circuit, const Merged& merged, const Jacobian& jacobian,
                               const Modes& modes)
    : circuit_(&circuit),
      merged_(&merged),
      jacobian_(&jacobian),
      base_(merged.base_point.size()),
      voltage_(merged.cluster.size()),
      drop_(circuit.branches.size()),
      current_(circuit.branches.size()),
      conductance_(circuit.branches.size()),
      flow_(circuit.branches.size(), Flow::none),
      island_(circuit.branches.size(), -1),
      at_point_(merged.cluster.size()) {
  for (std::size_t b = 0; b < flow_.size(); ++b) {
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
}

void OperatingPoint::move(const Eigen::VectorXd& step, const std::vector<double>& length_of_island) {
  for (std::size_t c = 0; c < base_.size(); ++c) {
    const int unknown = jacobian_->unknown_of_cluster(static_cast<int>(c));
    const double length = length_of_island[at(merged_->island[c])];
    if (unknown >= 0 && length != 0) base_[c] = add(base_[c], length * step[unknown]);
  }
}

void OperatingPoint::evaluate(const Demand& demand) {
  for (std::size_t p = 0; p < voltage_.size(); ++p) {
    const int cluster = merged_->cluster[p];
    if (cluster >= 0) voltage_[p] = add(base_[at(cluster)], merged_->offset[p]);
  }
  std::fill(at_point_.begin(), at_point_.end(), AtPoint{});
  largest_current_.assign(islands_, 0.0);
  for (std::size_t b = 0; b < drop_.size(); ++b) {
    if (island_[b] < 0) continue;
    const Branch& branch = circuit_->branches[b];
    drop_[b] = difference(voltage_[at(branch.from)], voltage_[at(branch.to)]);
    if (!flows(b)) continue;
    const Operating operating = operate_branch(b, demand);
    current_[b] = operating.current;
    conductance_[b] = operating.conductance;
    const double amperes = std::abs(operating.current);
    AtPoint &from = at_point_[at(branch.from)], &to = at_point_[at(branch.to)];
    from.leaving += operating.current, from.meeting += amperes;
    to.leaving -= operating.current, to.meeting += amperes;
    double& largest = largest_current_[at(island_[b])];
    largest = std::max(largest, amperes);
  }
  find_imbalance();
}

Operating OperatingPoint::operate_branch(std::size_t b, const Demand& demand) const {
  const Branch& branch = circuit_->branches[b];
  if (flow_[b] == Flow::ohmic) return {drop_[b] / branch.resistance, 1 / branch.resistance};
  const double power = branch.law == Law::power ? demand.power[b] * demand.share[at(island_[b])] : 0;
  const double series = series_volts(branch);
  const double across =
      series == 0 ? drop_[b] : difference(add(voltage_[at(branch.from)], -series), voltage_[at(branch.to)]);
  return operate(branch, across, power);
}

/// A cluster is left by what leaves its points.
void OperatingPoint::find_imbalance() {
  imbalance_.leaving.setZero(jacobian_->unknowns());
  meeting_.setZero(jacobian_->unknowns());
  for (std::size_t p = 0; p < at_point_.size(); ++p) {
    const int unknown = jacobian_->unknown(static_cast<int>(p));
    if (unknown < 0) continue;
    imbalance_.leaving[unknown] += at_point_[p].leaving;
    meeting_[unknown] += at_point_[p].meeting;
  }
  imbalance_.relative.assign(islands_, 0.0);
  for (int u = 0; u < jacobian_->unknowns(); ++u) {
    const std::size_t island = at(jacobian_->island(u));
    // Beside the island's largest current anything below 1e-20 of it is the noise of the voltages.
    const double scale = std::max({meeting_[u], 1e-7 * largest_current_[island], 1e-14});
    double& relative = imbalance_.relative[island];
    relative = std::max(relative, std::abs(imbalance_.leaving[u]) / scale);
  }
}

}  // namespace ohmtrail::solve
