#pragma once
#include <Eigen/Core>
#include <memory>
#include <optional>

#include "diagnose/infer/model.hpp"
#include "ohmtrail/solve/solver.hpp"

namespace ohmtrail::diagnose::inference {

/// The observations as a linear function of the unknowns' values, exact at one state of the real network.
struct Linearisation {
  Eigen::VectorXd value;      ///< n: where
  Eigen::VectorXd predicted;  ///< m: what the network gives there
  Eigen::MatrixXd by_value;   ///< m × n: derivatives
};

/// Predicts the observations by solving every case of a model; derivatives by one back-substitution a
/// reading. Holds on to the model, which must outlive it.
class Forward {
 public:
  explicit Forward(const Model& model);

  [[nodiscard]] const Model& model() const { return model_; }

  /// Predictions at these values; empty where a case has no solution. Battery drift, a small correction,
  /// enters with the derivatives of the last linearisation.
  [[nodiscard]] std::optional<Eigen::VectorXd> predict(const Eigen::VectorXd& value);

  [[nodiscard]] std::optional<Linearisation> linearise(const Eigen::VectorXd& value);

  /// Solves one case at these values and gives its solver for further derivatives; null where it has no
  /// solution.
  [[nodiscard]] const solve::Solver* solved_case(std::size_t in_case, const Eigen::VectorXd& value);
  [[nodiscard]] const solve::Solution& solution(std::size_t in_case) const { return solutions_[in_case]; }

  /// Derivatives by every unknown of what `gradient` describes in one case.
  [[nodiscard]] Eigen::VectorXd by_parameter(std::size_t in_case, const solve::Gradient& gradient) const;

 private:
  [[nodiscard]] bool solve_all(const Eigen::VectorXd& value);
  [[nodiscard]] double raw(const Observation& observation, const Eigen::VectorXd& value) const;
  [[nodiscard]] Eigen::VectorXd raw_gradient(const Observation& observation) const;
  [[nodiscard]] double with_meter(const Observation& observation, double raw,
                                  const Eigen::VectorXd& value) const;
  void fill_row(Eigen::Index row, double raw, const Eigen::VectorXd& value, Eigen::MatrixXd& by_value) const;

  const Model& model_;
  std::vector<solve::Solver> solvers_;
  std::vector<solve::Solution> solutions_;
  Eigen::MatrixXd drift_slope_;  ///< m × n, drift columns of the last linearisation; empty before it
};

}  // namespace ohmtrail::diagnose::inference
