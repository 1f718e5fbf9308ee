// Derivatives of voltages and currents at branches that fix their voltage, and at converters.
#include "unit/solve/differences.hpp"

namespace ohmtrail::solve {
namespace {

constexpr double emf = 12, inner = 0.02, ohms = 1.18;
constexpr double whole = inner + ohms;  // Ω

/// Battery, something between points 1 and 2, and a lamp.
Solver with_between(const Branch& between) {
  Solver solver(Circuit{3, {source(1, 0, emf, inner), between, load(2, 0, Law::resistor, ohms)}, 0});
  EXPECT_TRUE(solver.solve());
  return solver;
}

// V = E R/(r + w + R), so dV/dw = −E R/(r + R)² at w = 0.
TEST(Gradient, AWireOfNoResistanceHasItsOneSidedDerivative) {
  const Solver solver = with_between(resistor(1, 2, 0));
  EXPECT_NEAR(solver.gradient_of_voltage(2, 0).by_resistance[1], -emf * ohms / (whole * whole), 1e-12);
  EXPECT_NEAR(solver.gradient_of_current(2).by_resistance[1], -emf / (whole * whole), 1e-12);
  EXPECT_NEAR(solver.gradient_of_current(1).by_resistance[2], -emf / (whole * whole), 1e-12);
}

TEST(Gradient, AWireThatWillWarmAsItGrowsCountsSoFromTheStart) {
  Branch wire = resistor(1, 2, 0);
  wire.heating = heating_at(0.004, 45, 50, 20);
  const double amperes = emf / whole;
  const double warm = 1 + 0.004 * (45 - 20 + 50 * amperes * amperes / 400);
  EXPECT_NEAR(with_between(wire).gradient_of_voltage(2, 0).by_resistance[1],
              -warm * emf * ohms / (whole * whole), 1e-11);
}

TEST(Gradient, OfAnIdealBatteryByItsVoltageAndByResistance) {
  Solver solver(
      Circuit{3, {source(1, 0, emf, 0), resistor(1, 2, inner), load(2, 0, Law::resistor, ohms)}, 0});
  ASSERT_TRUE(solver.solve());
  const Gradient volts = solver.gradient_of_voltage(2, 0);
  EXPECT_NEAR(volts.by_size[0], ohms / whole, 1e-13);
  EXPECT_NEAR(volts.by_resistance[0], -emf * ohms / (whole * whole), 1e-11);
}

TEST(Gradient, OfAnIdealIsolatorByItsDropAndByResistance) {
  const Gradient volts = with_between(diode(1, 2, 0.7)).gradient_of_voltage(2, 0);
  EXPECT_NEAR(volts.by_size[1], -ohms / whole, 1e-13);
  EXPECT_NEAR(volts.by_resistance[1], -(emf - 0.7) * ohms / (whole * whole), 1e-11);
}

// One of two wires side by side costs nothing to make worse: the other takes over.
TEST(Gradient, WiresThatBridgeEachOtherHaveNoneTheOneBeforeThemHas) {
  Solver solver(Circuit{4,
                        {source(1, 0, emf, inner), resistor(1, 2, 0), resistor(1, 2, 0), resistor(2, 3, 0),
                         load(3, 0, Law::resistor, ohms)},
                        0});
  ASSERT_TRUE(solver.solve());
  const Gradient volts = solver.gradient_of_voltage(3, 0);
  EXPECT_EQ(volts.by_resistance[1], 0);
  EXPECT_EQ(volts.by_resistance[2], 0);
  EXPECT_NEAR(volts.by_resistance[3], -emf * ohms / (whole * whole), 1e-11);
}

TEST(Gradient, CurrentOfAWireOfNoResistanceThatFeedsTwoLoads) {
  const Circuit circuit{4,
                        {source(1, 0, emf, inner), resistor(1, 2, 0), resistor(2, 3, 0.05),
                         load(2, 0, Law::power, 60), load(3, 0, Law::resistor, 2)},
                        0};
  Solver solver(circuit);
  ASSERT_TRUE(solver.solve());
  const Gradient amperes = solver.gradient_of_current(1);
  for (const std::size_t b : {0U, 2U, 4U}) {
    const double found = central_difference(circuit, b, &Branch::resistance,
                                            1e-5 * circuit.branches[b].resistance, current_of(1));
    EXPECT_NEAR(amperes.by_resistance[b], found, 1e-6 * std::abs(found)) << b;
  }
  const double by_watts = central_difference(circuit, 3, &Branch::size, 1e-3, current_of(1));
  EXPECT_NEAR(amperes.by_size[3], by_watts, 1e-7);
  const double by_itself = forward_difference(circuit, 1, &Branch::resistance, 1e-5, current_of(1));
  EXPECT_NEAR(amperes.by_resistance[1], by_itself, 1e-6 * std::abs(by_itself));
}

TEST(Gradient, OfWhatCarriesNothingIsNothing) {
  Solver solver(Circuit{
      4,
      {source(1, 0, emf, inner), load(1, 0, Law::resistor, ohms), branch(1, 2, Law::open), resistor(2, 3, 1)},
      0});
  ASSERT_TRUE(solver.solve());
  for (const int dead : {2, 3}) {
    const Gradient amperes = solver.gradient_of_current(dead);
    for (std::size_t b = 0; b < 4; ++b) {
      EXPECT_EQ(amperes.by_resistance[b], 0);
      EXPECT_EQ(amperes.by_size[b], 0);
    }
  }
}

/// Behind a blocked isolator nothing flows, and what hangs there follows the side that it hangs on.
TEST(Gradient, WhatHangsBehindABlockedIsolatorHasNone) {
  Solver solver(Circuit{
      4, {source(1, 0, emf, inner), load(1, 0, Law::resistor, ohms), diode(1, 2), resistor(2, 3, 1)}, 0});
  ASSERT_TRUE(solver.solve());
  const Gradient there = solver.gradient_of_voltage(3, 0), here = solver.gradient_of_voltage(1, 0);
  EXPECT_NEAR(there.by_size[0], here.by_size[0], 1e-13);
  EXPECT_EQ(there.by_resistance[2], 0);
  EXPECT_NEAR(there.by_resistance[3], 0, 1e-13);
  EXPECT_EQ(solver.gradient_of_current(2).by_size[0], 0) << "of the isolator's own current";
}

TEST(Gradient, AChargerAtItsLimitFollowsNoSetPoint) {
  const Circuit circuit{2, {source(1, 0, 12.6, 0.01), charger(1, 0, 14.4, 30)}, 0};
  Solver solver(circuit);
  ASSERT_TRUE(solver.solve());
  const Gradient volts = solver.gradient_of_voltage(1, 0);
  EXPECT_EQ(volts.by_size[1], 0);
  EXPECT_NEAR(volts.by_size[0], 1, 1e-13);
  EXPECT_NEAR(volts.by_resistance[0], 30, 1e-11);
}

/// 12.6 V behind 20 mΩ, two converters to 5 V of 90 %: the second one's output hangs on the first's.
Circuit two_converters(double first_limit) {
  Branch first_in = load(1, 0, Law::power, 0), second_in = load(2, 3, Law::power, 0);
  Branch first = charger(2, 3, 9, first_limit), second = charger(4, 3, 5, 20);
  first.input = 1, second.input = 3;
  first.efficiency = second.efficiency = 0.9;
  first.idle = 2, second.idle = 1;
  return {5,
          {source(1, 0, 12.6, 0.02), first_in, first, second_in, second, load(4, 3, Law::resistor, 0.5),
           load(2, 3, Law::resistor, 6)},
          0};
}

TEST(Gradient, FollowsTwoConvertersInARow) {
  const Circuit circuit = two_converters(50);
  Solver solver(circuit);
  ASSERT_TRUE(solver.solve());
  const Gradient volts = solver.gradient_of_voltage(1, 0);
  // P1 = (9²/6 + P2)/0.9 + 2, P2 = 5²/R/0.9 + 1; with V the upper root of V² − E V + r P1 = 0, dV/dP1 =
  // −r/(2V−E)
  const double volts_in = solved(circuit).voltage[1];
  const double by_watts = -0.02 / (2 * volts_in - 12.6);
  EXPECT_NEAR(volts.by_resistance[5], by_watts / 0.9 * (-25 / (0.5 * 0.5) / 0.9), 1e-11);
  EXPECT_NEAR(volts.by_size[4], by_watts / 0.9 * (2 * 5 / 0.5 / 0.9), 1e-11);
  EXPECT_NEAR(volts.by_size[2], by_watts / 0.9 * (2 * 9 / 6.0), 1e-11);
  EXPECT_EQ(volts.by_size[1], 0) << "what an input takes follows from its output";
  EXPECT_EQ(volts.by_size[3], 0);
}

TEST(Gradient, FollowsAConverterAtItsLimit) {
  Circuit circuit = two_converters(8);
  circuit.branches[3].law = circuit.branches[4].law = circuit.branches[5].law = Law::open;
  circuit.branches[6].resistance = 1;  // 8 A make 8 V of it, below the 9 V that are wanted
  Solver solver(circuit);
  ASSERT_TRUE(solver.solve());
  const double volts_in = solved(circuit).voltage[1];
  const double by_watts = -0.02 / (2 * volts_in - 12.6);
  const Gradient volts = solver.gradient_of_voltage(1, 0);
  EXPECT_NEAR(volts.by_resistance[6], by_watts * 64 / 0.9, 1e-12);
  EXPECT_EQ(volts.by_size[2], 0);
}

TEST(Response, OfAPointIsWhatItSeesToGround) {
  const Solver solver = with_between(resistor(1, 2, 0.1));
  const std::vector<double> volts = solver.respond({0, 0, 1});
  const double before = 0.1 + inner;
  EXPECT_NEAR(volts[2], before * ohms / (before + ohms), 1e-14);
  EXPECT_NEAR(volts[1], volts[2] * inner / before, 1e-14);
  EXPECT_EQ(volts[0], 0);
}

// A load of constant power has the resistance −v²/P to small changes.
TEST(Response, OfAPowerLoadIsThatOfANegativeResistance) {
  Solver solver(Circuit{2, {source(1, 0, emf, 0.1), load(1, 0, Law::power, 100)}, 0});
  const double volts = solver.solve().value().voltage[1];
  const double negative = -volts * volts / 100;
  EXPECT_NEAR(solver.respond({0, 1})[1], 0.1 * negative / (0.1 + negative), 1e-12);
}

TEST(Response, MergedPointsMoveAlikeAndWhatIsFixedStays) {
  Solver solver(Circuit{
      4,
      {source(1, 0, emf, inner), resistor(1, 2, 0), load(2, 0, Law::resistor, ohms), source(3, 0, 5, 0)},
      0});
  ASSERT_TRUE(solver.solve());
  const std::vector<double> volts = solver.respond({0, 2, 0, 1});
  EXPECT_NEAR(volts[1], 2 * inner * ohms / whole, 1e-14);
  EXPECT_EQ(volts[2], volts[1]);
  EXPECT_EQ(volts[3], 0);
}

}  // namespace
}  // namespace ohmtrail::solve
