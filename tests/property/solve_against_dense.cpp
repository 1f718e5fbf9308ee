// The sparse solver against Kirchhoff's equations written down in full, with every branch current an unknown,
// and solved by a dense LU factorisation with full pivoting of rows: independent of the merging of points, of
// the reduction to voltages and of the sparse factor.
#include <gtest/gtest.h>

#include <Eigen/Dense>

#include "property/solve_random.hpp"
#include "support/property.hpp"

namespace ohmtrail::test {
namespace {

using Eigen::Index;

struct Full {
  Eigen::VectorXd voltage, current;
};

/// Unknowns: voltages, then currents. Rows: Kirchhoff's current law (0 V at the reference), then branch laws.
class FullEquations {
 public:
  explicit FullEquations(const Circuit& circuit) : circuit_(circuit), points_(circuit.points) {
    const Index size = points_ + static_cast<Index>(circuit.branches.size());
    unknown_ = Eigen::VectorXd::Zero(size);
  }

  Full solve() {
    step(false);  // without power loads
    for (int iteration = 0; iteration < 60 && step(true) > 1e-14; ++iteration) {
    }
    return {unknown_.head(points_), unknown_.tail(unknown_.size() - points_)};
  }

 private:
  double step(bool with_power) {
    const Index size = unknown_.size();
    Eigen::MatrixXd jacobian = Eigen::MatrixXd::Zero(size, size);
    Eigen::VectorXd residual = Eigen::VectorXd::Zero(size);
    for (std::size_t k = 0; k < circuit_.branches.size(); ++k) stamp(k, with_power, jacobian, residual);
    jacobian.row(circuit_.reference).setZero();
    jacobian(circuit_.reference, circuit_.reference) = 1;
    residual[circuit_.reference] = unknown_[circuit_.reference];
    const Eigen::VectorXd change = jacobian.partialPivLu().solve(residual);
    unknown_ -= change;
    return change.norm() / unknown_.norm();
  }

  void stamp(std::size_t k, bool with_power, Eigen::MatrixXd& jacobian, Eigen::VectorXd& residual) const {
    const Branch& branch = circuit_.branches[k];
    const Index row = points_ + static_cast<Index>(k);
    const double i = unknown_[row];
    const double v = unknown_[branch.from] - unknown_[branch.to];
    jacobian(branch.from, row) += 1;
    jacobian(branch.to, row) -= 1;
    residual[branch.from] += i;
    residual[branch.to] -= i;
    double by_v = 1, by_i = 0, law = 0;
    const double warm = 1 + branch.heating.alpha * (branch.heating.ambient - 20);
    const double bend = branch.heating.alpha * branch.heating.rise;
    switch (branch.law) {
      case Law::resistor:
        law = v - branch.resistance * (warm * i + bend * i * i * i);
        by_i = -branch.resistance * (warm + 3 * bend * i * i);
        break;
      case Law::source:
        law = v - branch.size - branch.resistance * i;
        by_i = -branch.resistance;
        break;
      case Law::current:
        law = i - branch.size;
        by_v = 0;
        by_i = 1;
        break;
      default:
        law = with_power ? i - branch.size / v : i;
        by_v = with_power ? branch.size / (v * v) : 0;
        by_i = 1;
    }
    residual[row] = law;
    jacobian(row, branch.from) += by_v;
    jacobian(row, branch.to) -= by_v;
    jacobian(row, row) += by_i;
  }

  const Circuit& circuit_;
  Index points_;
  Eigen::VectorXd unknown_;
};

void expect_equal(const Solution& sparse, const Full& dense) {
  const double most_volts = dense.voltage.cwiseAbs().maxCoeff();
  const double most_amperes = dense.current.cwiseAbs().maxCoeff();
  for (Index p = 0; p < dense.voltage.size(); ++p) {
    RC_ASSERT(std::abs(sparse.voltage[static_cast<std::size_t>(p)] - dense.voltage[p]) <= 1e-9 * most_volts);
  }
  for (Index k = 0; k < dense.current.size(); ++k) {
    RC_ASSERT(std::abs(sparse.current[static_cast<std::size_t>(k)] - dense.current[k]) <=
              1e-9 * most_amperes);
  }
}

TEST(SolveAgainstDense, FiveHundredRandomNetworks) {
  int compared = 0;
  const auto property = [&] {
    // The size is rapidcheck's own choice, so that a counterexample shrinks to the smallest network of its
    // kind.
    const int most_points = *rc::gen::inRange(3, 40);
    const auto seed = *rc::gen::arbitrary<unsigned>();
    const Circuit circuit = RandomCircuit(seed).make({.most_points = most_points});
    const auto sparse = Solver(circuit).solve();
    RC_ASSERT(sparse.has_value());
    if (sparse->collapse) return;
    ++compared;
    expect_equal(*sparse, FullEquations(circuit).solve());
  };
  holds(property, 500);
  EXPECT_GE(compared, random_cases(500) * 8 / 10);
}

}  // namespace
}  // namespace ohmtrail::test
