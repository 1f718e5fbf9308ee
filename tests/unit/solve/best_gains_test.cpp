#include <algorithm>
#include <cmath>

#include "bench/large_circuit.hpp"
#include "unit/solve/circuits.hpp"

namespace ohmtrail::solve {
namespace {

std::vector<int> loads_of(const Circuit& circuit) {
  std::vector<int> loads;
  for (std::size_t b = 0; b < circuit.branches.size(); ++b) {
    if (circuit.branches[b].nominal > 0) loads.push_back(static_cast<int>(b));
  }
  return loads;
}

/// Every wire and the source as good as a tenth of what they are.
std::vector<Replacement> all_better(const Circuit& circuit) {
  std::vector<Replacement> better;
  for (std::size_t b = 0; b < circuit.branches.size(); ++b) {
    Replacement one{static_cast<int>(b), circuit.branches[b]};
    one.by.resistance /= 10;
    if (circuit.branches[b].resistance > 0 && circuit.branches[b].nominal == 0) better.push_back(one);
  }
  return better;
}

/// Volts that each load gains, by solving again in full.
std::vector<double> by_solving(const Circuit& circuit, const Solution& before, const Replacement& one) {
  Circuit changed = circuit;
  changed.branches[static_cast<std::size_t>(one.branch)] = one.by;
  const Solution after = solved(changed);
  std::vector<double> gains(circuit.branches.size(), -HUGE_VAL);
  for (const int load : loads_of(circuit)) {
    const auto k = static_cast<std::size_t>(load);
    gains[k] = after.drop[k] - before.drop[k];
  }
  return gains;
}

void expect_estimates(const Circuit& circuit, double relative) {
  Solver solver(circuit);
  const auto before = solver.solve();
  ASSERT_TRUE(before);
  const auto better = all_better(circuit);
  const auto gains = solver.estimate_best_gains(loads_of(circuit), better);
  ASSERT_EQ(gains.size(), better.size());
  for (std::size_t k = 0; k < better.size(); ++k) {
    const auto exact = by_solving(circuit, *before, better[k]);
    const double best = *std::max_element(exact.begin(), exact.end());
    const double tolerance = relative * std::abs(best) + 1e-11;
    EXPECT_NEAR(gains[k].volts, best, tolerance) << better[k].branch;
    EXPECT_GE(exact[static_cast<std::size_t>(gains[k].load)], best - tolerance) << better[k].branch;
  }
}

bench::LargeCircuit radial(int elements) {
  bench::LargeCircuit wanted{elements};
  wanted.rings = 0;
  return wanted;
}

TEST(BestGains, ExactOnALinearRadialCircuit) {
  expect_estimates(bench::large_circuit(radial(200)), 1e-8);
}

TEST(BestGains, ExactOnALinearMeshedCircuit) {
  bench::LargeCircuit wanted{200};
  wanted.rings = 0.2;
  expect_estimates(bench::large_circuit(wanted), 1e-8);
}

TEST(BestGains, FirstOrderWithConstantPower) {
  auto wanted = radial(200);
  wanted.power_loads = true;
  expect_estimates(bench::large_circuit(wanted), 0.02);
}

TEST(BestGains, FirstOrderWithWarmWires) {
  auto wanted = radial(200);
  wanted.wires_warm = true;
  expect_estimates(bench::large_circuit(wanted), 0.05);
}

TEST(BestGains, AFullerBatteryHelpsByItsVoltage) {
  const Circuit circuit{3, {source(1, 0, 12, 0.01), resistor(1, 2, 0.02), load(2, 0, Law::current, 10)}, 0};
  Solver solver(circuit);
  ASSERT_TRUE(solver.solve());
  Branch fuller = circuit.branches[0];
  fuller.size = 12.7;
  fuller.resistance = 0.005;
  const auto gains = solver.estimate_best_gains({2}, {{0, fuller}});
  EXPECT_EQ(gains.front().load, 2);
  EXPECT_NEAR(gains.front().volts, 0.7 + 10 * 0.005, 1e-12);
}

TEST(BestGains, AnotherLawOfWarming) {
  Circuit circuit{3, {source(1, 0, 12, 0.01), resistor(1, 2, 0.02), load(2, 0, Law::current, 10)}, 0};
  Solver solver(circuit);
  ASSERT_TRUE(solver.solve());
  Branch warm = circuit.branches[1];
  warm.heating = {0.004, 45};  // 10 % more than at 20 °C
  const auto gains = solver.estimate_best_gains({2}, {{1, warm}});
  EXPECT_NEAR(gains.front().volts, -0.02, 1e-12);
}

TEST(BestGains, WhatCarriesNothingGivesNothing) {
  const Circuit circuit{
      4, {source(1, 0, 12, 0.01), resistor(1, 2, 0.02), load(2, 0, Law::current, 10), resistor(2, 3, 1)}, 0};
  Solver solver(circuit);
  ASSERT_TRUE(solver.solve());
  const auto gains = solver.estimate_best_gains({2}, {{3, resistor(2, 3, 0.1)}});
  EXPECT_EQ(gains.front().load, 2);
  EXPECT_NEAR(gains.front().volts, 0, 1e-15);
}

/// A load at the posts of an ideal battery answers to nothing: it is the best off where all others lose.
TEST(BestGains, ALoadBetweenFixedVoltagesNeitherGainsNorLoses) {
  const Circuit circuit{
      3,
      {source(1, 0, 12, 0), load(1, 0, Law::resistor, 3), resistor(1, 2, 0.02), load(2, 0, Law::current, 10)},
      0};
  Solver solver(circuit);
  ASSERT_TRUE(solver.solve());
  const auto gains =
      solver.estimate_best_gains({1, 3}, {{2, resistor(1, 2, 0.01)}, {2, resistor(1, 2, 0.05)}});
  EXPECT_EQ(gains[0].load, 3);
  EXPECT_NEAR(gains[0].volts, 0.1, 1e-12);
  EXPECT_EQ(gains[1].load, 1);
  EXPECT_NEAR(gains[1].volts, 0, 1e-12);
}

TEST(BestGains, WithoutLoadsThereIsNothingToGain) {
  Solver solver(Circuit{2, {source(1, 0, 12, 0.01), resistor(1, 0, 1)}, 0});
  ASSERT_TRUE(solver.solve());
  EXPECT_EQ(solver.estimate_best_gains({}, {{1, resistor(1, 0, 2)}}).front().load, -1);
}

}  // namespace
}  // namespace ohmtrail::solve
