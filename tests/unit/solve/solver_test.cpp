#include "ohmtrail/solve/solver.hpp"

#include <cmath>

#include "unit/solve/circuits.hpp"

namespace ohmtrail::solve {
namespace {

/// One source of 12 V behind 10 mΩ (point 1 plus, 0 minus), a wire of 20 mΩ to point 2, and what is added.
Circuit one_path() {
  return {3, {source(1, 0, 12, 0.01), resistor(1, 2, 0.02)}, 0};
}

TEST(Solver, OhmsLawOnOnePath) {
  Circuit circuit = one_path();
  circuit.branches.push_back(resistor(2, 0, 1.17));
  const Solution s = solved(circuit);
  EXPECT_NEAR(s.current[1], 10, 1e-13);
  EXPECT_NEAR(s.current[0], -10, 1e-13);
  EXPECT_NEAR(s.voltage[2], 11.7, 1e-13);
  EXPECT_NEAR(s.drop[1], 0.2, 1e-15);
  EXPECT_NEAR(s.heat[1], 2, 1e-13);
  EXPECT_LE(s.current_residual, 1e-14);
  EXPECT_LE(s.power_residual, 1e-14);
}

TEST(Solver, ConstantPowerTakesTheUpperBranch) {
  Circuit circuit = one_path();
  circuit.branches.push_back(load(2, 0, Law::power, 600));
  const Solution s = solved(circuit);
  const double volts = (12 + std::sqrt(144 - 4 * 0.03 * 600)) / 2;
  EXPECT_NEAR(s.voltage[2], volts, 1e-12);
  EXPECT_FALSE(s.collapse);
}

TEST(Solver, CollapseIsAtAQuarterOfESquaredOverR) {
  Circuit circuit = one_path();
  circuit.branches.push_back(load(2, 0, Law::power, 2000));
  const Solution s = solved(circuit);
  ASSERT_TRUE(s.collapse);
  EXPECT_EQ(s.collapse->branch, 2);
  EXPECT_NEAR(s.collapse->most_power, 144 / (4 * 0.03), 1e-9 * 1200);
  EXPECT_NEAR(s.collapse->at_volts, 6, 1e-6);
  EXPECT_NEAR(s.collapse->share, 0.6, 1e-9);
}

TEST(Solver, MicroohmBesideMegohm) {
  Circuit circuit{3, {source(1, 0, 12, 0.001), resistor(1, 2, 1e-6), resistor(2, 0, 1e6)}, 0};
  const Solution s = solved(circuit);
  const double amperes = 12 / (1e6 + 1e-6 + 1e-3);
  EXPECT_NEAR(s.drop[1] / (amperes * 1e-6), 1, 1e-12);
  EXPECT_NEAR(s.current[1] / amperes, 1, 1e-12);
}

}  // namespace
}  // namespace ohmtrail::solve
