#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "ohmtrail/diagnose/rank.hpp"
#include "ohmtrail/trade/conductor.hpp"
#include "ohmtrail/trade/gauge.hpp"
#include "rank_rig.hpp"

/// Wires that are as good as their table value and still too thin.
namespace ohmtrail::diagnose {
namespace {

using namespace test;
using units::Current;
using units::Length;
using units::Resistance;

/// 14 AWG, 6 m out and back, 20 A, critical: loses more than 3 % of 12 V.
netlist::System thin(double amps = 20, int gauge = 14) {
  auto system = out_and_back(amps);
  for (auto& run : system.runs) {
    run.wire.sound.reset();
    run.gauge = trade::awg(gauge);
    run.length = Length{6};
  }
  system.loads[0].load_class = netlist::LoadClass::critical;
  return system;
}

std::vector<HotSpot> rank_all(const netlist::System& system) {
  return rank(system, solve_all(system));
}

/// 33 CFR 183.425 Table 5 has no 13, 11, 9, 7 and 5 AWG.
bool is_sold(int number) {
  return number < 5 || number % 2 == 0;
}

bool within(const netlist::System& system) {
  return solve_one(system, system.cases[0]).loads[0].within;
}

TEST(Undersized, InsideTheLimitNothingIsTooThin) {
  const auto system = thin(2);
  ASSERT_TRUE(within(system));
  EXPECT_TRUE(rank_all(system).empty());
}

/// One run alone cannot cure it, both together can: the smallest common gauge, found here by trying each.
TEST(Undersized, NamesTheSmallestGaugeThatMeetsTheLimit) {
  const auto system = thin();
  ASSERT_FALSE(within(system));
  const auto spots = rank_all(system);
  ASSERT_EQ(spots.size(), 2U);
  std::string smallest;
  for (int number = 14; number >= -3 && smallest.empty(); --number)
    if (is_sold(number) && within(thin(20, number))) smallest = trade::print(trade::awg(number));
  ASSERT_FALSE(smallest.empty());
  for (const auto& spot : spots) {
    EXPECT_EQ(spot.cause, Cause::undersized);
    EXPECT_EQ(spot.role, network::Role::wire);
    EXPECT_EQ(spot.better_gauge, smallest);
    EXPECT_NE(spot.fix.find(smallest), std::string::npos) << spot.fix;
    EXPECT_NEAR(spot.sound_resistance.value() / spot.resistance, 1, 1e-12);
  }
}

TEST(Undersized, ExcessIsAgainstTheSmallestGaugeThatMeetsTheLimit) {
  const auto system = thin();
  const auto spots = rank_all(system);
  ASSERT_FALSE(spots.empty());
  const auto gauge = trade::parse_gauge(spots[0].better_gauge);
  ASSERT_TRUE(gauge.has_value());
  const auto& run = system.runs[0];
  const double thin_cold = trade::wire_resistance_at_20C(run.gauge, run.length, run.conductor).si();
  const double thick_cold = trade::wire_resistance_at_20C(*gauge, run.length, run.conductor).si();
  EXPECT_NEAR(spots[0].excess.value(), spots[0].resistance * (1 - thick_cold / thin_cold), 1e-9);
}

/// A return conductor shares its run's gauge: one run alone, and both its wires are named.
TEST(Undersized, BothConductorsOfARunAreOneChoice) {
  auto system = thin();
  auto& run = system.runs[0];
  run.return_conductor = netlist::ReturnConductor{};
  run.return_conductor->from = "l-";
  run.return_conductor->to = "b-";
  run.return_conductor->end_from = run.end_from;
  run.return_conductor->end_to = run.end_to;
  system.runs.pop_back();
  const auto spots = rank_all(system);
  ASSERT_EQ(spots.size(), 2U);
  EXPECT_NE(find_id(spots, "out/wire"), spots.end());
  EXPECT_NE(find_id(spots, "out/return-wire"), spots.end());
}

/// A short thick feed before a long thin branch: the branch alone cures it, the feed alone cannot.
TEST(Undersized, OnlyTheRunThatCuresItIsNamed) {
  auto system = thin(8);
  system.runs[1].gauge = trade::awg(-3);
  system.runs[1].length = Length{0.5};
  ASSERT_FALSE(within(system)) << "the example must break its limit";
  const auto spots = rank_all(system);
  ASSERT_EQ(spots.size(), 1U);
  EXPECT_EQ(spots[0].id, "out/wire");
}

/// Either of two runs in a row would cure it; the one whose cure takes less metal is named, and it alone.
TEST(Undersized, OfTwoThatCureItTheOneWithLessMetalIsNamed) {
  auto system = thin(4.2);
  system.runs[0].length = Length{6};
  system.runs[1].length = Length{5};
  const auto cured_by = [&](std::size_t run) {
    for (int number = 14; number >= -3; --number) {
      if (!is_sold(number)) continue;
      auto changed = system;
      changed.runs[run].gauge = trade::awg(number);
      if (within(changed))
        return (changed.runs[run].gauge.area.si() - system.runs[run].gauge.area.si()) *
               system.runs[run].length.si();
    }
    return std::numeric_limits<double>::infinity();
  };
  ASSERT_FALSE(within(system));
  ASSERT_TRUE(std::isfinite(cured_by(0)) && std::isfinite(cured_by(1)));
  const auto spots = rank_all(system);
  ASSERT_EQ(spots.size(), 1U);
  EXPECT_EQ(spots[0].id, cured_by(0) <= cured_by(1) ? "out/wire" : "back/wire");
}

/// A bad lug breaks the limit; the cable would be enough without it and is not blamed.
TEST(Undersized, AFaultIsNotCuredByThickerCable) {
  auto system = thin(2);
  system.runs[1].end_to.resistances.as_found = Resistance{0.300};
  ASSERT_FALSE(within(system));
  const auto spots = rank_all(system);
  ASSERT_EQ(spots.size(), 1U);
  EXPECT_EQ(spots[0].cause, Cause::bad_termination);
}

TEST(Undersized, AFaultyWireIsCorrodedNotUndersized) {
  auto system = thin();
  system.runs[0].wire.as_found = Resistance{0.2};
  const auto spots = rank_all(system);
  EXPECT_EQ(find_id(spots, "out/wire")->cause, Cause::corroded_conductor);
}

/// What the largest cable cannot cure is no matter of gauge.
TEST(Undersized, BeyondEveryGaugeNothingIsNamed) {
  auto system = thin(200);
  for (auto& run : system.runs) run.length = Length{200};
  system.loads[0].takes = Resistance{0.05};
  ASSERT_FALSE(within(system));
  EXPECT_TRUE(rank_all(system).empty());
}

TEST(Undersized, ChoosesFromTheCableListOfTheFile) {
  auto system = thin();
  for (const double area : {2.5, 120.0, 16.0}) {
    netlist::CableOffer offer;
    offer.gauge = square_mm(area);
    offer.gauge_as_written = std::to_string(static_cast<int>(area)) + " mm2";
    system.cable_list.push_back(offer);
  }
  const auto spots = rank_all(system);
  ASSERT_FALSE(spots.empty());
  EXPECT_EQ(spots[0].better_gauge, "16 mm2");
  EXPECT_NE(spots[0].fix.find("Replace the cable by 16 mm2 or larger"), std::string::npos) << spots[0].fix;
}

TEST(Undersized, TestLoadsHaveNoLimit) {
  auto system = thin();
  system.loads[0].load_class = netlist::LoadClass::test;
  EXPECT_TRUE(rank_all(system).empty());
}

TEST(Undersized, AWireOfGivenSoundResistanceHasNoGaugeToBlame) {
  auto system = thin();
  for (auto& run : system.runs) run.wire.sound = Resistance{0.05};
  ASSERT_FALSE(within(system));
  EXPECT_TRUE(rank_all(system).empty());
}

/// Readings never give a wire exactly its table value: a few per cent more must not turn "too thin" into
/// "corroded", whose cure would leave the load outside its limit.
TEST(Undersized, AFewPerCentMoreThanTheTableIsStillTooThin) {
  auto system = thin();
  const network::Network network = solve_one(system, system.cases[0]).network;
  const double table = network.elements[static_cast<std::size_t>(*network.element("out/wire"))].sound->si();
  system.runs[0].wire.as_found = Resistance{1.1 * table};
  const auto spots = rank_all(system);
  const auto measured = find_id(spots, "out/wire");
  ASSERT_NE(measured, spots.end());
  EXPECT_EQ(measured->cause, Cause::undersized);
  system.runs[0].wire.as_found = Resistance{2 * table};
  const auto again = rank_all(system);
  EXPECT_EQ(find_id(again, "out/wire")->cause, Cause::corroded_conductor);
}

}  // namespace
}  // namespace ohmtrail::diagnose
