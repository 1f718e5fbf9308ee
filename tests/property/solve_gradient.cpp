// Every derivative against central differences, and what-ifs against solving anew.
#include <gtest/gtest.h>

#include "property/solve_random.hpp"
#include "support/random_cases.hpp"

namespace ohmtrail::test {
namespace {

enum class Value { resistance, size };

/// Two circuits that differ in one value, solved, and the step between them.
struct Pair {
  Solution up, down;
  double step;
};

Pair nudge(Circuit circuit, std::size_t b, Value which, double relative) {
  double& value = which == Value::resistance ? circuit.branches[b].resistance : circuit.branches[b].size;
  const double middle = value;
  const double step = relative * std::abs(middle);
  value = middle + step;
  Solution up = Solver(circuit).solve().value();
  value = middle - step;
  Solution down = Solver(circuit).solve().value();
  return {std::move(up), std::move(down), step};
}

/// Central differences are good to about 1e-10 of the largest voltage over the relative step.
void expect_matches(double analytic, double difference, double scale) {
  EXPECT_NEAR(analytic, difference, 1e-5 * std::abs(difference) + 1e-8 * scale);
}

TEST(SolveGradient, OfVoltagesAndCurrentsMeetsCentralDifferences) {
  for (int seed = 0; seed < random_cases(60); ++seed) {
    SCOPED_TRACE(seed);
    RandomCircuit random(6000u + static_cast<unsigned>(seed));
    const Circuit circuit = random.make({.most_points = 12});
    Solver solver(circuit);
    const auto solution = solver.solve();
    ASSERT_TRUE(solution);
    if (solution->collapse) continue;
    const int red = random.any(random.plus());
    const int black = random.any(random.minus());
    const int clamp = random.below(static_cast<int>(circuit.branches.size()));
    const Gradient volts = solver.gradient_of_voltage(red, black);
    const Gradient amperes = solver.gradient_of_current(clamp);
    const auto at = [](int index) { return static_cast<std::size_t>(index); };
    for (std::size_t b = 0; b < circuit.branches.size(); ++b) {
      SCOPED_TRACE(b);
      for (const Value which : {Value::resistance, Value::size}) {
        const Branch& branch = circuit.branches[b];
        const double value = which == Value::resistance ? branch.resistance : branch.size;
        if (value == 0) continue;
        const Pair pair = nudge(circuit, b, which, 1e-5);
        const double v = (pair.up.voltage[at(red)] - pair.up.voltage[at(black)]) -
                         (pair.down.voltage[at(red)] - pair.down.voltage[at(black)]);
        const double i = pair.up.current[at(clamp)] - pair.down.current[at(clamp)];
        const auto& by = [&](const Gradient& g) {
          return which == Value::resistance ? g.by_resistance[b] : g.by_size[b];
        };
        // in proportion to the value itself, so that volts and amperes set the scale
        expect_matches(by(volts) * value, v / (2 * pair.step) * value, 1);
        expect_matches(by(amperes) * value, i / (2 * pair.step) * value, 10);
      }
    }
  }
}

TEST(SolveGradient, WhatIfIsTheSameAsSolvingAnew) {
  for (int seed = 0; seed < random_cases(60); ++seed) {
    SCOPED_TRACE(seed);
    RandomCircuit random(7000u + static_cast<unsigned>(seed));
    Circuit circuit = random.make({});
    Solver solver(circuit);
    const auto base = solver.solve();
    ASSERT_TRUE(base);
    for (int k = 0; k < 6; ++k) {
      const int b = random.below(static_cast<int>(circuit.branches.size()));
      Branch& branch = circuit.branches[static_cast<std::size_t>(b)];
      const double kept = branch.resistance;
      const double wanted = random.chance(0.1) ? 0 : kept * random.log_between(0.01, 20);
      if (branch.nominal > 0 && wanted == 0) continue;  // a short, not a cure
      branch.resistance = wanted;
      const auto anew = Solver(circuit).solve();
      branch.resistance = kept;
      const auto what_if = solver.with_resistance(b, wanted);
      ASSERT_EQ(anew.has_value(), what_if.has_value());
      if (!anew) continue;
      ASSERT_EQ(anew->collapse.has_value(), what_if->collapse.has_value());
      for (std::size_t p = 0; p < anew->voltage.size(); ++p) {
        EXPECT_NEAR(anew->voltage[p], what_if->voltage[p], 1e-10);
      }
    }
    const auto again = solver.solve();
    ASSERT_TRUE(again);
    for (std::size_t p = 0; p < base->voltage.size(); ++p)
      EXPECT_NEAR(base->voltage[p], again->voltage[p], 1e-11);
  }
}

TEST(SolveGradient, EstimatedGainsAreExactInLinearNetworks) {
  for (int seed = 0; seed < random_cases(40); ++seed) {
    SCOPED_TRACE(seed);
    RandomCircuit random(8000u + static_cast<unsigned>(seed));
    Circuit circuit = random.make({.power = false, .heating = false});
    Solver solver(circuit);
    const auto base = solver.solve();
    ASSERT_TRUE(base);
    const int load = static_cast<int>(circuit.branches.size()) - 1;
    std::vector<double> target;
    for (const Branch& branch : circuit.branches) target.push_back(branch.resistance * 0.3);
    const std::vector<double> gain = solver.estimate_gains(load, target);
    for (std::size_t b = 0; b < target.size(); ++b) {
      if (circuit.branches[b].resistance == 0) continue;
      const double found =
          solver.with_resistance(static_cast<int>(b), target[b])->drop.back() - base->drop.back();
      EXPECT_NEAR(gain[b], found, 1e-10 + 1e-8 * std::abs(found));
    }
  }
}

}  // namespace
}  // namespace ohmtrail::test
