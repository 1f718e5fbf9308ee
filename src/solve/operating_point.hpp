#pragma once
#include <Eigen/Core>
#include <vector>

#include "solve/branch_law.hpp"
#include "solve/jacobian.hpp"
#include "solve/merge_points.hpp"

/// The state that Newton moves: cluster voltages, and what follows from them for each branch.
namespace ohmtrail::solve {

/// What a power branch is to take: the circuit's size times its island's share, or what a converter's output
/// needs.
struct Demand {
  std::vector<double> share;  ///< per island
  std::vector<double> power;  ///< per branch, W, before the share
};

/// What Newton brings to 0.
struct Imbalance {
  Eigen::VectorXd leaving;       ///< per unknown, A that leave it
  std::vector<double> relative;  ///< per island, the largest of them over the currents that meet there
};

class OperatingPoint {
 public:
  OperatingPoint(const Circuit& circuit, const Merged& merged, const Jacobian& jacobian, const Modes& modes);

  /// Takes the cluster bases from point voltages, and every branch's value from the circuit.
  void start_at(const std::vector<Precise>& point_voltage);
  /// The same from 0 V everywhere.
  void start_at_zero();
  /// Takes a branch's value anew that stays as it is while Newton runs; for one that changed since
  /// `start_at`.
  void take_value(std::size_t branch);
  /// base += length · step in the islands whose length is not 0.
  void move(const Eigen::VectorXd& step, const std::vector<double>& length_of_island);
  /// Drops, currents and conductances of all branches that are not fixed, and the imbalance they leave.
  void evaluate(const Demand& demand);

  [[nodiscard]] const Imbalance& imbalance() const { return imbalance_; }
  [[nodiscard]] std::vector<Precise> voltage() const;  ///< per point
  [[nodiscard]] const std::vector<double>& drop() const { return drop_; }
  [[nodiscard]] const std::vector<double>& current() const { return current_; }
  [[nodiscard]] const std::vector<double>& conductance() const { return conductance_; }
  /// Passes a current by its law: not idle, not fixed, in an island with a source.
  [[nodiscard]] bool flows(std::size_t branch) const { return flow_[branch] != Flow::none; }
  /// Constant-power branches that flow.
  [[nodiscard]] const std::vector<std::size_t>& power_loads() const { return power_loads_; }
  [[nodiscard]] int island(std::size_t branch) const { return island_[branch]; }
  [[nodiscard]] std::size_t islands() const { return islands_; }

 private:
  enum class Flow : char { none, ohmic, by_law };
  struct alignas(32) AtPoint {
    Precise voltage;
    double leaving = 0, meeting = 0;  ///< Σ i and Σ |i|, A
  };
  /// Of one that is not ohmic. `rise`: V that its drop grew by; along the slope it had, that tells nearly
  /// what it passes now.
  void operate_by_law(std::size_t b, const Demand& demand, double rise);
  void take_values();
  void find_voltages();
  void find_currents(const Demand& demand);
  void find_imbalance();

  const Circuit* circuit_;
  const Merged* merged_;
  const Jacobian* jacobian_;
  std::vector<Precise> base_;  ///< per cluster
  std::vector<double> drop_, current_, conductance_;
  std::vector<Flow> flow_;
  std::vector<std::size_t> power_loads_;
  std::vector<int> island_;  ///< per branch, −1 where it has no source
  std::size_t islands_ = 0;
  std::vector<AtPoint> at_point_;
  std::vector<double> largest_current_;  ///< per island
  Eigen::VectorXd meeting_;              ///< per unknown
  Imbalance imbalance_;
};

}  // namespace ohmtrail::solve
