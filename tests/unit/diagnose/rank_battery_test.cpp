#include <gtest/gtest.h>

#include "ohmtrail/diagnose/rank.hpp"
#include "rank_rig.hpp"

/// Batteries among the hot spots: weak ones, discharged ones, and those that are neither.
namespace ohmtrail::diagnose {
namespace {

using namespace test;
using units::Charge;
using units::Current;
using units::Fraction;
using units::Resistance;

/// A battery known by its label: 600 CCA, so about 5 mΩ when sound (3/CCA, common practice).
netlist::System labelled(double charge = 1) {
  auto system = empty_system();
  add_battery(system, "house", "b+", "b-", 12, 0.010);
  auto& battery = system.batteries[0];
  battery.emf.reset();
  battery.resistance.reset();
  battery.cca = Current{600};
  battery.state_of_charge = Fraction{charge};
  add_load(system, "lamp", "b+", "b-", Current{50});
  return system;
}

std::vector<HotSpot> rank_all(const netlist::System& system) {
  return rank(system, solve_all(system));
}

TEST(RankBattery, FullAndSoundIsNoHotSpot) {
  EXPECT_TRUE(rank_all(labelled()).empty());
}

TEST(RankBattery, AboveWhatItsCcaImpliesIsWeak) {
  auto system = labelled();
  const double sound = solve_one(system, system.cases[0]).network.elements[0].sound->si();
  EXPECT_NEAR(sound, 3.0 / 600, 0.3 * 3.0 / 600);
  system.batteries[0].resistance = Resistance{0.020};
  const auto spots = rank_all(system);
  ASSERT_EQ(spots.size(), 1U);
  EXPECT_EQ(spots[0].id, "house");
  EXPECT_EQ(spots[0].role, network::Role::battery);
  EXPECT_EQ(spots[0].cause, Cause::weak_battery);
  EXPECT_NEAR(spots[0].excess.value(), 0.020 - sound, 1e-9);
  EXPECT_NEAR(spots[0].recoverable->volts, 50 * (0.020 - sound), 1e-9);
  EXPECT_NEAR(spots[0].heat, 50 * 50 * 0.020, 1e-9);
  EXPECT_NEAR(spots[0].current, -50, 1e-9);
}

TEST(RankBattery, WithoutALabelItsResistanceIsNeverFaulty) {
  auto system = labelled();
  system.batteries[0].cca.reset();
  system.batteries[0].resistance = Resistance{0.020};
  EXPECT_TRUE(rank_all(system).empty());
}

TEST(RankBattery, LowChargeIsDischargedAndRecoversTheVoltsOfAFullOne) {
  auto full = labelled(1), low = labelled(0.4);
  low.cases[0].per_day = units::Time{3600};
  const auto spots = rank_all(low);
  ASSERT_EQ(spots.size(), 1U);
  EXPECT_EQ(spots[0].cause, Cause::discharged_battery);
  const auto before = solve_one(low, low.cases[0]), after = solve_one(full, full.cases[0]);
  const double open_circuit = (after.network.elements[0].voltage - before.network.elements[0].voltage).si();
  EXPECT_GT(open_circuit, 0.3);
  EXPECT_GE(spots[0].recoverable->volts, open_circuit - 1e-9);
  EXPECT_FALSE(spots[0].waste.has_value());
  EXPECT_NE(spots[0].fix.find("charge"), std::string::npos);
  EXPECT_NE(spots[0].fix.find("test again"), std::string::npos);
}

TEST(RankBattery, ThreeQuartersIsTheEdge) {
  EXPECT_TRUE(rank_all(labelled(0.76)).empty());
  EXPECT_EQ(rank_all(labelled(0.74)).size(), 1U);
}

TEST(RankBattery, WeakAndDischargedIsChargedFirst) {
  auto system = labelled(0.4);
  system.batteries[0].resistance = Resistance{0.020};
  const auto spots = rank_all(system);
  ASSERT_EQ(spots.size(), 1U);
  EXPECT_EQ(spots[0].cause, Cause::discharged_battery);
}

/// 12 V outright is what this one has; nothing was told of its charge.
TEST(RankBattery, AVoltageGivenOutrightIsNoStateOfCharge) {
  auto system = labelled();
  system.batteries[0].state_of_charge.reset();
  system.batteries[0].emf = units::Voltage{12.0};
  EXPECT_TRUE(rank_all(system).empty());
}

TEST(RankBattery, ARestVoltageTellsTheCharge) {
  auto system = labelled();
  system.batteries[0].state_of_charge.reset();
  system.batteries[0].checks.rest = netlist::RestCheck{units::Voltage{12.0}, units::Time{24 * 3600.0}, {}};
  const auto spots = rank_all(system);
  ASSERT_EQ(spots.size(), 1U);
  EXPECT_EQ(spots[0].cause, Cause::discharged_battery);
  system.batteries[0].checks.rest->volts = units::Voltage{12.65};
  EXPECT_TRUE(rank_all(system).empty());
}

TEST(RankBattery, WordingFollowsWhatWasSeen) {
  auto system = labelled();
  system.batteries[0].resistance = Resistance{0.007};
  EXPECT_NE(rank_all(system)[0].fix.find("keep it if it passes"), std::string::npos);
  system.batteries[0].resistance = Resistance{0.020};
  EXPECT_NE(rank_all(system)[0].fix.find("replace the battery if it fails"), std::string::npos);
  system.batteries[0].seen = {trade::Observation::bulged_case};
  EXPECT_NE(rank_all(system)[0].fix.find("Do not charge"), std::string::npos);
  system.batteries[0].seen = {trade::Observation::frozen};
  EXPECT_NE(rank_all(system)[0].fix.find("Do not charge"), std::string::npos);
}

/// Half charged by its gravity, with one cell told of.
netlist::System with_cell(double gravity, std::optional<netlist::ElectrolyteLevel> level) {
  auto system = labelled(0.5);
  for (int k = 0; k < 6; ++k) {
    netlist::CellCheck cell;
    cell.specific_gravity = k == 3 ? gravity : 1.2;
    if (k == 3) cell.level = level;
    system.batteries[0].checks.cells.push_back(cell);
  }
  return system;
}

TEST(RankBattery, DryPlatesAreNeverToldToBeCharged) {
  const auto spots = rank_all(with_cell(1.2, netlist::ElectrolyteLevel::dry));
  ASSERT_EQ(spots.size(), 1U);
  EXPECT_EQ(spots[0].own_tests, BatteryState::dry_plates);
  EXPECT_EQ(spots[0].fix.rfind("Do not charge", 0), 0U) << spots[0].fix;
  EXPECT_EQ(spots[0].cause, Cause::weak_battery);
}

TEST(RankBattery, MoistPlatesAreCoveredBeforeItIsCharged) {
  const auto spots = rank_all(with_cell(1.2, netlist::ElectrolyteLevel::below));
  ASSERT_EQ(spots.size(), 1U);
  EXPECT_EQ(spots[0].cause, Cause::discharged_battery);
  EXPECT_LT(spots[0].fix.find("distilled water"), spots[0].fix.find("charge it")) << spots[0].fix;
}

TEST(RankBattery, ADeadCellIsNoLackOfCharge) {
  const auto spots = rank_all(with_cell(1.09, std::nullopt));
  ASSERT_EQ(spots.size(), 1U);
  EXPECT_EQ(spots[0].own_tests, BatteryState::weak_cell);
  EXPECT_EQ(spots[0].cause, Cause::weak_battery);
  EXPECT_NE(spots[0].fix.find("replace"), std::string::npos) << spots[0].fix;
}

TEST(RankBattery, LithiumMayStandHalfCharged) {
  auto system = labelled(0.5);
  system.batteries[0].chemistry = trade::Chemistry::lfp;
  EXPECT_TRUE(rank_all(system).empty());
  system.batteries[0].state_of_charge = Fraction{0.1};
  ASSERT_EQ(rank_all(system).size(), 1U);
  EXPECT_EQ(rank_all(system)[0].cause, Cause::discharged_battery);
}

TEST(RankBattery, WithoutChecksNoTestsAreClaimed) {
  const auto spots = rank_all(labelled(0.5));
  ASSERT_EQ(spots.size(), 1U);
  EXPECT_FALSE(spots[0].own_tests.has_value());
}

}  // namespace
}  // namespace ohmtrail::diagnose
