#include <cmath>

#include "bench/large_circuit.hpp"
#include "unit/solve/circuits.hpp"

/// How much work a solve is, counted, not timed.
namespace ohmtrail::solve {
namespace {

Effort effort_of(const bench::LargeCircuit& wanted) {
  Solver solver(bench::large_circuit(wanted));
  const auto solution = solver.solve();
  EXPECT_TRUE(solution.has_value());
  EXPECT_FALSE(solution && solution->collapse);
  return solver.effort();
}

TEST(Effort, ALinearCircuitIsFactoredOnce) {
  const Effort effort = effort_of({2000});
  EXPECT_EQ(effort.orderings, 1);
  EXPECT_EQ(effort.factorings, 1);
  EXPECT_LE(effort.steps, 3);  // one, and what rounding leaves
}

TEST(Effort, ATenthOfConstantPowerTakesSixSteps) {
  for (const int elements : {300, 1000, 5000}) {
    bench::LargeCircuit wanted{elements};
    wanted.power_loads = true;
    const Effort effort = effort_of(wanted);
    EXPECT_EQ(effort.orderings, 1) << elements;
    EXPECT_LE(effort.factorings, 5) << elements;
    EXPECT_LE(effort.steps, 6) << elements;
  }
}

TEST(Effort, WarmWiresTakeAFewStepsMore) {
  bench::LargeCircuit wanted{2000};
  wanted.wires_warm = true;
  const Effort effort = effort_of(wanted);
  EXPECT_EQ(effort.orderings, 1);
  EXPECT_LE(effort.factorings, 5);
  EXPECT_LE(effort.steps, 6);
}

TEST(Effort, SolvingAgainNearbyOrdersNothing) {
  Solver solver(Circuit{3, {source(1, 0, 12, 0.01), resistor(1, 2, 0.02), load(2, 0, Law::power, 60)}, 0});
  ASSERT_TRUE(solver.solve());
  const Effort first = solver.effort();
  solver.set_resistance(1, 0.021);
  ASSERT_TRUE(solver.solve());
  EXPECT_EQ(solver.effort().orderings, first.orderings);
  EXPECT_LE(solver.effort().steps - first.steps, 5);
}

TEST(Effort, LargeCircuitsAreCertified) {
  for (const bool power : {false, true}) {
    bench::LargeCircuit wanted{20000};
    wanted.power_loads = power;
    const Solution solution = solved(bench::large_circuit(wanted));
    EXPECT_LE(solution.current_residual, 1e-12);
    EXPECT_LE(solution.power_residual, 1e-12);
  }
}

}  // namespace
}  // namespace ohmtrail::solve
