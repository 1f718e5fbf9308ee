// Chargers, isolators and converters in every mode they have.
#include <cmath>

#include "unit/solve/circuits.hpp"

namespace ohmtrail::solve {
namespace {

TEST(Modes, ChargerHoldsItsVoltageExactly) {
  const Solution s =
      solved({2, {source(1, 0, 12.6, 0.01), charger(1, 0, 14.4, 500), load(1, 0, Law::current, 20)}, 0});
  EXPECT_EQ(s.voltage[1], 14.4);
  EXPECT_NEAR(s.current[0], 180, 1e-11);
  EXPECT_NEAR(s.current[1], -200, 1e-11);
  EXPECT_EQ(s.drop[1], 14.4);
}

TEST(Modes, ChargerDeliversItsLimitWhereTheBatteryTakesMore) {
  const Solution s = solved({2, {source(1, 0, 12.6, 0.01), charger(1, 0, 14.4, 30)}, 0});
  EXPECT_NEAR(s.current[1], -30, 1e-13);
  EXPECT_NEAR(s.voltage[1], 12.9, 1e-13);
}

TEST(Modes, ChargerBelowTheBatteryIsOff) {
  const Solution s =
      solved({2, {source(1, 0, 12.6, 0.01), charger(1, 0, 12.0, 30), load(1, 0, Law::current, 5)}, 0});
  EXPECT_EQ(s.current[1], 0);
  EXPECT_NEAR(s.voltage[1], 12.55, 1e-13);
  EXPECT_TRUE(s.running[1]);
}

TEST(Modes, HigherOfTwoChargersWins) {
  const Solution s =
      solved({2, {charger(1, 0, 13.8, 50), charger(1, 0, 14.2, 50), load(1, 0, Law::current, 20)}, 0});
  EXPECT_EQ(s.voltage[1], 14.2);
  EXPECT_EQ(s.current[0], 0);
  EXPECT_NEAR(s.current[1], -20, 1e-13);
}

TEST(Modes, HigherChargerAtItsLimitLetsTheOtherHold) {
  const Solution s =
      solved({2, {charger(1, 0, 13.8, 50), charger(1, 0, 14.2, 15), load(1, 0, Law::current, 20)}, 0});
  EXPECT_EQ(s.voltage[1], 13.8);
  EXPECT_NEAR(s.current[0], -5, 1e-13);
  EXPECT_NEAR(s.current[1], -15, 1e-13);
}

TEST(Modes, LikeChargersShareALoad) {
  const Solution s =
      solved({2, {charger(1, 0, 14, 50), charger(1, 0, 14, 50), load(1, 0, Law::current, 20)}, 0});
  EXPECT_NEAR(s.current[0], -10, 1e-13);
  EXPECT_NEAR(s.current[1], -10, 1e-13);
}

TEST(Modes, ChargerAloneFeedsAPowerLoadUpToItsLimit) {
  const Circuit circuit{2, {charger(1, 0, 14, 10), load(1, 0, Law::power, 130)}, 0};
  EXPECT_NEAR(solved(circuit).current[1], 130.0 / 14, 1e-12);
  Circuit more = circuit;
  more.branches[1].size = 200;
  const Solution s = solved(more);
  ASSERT_TRUE(s.collapse);
  EXPECT_NEAR(s.collapse->most_power, 140, 1e-7);
  EXPECT_NEAR(s.collapse->at_volts, 14, 1e-9);
}

TEST(Modes, ConstantCurrentBeyondTheOnlyChargerIsAFailure) {
  const auto s = Solver({2, {charger(1, 0, 14, 10), load(1, 0, Law::current, 15)}, 0}).solve();
  ASSERT_FALSE(s);
  EXPECT_EQ(s.error().kind, Failure::Kind::overloaded);
  EXPECT_EQ(s.error().branches, std::vector<int>{0});
}

TEST(Modes, BatteryChargerSplitOverIsolators) {
  // charger → two isolators → two batteries, 14.4 − 0.7 V at both, each by its own resistance
  const Solution s = solved({4,
                             {source(2, 0, 12.7, 0.01), source(3, 0, 12.2, 0.02), charger(1, 0, 14.4, 500),
                              diode(1, 2), diode(1, 3)},
                             0});
  EXPECT_NEAR(s.current[3], (14.4 - 0.7 - 12.7) / 0.01, 1e-9);
  EXPECT_NEAR(s.current[4], (14.4 - 0.7 - 12.2) / 0.02, 1e-9);
  EXPECT_NEAR(s.heat[3], 0.7 * s.current[3], 1e-9);
}

TEST(Modes, IsolatorKeepsTheFullerBatteryFromTheEmptierOne) {
  const Solution s = solved({4,
                             {source(2, 0, 12.7, 0.01), source(3, 0, 11.0, 0.01), diode(1, 2), diode(1, 3),
                              load(3, 0, Law::current, 10)},
                             0});
  EXPECT_EQ(s.current[2], 0);
  EXPECT_EQ(s.current[3], 0);
  EXPECT_NEAR(s.voltage[3], 10.9, 1e-12);
}

TEST(Modes, WhatHangsBehindABlockedIsolatorFloatsWithoutCurrent) {
  const Solution s = solved({3, {source(1, 0, 12.7, 0.01), diode(1, 2), load(1, 0, Law::resistor, 1)}, 0});
  EXPECT_EQ(s.current[1], 0);
  EXPECT_NEAR(s.voltage[2], s.voltage[1], 1e-12);
}

TEST(Modes, LoadBehindAnIsolatorTheWrongWayRoundGetsNothing) {
  const Solution s = solved({3, {source(1, 0, 12.7, 0.01), diode(2, 1), load(2, 0, Law::power, 50)}, 0});
  EXPECT_EQ(s.current[2], 0);
  EXPECT_FALSE(s.running[2]);
  const Solution r = solved({3, {source(1, 0, 12.7, 0.01), diode(2, 1), load(2, 0, Law::resistor, 5)}, 0});
  EXPECT_EQ(r.current[2], 0);
  EXPECT_NEAR(r.voltage[2], 0, 1e-12);
}

TEST(Modes, IsolatorWithResistance) {
  Branch real = diode(1, 2, 0.5);
  real.resistance = 0.02;
  const Solution s = solved({3, {source(1, 0, 12.5, 0.03), real, load(2, 0, Law::resistor, 1.15)}, 0});
  EXPECT_NEAR(s.current[1], 10, 1e-12);
  EXPECT_NEAR(s.drop[1], 0.7, 1e-12);
}

/// 12 V battery, converter to 5 V at 90 %: what goes in is what comes out over 0.9, plus idle.
Circuit with_converter(double load_amperes) {
  Branch input = load(2, 0, Law::power, 0, 9);
  Branch output = charger(3, 4, 5, 20);
  output.input = 2;
  output.efficiency = 0.9;
  output.idle = 2;
  return {
      5,
      {source(1, 0, 12.6, 0.02), resistor(1, 2, 0.03), input, output, load(3, 4, Law::current, load_amperes)},
      0};
}

TEST(Modes, ConverterTakesWhatItsOutputDelivers) {
  const Solution s = solved(with_converter(8));
  EXPECT_NEAR(s.drop[2] * s.current[2], 5 * 8 / 0.9 + 2, 1e-10);
  EXPECT_NEAR(s.current[3], -8, 1e-12);
}

TEST(Modes, ConverterThatDropsOutFeedsNothing) {
  Circuit circuit = with_converter(8);
  circuit.branches[1].resistance = 0.8;
  circuit.branches[2].stops_below = 10;
  circuit.branches[4] = load(3, 4, Law::resistor, 0.8);
  const Solution s = solved(circuit);
  EXPECT_FALSE(s.running[2]);
  EXPECT_FALSE(s.running[3]);
  EXPECT_EQ(s.current[2], 0);
  EXPECT_EQ(s.current[4], 0);
}

TEST(Modes, ConverterGradientFollowsTheOutput) {
  Circuit circuit = with_converter(8);
  Branch wire = resistor(3, 3, 0.05);
  wire.to = 5;
  circuit.points = 6;
  circuit.branches[4] = load(5, 4, Law::resistor, 0.6);
  circuit.branches.push_back(wire);
  Solver solver(circuit);
  ASSERT_TRUE(solver.solve());
  const Gradient g = solver.gradient_of_voltage(2, 0);
  for (std::size_t b : {1u, 4u, 5u}) {
    const double step = 1e-5 * circuit.branches[b].resistance;
    Circuit up = circuit;
    up.branches[b].resistance += step;
    Circuit down = circuit;
    down.branches[b].resistance -= step;
    const double difference = (solved(up).voltage[2] - solved(down).voltage[2]) / (2 * step);
    EXPECT_NEAR(g.by_resistance[b], difference, 1e-5 * std::abs(difference) + 1e-9);
  }
  Circuit up = circuit;
  up.branches[3].size += 1e-4;
  Circuit down = circuit;
  down.branches[3].size -= 1e-4;
  EXPECT_NEAR(g.by_size[3], (solved(up).voltage[2] - solved(down).voltage[2]) / 2e-4, 1e-7);
}

TEST(Modes, GradientByASetPoint) {
  Circuit circuit{
      3,
      {source(2, 0, 12.6, 0.02), charger(1, 0, 14.0, 500), resistor(1, 2, 0.03), load(2, 0, Law::power, 60)},
      0};
  Solver solver(circuit);
  ASSERT_TRUE(solver.solve());
  const Gradient volts = solver.gradient_of_voltage(2, 0);
  const Gradient amperes = solver.gradient_of_current(1);
  Circuit up = circuit;
  up.branches[1].size += 1e-4;
  Circuit down = circuit;
  down.branches[1].size -= 1e-4;
  EXPECT_NEAR(volts.by_size[1], (solved(up).voltage[2] - solved(down).voltage[2]) / 2e-4, 1e-7);
  EXPECT_NEAR(amperes.by_size[1], (solved(up).current[1] - solved(down).current[1]) / 2e-4, 1e-5);
}

}  // namespace
}  // namespace ohmtrail::solve
