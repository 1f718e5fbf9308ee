#include "ohmtrail/trade/fin_turns.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

#include "ohmtrail/trade/conductor.hpp"
#include "ohmtrail/trade/gauge.hpp"

namespace ohmtrail::trade {
namespace {

using units::HeatTransferCoefficient;
using units::Power;
using units::Temperature;
using units::TemperatureDifference;
using units::Time;

const std::vector<Fin> pair{fin_of(metric(35), ConductorKind::bare_copper),
                            fin_of(metric(35), ConductorKind::bare_copper)};
constexpr Temperature ambient{25};

double rise_after(double lasting, double in_turns, double on, std::optional<double> rest = {},
                  const std::vector<Fin>& fins = pair) {
  const std::optional<Time> pause = rest ? std::optional(Time{*rest}) : std::nullopt;
  return joint_rise_in_turns({Power{lasting}, Power{in_turns}, Time{on}, pause}, fins, ambient).si();
}

double steady(double watts, const std::vector<Fin>& fins = pair) {
  return joint_rise(Power{watts}, fins, ambient).si();
}

/// Copper of 35 mm² stores 3.45 MJ/(m³ K) · 35e-6 m² = 121 J/(m K); 12.5 mm over the jacket at 15 W/(m² K)
/// gives off 0.59 W/(m K): 205 s.
TEST(FinTimeConstant, IsWhatIsStoredOverWhatIsGivenOff) {
  const auto constant = fin_time_constant(pair[0], HeatTransferCoefficient{15});
  EXPECT_NEAR(constant.si(), 205, 15);
  EXPECT_NEAR(ratio(constant, fin_time_constant(pair[0], HeatTransferCoefficient{30})), 2, 1e-12);
}

TEST(FinWarming, BeginsWithTheRootOfTimeAndEndsSteady) {
  EXPECT_EQ(fin_warming(Time{0}, Time{100}), 0);
  EXPECT_NEAR(fin_warming(Time{0.01}, Time{100}), 2 / std::sqrt(M_PI) * 0.01, 1e-6);
  EXPECT_NEAR(fin_warming(Time{1e4}, Time{100}), 1, 1e-12);
  EXPECT_EQ(fin_warming(Time{1}, Time{0}), 1);  // nothing is stored
}

TEST(FinTurnShare, OneTurnFromColdIsPlainWarming) {
  EXPECT_EQ(fin_turn_share(Time{60}, {}, Time{200}), fin_warming(Time{60}, Time{200}));
}

TEST(FinTurnShare, WithoutAPauseItIsSteady) {
  for (const double on : {0.1, 5.0, 60.0, 3000.0})
    EXPECT_NEAR(fin_turn_share(Time{on}, Time{0}, Time{200}), 1, 1e-9) << on;
}

TEST(FinTurnShare, MuchShorterTurnsThanTheTimeConstantCountByTheirMean) {
  EXPECT_NEAR(fin_turn_share(Time{0.01}, Time{0.03}, Time{1000}), 0.25, 0.01);
}

TEST(FinTurnShare, RarerTurnsComeNearerToASingleOne) {
  double before = 1;
  for (const double rest : {1.0, 30.0, 300.0, 3000.0, 1e6}) {
    const double share = fin_turn_share(Time{60}, Time{rest}, Time{200});
    EXPECT_LT(share, before) << rest;
    EXPECT_GT(share, fin_warming(Time{60}, Time{200}) - 1e-6) << rest;
    before = share;
  }
  EXPECT_NEAR(before, fin_warming(Time{60}, Time{200}), 1e-6);
}

TEST(JointRiseInTurns, ALongTurnIsSteady) {
  EXPECT_NEAR(rise_after(0, 10, 1e6), steady(10), 1e-6);
  EXPECT_NEAR(rise_after(0, 10, 60, 0), steady(10), 1e-6);
}

TEST(JointRiseInTurns, WhatLastsCountsInFull) {
  EXPECT_NEAR(rise_after(10, 0, 1), steady(10), 1e-6);
  EXPECT_GT(rise_after(5, 5, 10), rise_after(0, 10, 10));
  EXPECT_LT(rise_after(5, 5, 10), steady(10));
}

/// At first nothing is given off: 2 q √t / √(π k ρ c) in each cable, whatever h is.
TEST(JointRiseInTurns, AShortTurnIsAHalfSpaceOfCopper) {
  const auto& fin = pair[0];
  const double root = std::sqrt(fin.conductivity.si() * fin.area.si() * fin.stored.si());
  const double by_hand = 2 * std::sqrt(1.0 / M_PI) * 5 / root;
  EXPECT_NEAR(rise_after(0, 10, 1) / by_hand, 1, 0.01);
}

TEST(JointRiseInTurns, UnlikeCablesShareAShortTurnByWhatTheyStore) {
  const std::vector<Fin> unlike{fin_of(metric(10), ConductorKind::bare_copper),
                                fin_of(metric(95), ConductorKind::bare_copper)};
  double roots = 0;
  for (const auto& fin : unlike) roots += std::sqrt(fin.conductivity.si() * fin.area.si() * fin.stored.si());
  EXPECT_NEAR(rise_after(0, 10, 1, {}, unlike) / (2 * std::sqrt(1 / M_PI) * 10 / roots), 1, 0.02);
  EXPECT_NEAR(rise_after(0, 10, 1e6, {}, unlike), steady(10, unlike), 1e-6);
}

TEST(JointRiseInTurns, MoreHeatLongerTurnsAndShorterPausesAreWarmer) {
  EXPECT_GT(rise_after(0, 20, 60), rise_after(0, 10, 60));
  EXPECT_GT(rise_after(0, 10, 120), rise_after(0, 10, 60));
  EXPECT_GT(rise_after(0, 10, 60, 60), rise_after(0, 10, 60, 600));
  EXPECT_GT(rise_after(0, 10, 60, 600), rise_after(0, 10, 60));
}

TEST(JointRiseInTurns, WithoutHeatOrCablesAsTheSteadyOne) {
  EXPECT_EQ(rise_after(0, 0, 60), 0);
  EXPECT_TRUE(std::isnan(rise_after(0, 10, 60, {}, {})));
}

}  // namespace
}  // namespace ohmtrail::trade
