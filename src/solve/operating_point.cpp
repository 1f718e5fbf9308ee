#include "solve/operating_point.hpp"

#include <algorithm>
#include <cmath>

#include "units/index.hpp"

namespace ohmtrail::solve {

OperatingPoint::OperatingPoint(const Circuit& circuit, const Merged& merged, const Modes& modes)
    : circuit_(&circuit), merged_(&merged), base_(merged.base_point.size()), voltage_(merged.cluster.size()) {
  const std::size_t count = circuit.branches.size();
  drop_.assign(count, 0);
  current_.assign(count, 0);
  conductance_.assign(count, 0);
  flows_.assign(count, 0);
  island_.assign(count, -1);
  for (std::size_t b = 0; b < count; ++b) {
    const Branch& branch = circuit.branches[b];
    const int cluster = merged.cluster[at(branch.from)];
    if (cluster < 0 || branch.law == Law::open) continue;
    island_[b] = merged.island[at(cluster)];
    islands_ = std::max(islands_, at(island_[b]) + 1);
    flows_[b] = !merged.fixes[b] && modes[b] != Mode::idle;
  }
  for (std::size_t c = 0; c < base_.size(); ++c) islands_ = std::max(islands_, at(merged.island[c]) + 1);
}

void OperatingPoint::start_at(const std::vector<Precise>& point_voltage) {
  for (std::size_t c = 0; c < base_.size(); ++c) {
    if (!merged_->grounded[c]) base_[c] = point_voltage[at(merged_->base_point[c])];
  }
}

void OperatingPoint::move(const Jacobian& jacobian, const Eigen::VectorXd& step,
                          const std::vector<double>& length_of_island) {
  for (std::size_t c = 0; c < base_.size(); ++c) {
    const int unknown = jacobian.unknown_of_cluster(static_cast<int>(c));
    const double length = length_of_island[at(merged_->island[c])];
    if (unknown >= 0 && length != 0) base_[c] = add(base_[c], length * step[unknown]);
  }
}

void OperatingPoint::evaluate(const Demand& demand) {
  for (std::size_t p = 0; p < voltage_.size(); ++p) {
    const int cluster = merged_->cluster[p];
    if (cluster >= 0) voltage_[p] = add(base_[at(cluster)], merged_->offset[p]);
  }
  for (std::size_t b = 0; b < drop_.size(); ++b) {
    if (island_[b] < 0) continue;
    const Branch& branch = circuit_->branches[b];
    drop_[b] = difference(voltage_[at(branch.from)], voltage_[at(branch.to)]);
    if (!flows(b)) continue;
    const double power = branch.law == Law::power ? demand.power[b] * demand.share[at(island_[b])] : 0;
    const double series = series_volts(branch);
    const double across =
        series == 0 ? drop_[b] : difference(add(voltage_[at(branch.from)], -series), voltage_[at(branch.to)]);
    const Operating operating = operate(branch, across, power);
    current_[b] = operating.current;
    conductance_[b] = operating.conductance;
  }
}

Imbalance OperatingPoint::imbalance(const Jacobian& jacobian) const {
  Imbalance found{Eigen::VectorXd::Zero(jacobian.unknowns()), {}};
  Eigen::VectorXd meeting = Eigen::VectorXd::Zero(jacobian.unknowns());
  std::vector<double> largest_current(islands_, 0.0);
  for (std::size_t b = 0; b < current_.size(); ++b) {
    if (!flows(b)) continue;
    const double amperes = std::abs(current_[b]);
    const auto [from, to] = jacobian.ends(b);
    if (from >= 0) found.leaving[from] += current_[b], meeting[from] += amperes;
    if (to >= 0) found.leaving[to] -= current_[b], meeting[to] += amperes;
    double& largest = largest_current[at(island_[b])];
    largest = std::max(largest, amperes);
  }
  found.relative.assign(islands_, 0.0);
  for (int u = 0; u < jacobian.unknowns(); ++u) {
    const std::size_t island = at(jacobian.island(u));
    // Beside the island's largest current anything below 1e-20 of it is the noise of the voltages.
    const double scale = std::max({meeting[u], 1e-7 * largest_current[island], 1e-14});
    found.relative[island] = std::max(found.relative[island], std::abs(found.leaving[u]) / scale);
  }
  return found;
}

}  // namespace ohmtrail::solve
