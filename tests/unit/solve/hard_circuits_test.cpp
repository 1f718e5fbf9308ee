// Circuits that Newton's method and the choice of modes find hard.
#include <cmath>

#include "unit/solve/circuits.hpp"

namespace ohmtrail::solve {
namespace {

/// The root of a rising function between two bounds, by halving.
template <class Of>
double root(double low, double high, Of of) {
  for (int k = 0; k < 200; ++k) (of((low + high) / 2) > 0 ? high : low) = (low + high) / 2;
  return (low + high) / 2;
}

/// A wire that an ampere warms by 80 K: from no volts the first steps lead far beyond the source.
TEST(HardCircuits, AWireThatGlowsIsNotOvershot) {
  for (const double rated : {0.3, 1.0, 5.0})
    for (const double ohms : {0.5, 3.0, 10.0, 1000.0}) {
      Branch wire = resistor(1, 2, 0.01);
      wire.heating = heating_at(0.004, 20, 80, rated);
      const Solution s = solved({3, {source(1, 0, 12, 0.001), wire, load(2, 0, Law::resistor, ohms)}, 0});
      const double bend = 0.01 * 0.004 * 80 / (rated * rated);
      const double amperes =
          root(0, 12 / ohms, [&](double i) { return (0.011 + ohms) * i + bend * i * i * i - 12; });
      EXPECT_NEAR(s.current[1] / amperes, 1, 1e-11) << rated << " A, " << ohms << " ohm";
    }
}

TEST(HardCircuits, AGlowingWireAndAPowerLoadNearItsFold) {
  Branch wire = resistor(1, 2, 0.05);
  wire.heating = heating_at(0.004, 20, 80, 10);
  const double bend = 0.05 * 0.004 * 80 / 100;
  const auto power = [&](double i) { return i * (12 - 0.06 * i - bend * i * i * i); };
  double most = 0;
  for (double i = 0; i < 60; i += 1e-4) most = std::max(most, power(i));
  for (const double share : {0.5, 0.9, 0.99, 0.9999}) {
    const Solution s = solved({3, {source(1, 0, 12, 0.01), wire, load(2, 0, Law::power, share * most)}, 0});
    ASSERT_FALSE(s.collapse) << share;
    EXPECT_NEAR(power(s.current[1]), share * most, 1e-9 * most);
  }
  const Solution beyond = solved({3, {source(1, 0, 12, 0.01), wire, load(2, 0, Law::power, 1.01 * most)}, 0});
  ASSERT_TRUE(beyond.collapse);
  EXPECT_NEAR(beyond.collapse->most_power, most, 1e-6 * most);
}

/// Loads that stop, a charger at its limit and isolators, in one island: each promise is kept at the end.
TEST(HardCircuits, EverythingAtOnceEndsWithEachPromiseKept) {
  const Circuit circuit{
      6,
      {source(1, 0, 12.4, 0.02), source(3, 0, 12.9, 0.01), charger(2, 0, 14.2, 25), diode(2, 1, 0.5),
       diode(2, 3, 0.5), resistor(1, 4, 0.05), resistor(3, 5, 0.04), load(4, 0, Law::power, 150, 11.5),
       load(4, 0, Law::power, 300, 11.8), load(5, 0, Law::current, 20), load(5, 0, Law::resistor, 2)},
      0};
  const Solution s = solved(circuit);
  EXPECT_LE(s.current_residual, 1e-12);
  EXPECT_NEAR(-s.current[2], 25, 1e-9) << "both batteries take what it gives";
  for (const std::size_t b : {3U, 4U}) {
    EXPECT_GE(s.current[b], 0);
    if (s.current[b] > 0) {
      EXPECT_NEAR(s.drop[b], 0.5, 1e-12);
    } else {
      EXPECT_LE(s.drop[b], 0.5 + 1e-12);
    }
  }
  for (const std::size_t b : {7U, 8U})
    if (s.running[b]) {
      EXPECT_GE(s.drop[b], circuit.branches[b].stops_below);
      EXPECT_NEAR(s.drop[b] * s.current[b], circuit.branches[b].size, 1e-9);
    } else {
      EXPECT_EQ(s.current[b], 0);
    }
}

/// Each converter feeds the other and loses a tenth: what a load beside them asks for has no solution, and is
/// never shown as if it had.
TEST(HardCircuits, TwoConvertersThatFeedEachOtherAreNoSource) {
  Branch first_in = load(2, 0, Law::power, 0), second_in = load(1, 0, Law::power, 0);
  Branch first = charger(1, 0, 12, 20), second = charger(2, 0, 24, 20);
  first.input = 0, second.input = 2;
  first.efficiency = second.efficiency = 0.9;
  const auto result =
      Solver(Circuit{3, {first_in, first, second_in, second, load(1, 0, Law::power, 60)}, 0}).solve();
  EXPECT_TRUE(!result || result->collapse);
}

}  // namespace
}  // namespace ohmtrail::solve
