// Networks that are broken, torn or asked for too much.
#include <cmath>

#include "unit/solve/circuits.hpp"

namespace ohmtrail::solve {
namespace {

TEST(Trouble, ShortedSourceNamesTheLoopAndItsCurrent) {
  const auto s = Solver({3, {source(1, 0, 12, 0.004), resistor(1, 2, 0), resistor(2, 0, 0)}, 0}).solve();
  ASSERT_FALSE(s);
  EXPECT_EQ(s.error().kind, Failure::Kind::shorted_source);
  EXPECT_NEAR(s.error().amperes, 3000, 1e-9);
  EXPECT_EQ(s.error().branches.size(), 3u);
  EXPECT_EQ(s.error().branches.front(), 0);
}

TEST(Trouble, IdealSourceShortedByAWire) {
  const auto s = Solver({2, {source(1, 0, 12, 0), resistor(1, 0, 0)}, 0}).solve();
  ASSERT_FALSE(s);
  EXPECT_EQ(s.error().kind, Failure::Kind::shorted_source);
  EXPECT_TRUE(std::isinf(s.error().amperes));
}

TEST(Trouble, OpposedIdealSources) {
  const auto s = Solver({2, {source(1, 0, 12, 0), source(1, 0, 13, 0)}, 0}).solve();
  ASSERT_FALSE(s);
  EXPECT_EQ(s.error().kind, Failure::Kind::opposed_sources);
  EXPECT_EQ(s.error().branches.size(), 2u);
}

TEST(Trouble, LikeIdealSourcesShare) {
  const Solution s = solved({2, {source(1, 0, 12, 0), source(1, 0, 12, 0), load(1, 0, Law::resistor, 1)}, 0});
  EXPECT_NEAR(s.current[0], -6, 1e-13);
  EXPECT_NEAR(s.current[1], -6, 1e-13);
}

TEST(Trouble, ZeroOhmRingSplitsEvenly) {
  const Solution s = solved(
      {3, {source(1, 0, 12, 0.1), resistor(1, 2, 0), resistor(1, 2, 0), load(2, 0, Law::current, 10)}, 0});
  EXPECT_NEAR(s.current[1], 5, 1e-13);
  EXPECT_NEAR(s.current[2], 5, 1e-13);
  EXPECT_EQ(s.drop[1], 0);
  EXPECT_LE(s.current_residual, 1e-14);
}

TEST(Trouble, IslandWithoutSourceHasNoVoltage) {
  const Solution s = solved(
      {4,
       {source(1, 0, 12, 0.1), load(1, 0, Law::current, 1), resistor(2, 3, 1), load(2, 3, Law::power, 5)},
       0});
  EXPECT_TRUE(std::isnan(s.voltage[2]));
  EXPECT_TRUE(std::isnan(s.drop[2]));
  EXPECT_EQ(s.current[2], 0);
  EXPECT_FALSE(std::isnan(s.voltage[1]));
}

TEST(Trouble, SecondSourcedIslandHasItsOwnZero) {
  const Solution s =
      solved({4, {source(1, 0, 12, 0.1), source(3, 2, 24, 0.1), load(3, 2, Law::current, 10)}, 0});
  EXPECT_EQ(s.voltage[2], 0);
  EXPECT_NEAR(s.voltage[3], 23, 1e-12);
}

TEST(Trouble, OpenedReturnLeavesTheLoadWithoutVolts) {
  for (const Law law : {Law::power, Law::current, Law::resistor}) {
    const Solution s = solved(
        {4, {source(1, 0, 12, 0.1), resistor(1, 2, 0.01), load(2, 3, law, 10), branch(3, 0, Law::open)}, 0});
    EXPECT_EQ(s.current[2], 0);
    EXPECT_NEAR(s.drop[2], 0, 1e-12);
    EXPECT_NEAR(s.voltage[3], 12, 1e-12);
    EXPECT_EQ(s.running[2], law == Law::resistor);
    EXPECT_TRUE(std::isnan(s.resistance[3]));
    EXPECT_NEAR(s.drop[3], 12, 1e-12);
  }
}

TEST(Trouble, TwoLoadsOnALostNegativeAreBothDead) {
  const Solution s = solved(
      {4,
       {source(1, 0, 12, 0.1), resistor(1, 2, 0.01), load(1, 3, Law::power, 10), load(2, 3, Law::power, 20)},
       0});
  EXPECT_FALSE(s.running[2]);
  EXPECT_FALSE(s.running[3]);
  EXPECT_EQ(s.current[2], 0);
  EXPECT_NEAR(s.voltage[3], 12, 1e-12);
}

TEST(Trouble, NoCurrentAnywhereIsExactlyNone) {
  const Solution s = solved({3, {source(1, 0, 12.6, 0.004), resistor(1, 2, 1e-6)}, 0});
  EXPECT_EQ(s.current[0], 0);
  EXPECT_EQ(s.current[1], 0);
  EXPECT_EQ(s.current_residual, 0);
  EXPECT_EQ(s.power_residual, 0);
  EXPECT_EQ(s.voltage[2], 12.6);
}

TEST(Trouble, LoadBelowItsLeastVoltageDropsOut) {
  const Circuit circuit{3,
                        {source(1, 0, 12, 0.1), resistor(1, 2, 0.3), load(2, 0, Law::power, 70, 10.5),
                         load(2, 0, Law::power, 5)},
                        0};
  const Solution s = solved(circuit);
  EXPECT_FALSE(s.running[2]);
  EXPECT_TRUE(s.running[3]);
  EXPECT_FALSE(s.collapse);
  EXPECT_EQ(s.current[2], 0);
}

TEST(Trouble, LoadWithoutSolutionDropsOutWhereItWouldHaveStopped) {
  const Solution s =
      solved({3, {source(1, 0, 12, 0.1), resistor(1, 2, 0.3), load(2, 0, Law::power, 500, 9)}, 0});
  EXPECT_FALSE(s.running[2]);
  EXPECT_FALSE(s.collapse);
  EXPECT_NEAR(s.voltage[2], 12, 1e-12);
}

TEST(Trouble, WorstLoadGoesFirstAndMaySaveTheOther) {
  const Circuit circuit{4,
                        {source(1, 0, 12, 0.05), resistor(1, 2, 0.05), resistor(2, 3, 0.2),
                         load(2, 0, Law::power, 60, 10.9), load(3, 0, Law::power, 60, 10.5)},
                        0};
  const Solution s = solved(circuit);
  EXPECT_TRUE(s.running[3]);
  EXPECT_FALSE(s.running[4]);
}

TEST(Trouble, CollapseScalesAllPowerLoadsOfTheIslandAlike) {
  // two like loads on like wires behind a common source: the fold is that of 2P on R + r/2
  const Circuit circuit{4,
                        {source(1, 0, 24, 0.1), resistor(1, 2, 0.2), resistor(1, 3, 0.2),
                         load(2, 0, Law::power, 900), load(3, 0, Law::power, 900)},
                        0};
  const Solution s = solved(circuit);
  ASSERT_TRUE(s.collapse);
  const double most = 24.0 * 24 / (4 * 0.2) / 2;
  EXPECT_NEAR(s.collapse->share, most / 900, 1e-10);
  EXPECT_NEAR(s.collapse->most_power, most, 1e-7);
  EXPECT_NEAR(s.drop[3] * s.current[3], most, 1e-7);
  EXPECT_EQ(s.collapse->branch, 3);
}

TEST(Trouble, CollapseInOneIslandLeavesTheOtherAlone) {
  const Circuit circuit{6,
                        {source(1, 0, 12, 0.1), resistor(1, 2, 0.1), load(2, 0, Law::power, 900),
                         source(4, 3, 12, 0.1), resistor(4, 5, 0.1), load(5, 3, Law::power, 100)},
                        0};
  const Solution s = solved(circuit);
  ASSERT_TRUE(s.collapse);
  EXPECT_EQ(s.collapse->branch, 2);
  EXPECT_NEAR(s.drop[5] * s.current[5], 100, 1e-9);
}

TEST(Trouble, CollapseWithABatteryAndAChargerAtItsLimit) {
  // the charger adds its 10 A up to its set point: P(v) = v ((12 − v)/0.3 + 10), largest at v = 7.5 V
  const Solution s =
      solved({2, {source(1, 0, 12, 0.3), charger(1, 0, 14, 10), load(1, 0, Law::power, 400)}, 0});
  ASSERT_TRUE(s.collapse);
  EXPECT_NEAR(s.collapse->at_volts, 7.5, 1e-5);
  EXPECT_NEAR(s.collapse->most_power, 7.5 * (4.5 / 0.3 + 10), 1e-7);
}

TEST(Trouble, CollapseWithAWarmWire) {
  Branch wire = resistor(1, 2, 0.1);
  wire.heating = heating_at(0.00393, 25, 80, 60);
  const Solution s = solved({3, {source(1, 0, 12, 0.05), wire, load(2, 0, Law::power, 400)}, 0});
  ASSERT_TRUE(s.collapse);
  // by scanning the current: P(i) = i (12 − 0.05 i − r0 i − r2 i³)
  double most = 0;
  const double r0 = 0.1 * (1 + 0.00393 * 5);
  const double r2 = 0.1 * 0.00393 * 80 / 3600;
  for (double i = 0; i < 80; i += 1e-4) most = std::max(most, i * (12 - 0.05 * i - r0 * i - r2 * i * i * i));
  EXPECT_NEAR(s.collapse->most_power, most, 1e-6);
}

TEST(Trouble, ReverseConnectedPowerLoadGetsNoPower) {
  const Solution s = solved({3, {source(1, 0, 12, 0.1), resistor(1, 2, 0.1), load(0, 2, Law::power, 10)}, 0});
  ASSERT_TRUE(s.collapse);
  EXPECT_NEAR(s.collapse->most_power, 0, 1e-12);
}

TEST(Trouble, GigohmBesideMicroohm) {
  const Solution s = solved(
      {4, {source(1, 0, 12, 1e-3), resistor(1, 2, 1e6), resistor(2, 3, 1e-6), resistor(3, 0, 1e6)}, 0});
  EXPECT_NEAR(s.drop[2] / (12 / 2e6 * 1e-6), 1, 1e-8);
}

TEST(Trouble, SolvingAgainAfterEveryKindOfChange) {
  Solver solver({3, {source(1, 0, 12, 0.01), resistor(1, 2, 0.02), load(2, 0, Law::power, 300)}, 0});
  const auto volts = [&] { return solver.solve().value().voltage[2]; };
  const auto upper = [](double e, double r, double p) { return (e + std::sqrt(e * e - 4 * r * p)) / 2; };
  EXPECT_NEAR(volts(), upper(12, 0.03, 300), 1e-12);
  solver.set_resistance(1, 0.05);
  EXPECT_NEAR(volts(), upper(12, 0.06, 300), 1e-12);
  solver.set_resistance(1, 0);
  EXPECT_NEAR(volts(), upper(12, 0.01, 300), 1e-12);
  solver.set_resistance(1, 0.02);
  solver.set_size(0, 13);
  EXPECT_NEAR(volts(), upper(13, 0.03, 300), 1e-12);
  solver.set_size(2, 5000);
  EXPECT_TRUE(solver.solve().value().collapse);
  solver.set_size(2, 10);
  EXPECT_NEAR(volts(), upper(13, 0.03, 10), 1e-12);
}

}  // namespace
}  // namespace ohmtrail::solve
