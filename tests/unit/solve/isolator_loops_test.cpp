// Loops of branches that all fix their voltage: who gives way, and what has no answer.
#include <cmath>

#include "unit/solve/circuits.hpp"

namespace ohmtrail::solve {
namespace {

std::optional<Failure> failure_of(Circuit circuit) {
  auto solution = Solver(std::move(circuit)).solve();
  return solution ? std::nullopt : std::optional(solution.error());
}

TEST(IsolatorLoops, TheShorterWayOverOneTakesTheWholeCurrent) {
  // 1 → 2 → 3 loses 0.8 V, 1 → 3 loses 0.5 V
  const Solution s = solved({4,
                             {source(1, 0, 12, 0.1), diode(1, 2, 0.4), diode(2, 3, 0.4), diode(1, 3, 0.5),
                              load(3, 0, Law::current, 10)},
                             0});
  EXPECT_NEAR(s.voltage[3], 12 - 1 - 0.5, 1e-12);
  EXPECT_NEAR(s.current[3], 10, 1e-12);
  EXPECT_EQ(s.current[1], 0);
  EXPECT_EQ(s.current[2], 0);
}

TEST(IsolatorLoops, TheWayOverTwoTakesItWhereOneLosesMore) {
  const Solution s = solved({4,
                             {source(1, 0, 12, 0.1), diode(1, 2, 0.2), diode(2, 3, 0.2), diode(1, 3, 0.5),
                              load(3, 0, Law::current, 10)},
                             0});
  EXPECT_NEAR(s.voltage[3], 12 - 1 - 0.4, 1e-12);
  EXPECT_NEAR(s.current[1], 10, 1e-12);
  EXPECT_EQ(s.current[3], 0);
}

TEST(IsolatorLoops, BackToBackTheyBlockTheWayBack) {
  const Solution s = solved(
      {3, {source(1, 0, 12, 0.1), diode(1, 2, 0.3), diode(2, 1, 0.3), load(2, 0, Law::current, 10)}, 0});
  EXPECT_NEAR(s.current[1], 10, 1e-12);
  EXPECT_EQ(s.current[2], 0);
}

TEST(IsolatorLoops, AChargerGivesItsLimitIntoAnIdealBattery) {
  const Solution s = solved(
      {3, {charger(1, 0, 14.4, 30), diode(1, 2, 0.7), source(2, 0, 12, 0), load(2, 0, Law::current, 5)}, 0});
  EXPECT_NEAR(s.current[1], 30, 1e-12);
  EXPECT_NEAR(s.voltage[1], 12.7, 1e-12);
  EXPECT_NEAR(s.current[2], 25, 1e-12) << "what the load leaves goes into the battery";
}

TEST(IsolatorLoops, AChargerBelowWhatAnIsolatorBringsIsOff) {
  const Solution s = solved(
      {3, {source(1, 0, 14, 0), diode(1, 2, 0.7), charger(2, 0, 13, 30), load(2, 0, Law::current, 5)}, 0});
  EXPECT_NEAR(s.voltage[2], 13.3, 1e-12);
  EXPECT_EQ(s.current[2], 0);
  EXPECT_NEAR(s.current[1], 5, 1e-12);
  EXPECT_TRUE(s.running[2]);
}

TEST(IsolatorLoops, BetweenIdealBatteriesTheyBlockUpToTheirDrop) {
  const Solution s = solved(
      {3, {source(1, 0, 12.5, 0), diode(1, 2, 0.7), source(2, 0, 12, 0), load(2, 0, Law::current, 5)}, 0});
  EXPECT_EQ(s.current[1], 0);
  EXPECT_NEAR(s.current[2], -5, 1e-12);
}

TEST(IsolatorLoops, BeyondTheirDropThereIsNoAnswer) {
  const auto failure = failure_of({3, {source(1, 0, 13, 0), diode(1, 2, 0.7), source(2, 0, 12, 0)}, 0});
  ASSERT_TRUE(failure);
  EXPECT_EQ(failure->kind, Failure::Kind::opposed_sources);
  EXPECT_EQ(failure->branches.front(), 1) << "the isolator that closes the loop";
  EXPECT_EQ(failure->branches.size(), 3U);
}

TEST(ShortedSources, AChargerGivesItsLimitIntoAShort) {
  const Solution s = solved({2, {charger(1, 0, 14, 30), resistor(1, 0, 0)}, 0});
  EXPECT_NEAR(s.current[1], 30, 1e-12);
  EXPECT_EQ(s.voltage[1], 0);
}

TEST(ShortedSources, ABatteryWithoutVoltageMayBeShorted) {
  const Solution s = solved(
      {3, {source(1, 0, 0, 0.1), resistor(1, 0, 0), source(2, 0, 12, 0.1), load(2, 0, Law::current, 1)}, 0});
  EXPECT_EQ(s.current[0], 0);
  EXPECT_NEAR(s.voltage[2], 11.9, 1e-12);
}

TEST(ShortedSources, ThroughAnIdealIsolatorIsAShortToo) {
  const auto failure = failure_of({2, {source(1, 0, 12, 0), diode(1, 0, 0.7)}, 0});
  ASSERT_TRUE(failure);
  EXPECT_EQ(failure->kind, Failure::Kind::opposed_sources);
}

}  // namespace

// Which point is at 0 V.
namespace {

TEST(References, WithoutOneTheFirstSourcesMinusIsAtZero) {
  const Solution s = solved({3, {resistor(2, 1, 0.1), source(2, 1, 12, 0.1), source(2, 1, 12, 0.1)}, -1});
  EXPECT_EQ(s.voltage[1], 0);
  EXPECT_GT(s.voltage[2], 0);
  EXPECT_TRUE(std::isnan(s.voltage[0]));
}

TEST(References, OneThatNothingFeedsIsNoneForTheOthers) {
  const Solution s = solved({4, {source(1, 0, 12, 0.1), resistor(2, 3, 1)}, 2});
  EXPECT_EQ(s.voltage[0], 0);
  EXPECT_TRUE(std::isnan(s.voltage[2]));
}

TEST(References, AnyPointMayBeIt) {
  const Solution s =
      solved({3, {source(1, 0, 12, 0.1), resistor(1, 2, 1), load(2, 0, Law::resistor, 4.9)}, 2});
  EXPECT_EQ(s.voltage[2], 0);
  EXPECT_NEAR(s.voltage[1], 2, 1e-12);
  EXPECT_NEAR(s.voltage[0], -9.8, 1e-12);
}

}  // namespace

// What the last solve left of chargers and isolators is where the next one starts.
namespace {

TEST(SolvingAgain, AChargerLeavesItsLimitWhereTheLoadShrinks) {
  Solver solver({2, {source(1, 0, 12.6, 0.01), charger(1, 0, 12.61, 4), load(1, 0, Law::current, 10)}, 0});
  EXPECT_NEAR(solver.solve().value().current[1], -4, 1e-12);
  solver.set_size(2, 1);
  const Solution s = solver.solve().value();
  EXPECT_NEAR(s.voltage[1], 12.61, 1e-12);
  EXPECT_NEAR(s.current[1], -2, 1e-9) << "the load's ampere and one into the battery";
}

TEST(SolvingAgain, AChargerComesOnWhereTheBatterySinks) {
  Solver solver({2, {source(1, 0, 13, 0.01), charger(1, 0, 12.8, 50)}, 0});
  EXPECT_EQ(solver.solve().value().current[1], 0);
  solver.set_size(0, 12.6);
  EXPECT_NEAR(solver.solve().value().current[1], -20, 1e-9);
}

TEST(SolvingAgain, AnIsolatorOpensForALoadThatComesOn) {
  Solver solver({3, {source(1, 0, 12.7, 0.01), diode(1, 2), load(2, 0, Law::current, 0)}, 0});
  EXPECT_EQ(solver.solve().value().current[1], 0);
  solver.set_size(2, 5);
  const Solution s = solver.solve().value();
  EXPECT_NEAR(s.current[1], 5, 1e-12);
  EXPECT_NEAR(s.voltage[2], 12.7 - 0.05 - 0.7, 1e-12);
}

TEST(SolvingAgain, AnIdealBatteryAndAChargerOfOtherVoltages) {
  Solver solver({3, {source(1, 0, 12, 0), resistor(1, 2, 0.1), load(2, 0, Law::resistor, 1.1)}, 0});
  EXPECT_NEAR(solver.solve().value().current[1], 10, 1e-12);
  solver.set_size(0, 24);
  EXPECT_NEAR(solver.solve().value().current[1], 20, 1e-12);
  Solver charged({2, {source(1, 0, 12.6, 0.01), charger(1, 0, 13, 500)}, 0});
  EXPECT_NEAR(charged.solve().value().current[1], -40, 1e-9);
  charged.set_size(1, 13.2);
  EXPECT_NEAR(charged.solve().value().current[1], -60, 1e-9);
}

TEST(SolvingAgain, AMovedSolverGoesOn) {
  Solver solver({2, {source(1, 0, 12, 0.1), load(1, 0, Law::current, 5)}, 0});
  ASSERT_TRUE(solver.solve());
  Solver taken = std::move(solver);
  taken.set_size(1, 10);
  EXPECT_NEAR(taken.solve().value().voltage[1], 11, 1e-13);
  Solver other({2, {source(1, 0, 24, 0.1), load(1, 0, Law::current, 5)}, 0});
  other = std::move(taken);
  EXPECT_EQ(other.circuit().branches[1].size, 10);
  EXPECT_NEAR(other.solve().value().voltage[1], 11, 1e-13);
}

}  // namespace
}  // namespace ohmtrail::solve
