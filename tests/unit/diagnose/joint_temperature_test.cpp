#include "ohmtrail/diagnose/joint_temperature.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "ohmtrail/trade/conductor.hpp"
#include "ohmtrail/trade/fin.hpp"
#include "rank_rig.hpp"

namespace ohmtrail::diagnose {
namespace {

using namespace test;
using units::Current;
using units::Resistance;
using units::Temperature;
using units::TemperatureDifference;

/// Two cables meet on one stud: the lug of the first has this resistance, the other contacts none.
netlist::System stud_between(double first_mm2, double second_mm2, double ohms, double amps = 100) {
  auto system = empty_system(24);
  add_battery(system, "house", "b+", "b-", 25, 0.001);
  add_run(system, "first", "b+", "stud", 1e-9, 1e-12).gauge = square_mm(first_mm2);
  add_run(system, "second", "stud", "l+", 1e-9, 1e-12).gauge = square_mm(second_mm2);
  system.runs[0].end_to.resistances.as_found = Resistance{ohms};
  add_load(system, "drive", "l+", "b-", Current{amps});
  return system;
}

JointTemperature at_stud(const netlist::System& system) {
  const auto solved = solve_one(system, system.cases[0]);
  const auto joint = joint_temperature(system, solved, *solved.network.element("first/to"));
  EXPECT_TRUE(joint.has_value());
  return joint.value_or(JointTemperature{});
}

double given_off(const netlist::System& system, double rise) {
  double watts = 0;
  for (const auto& run : system.runs) {
    const auto fin = trade::fin_of(run.gauge, run.conductor);
    const auto h = trade::convection(fin.diameter, Temperature{25}, TemperatureDifference{rise}) +
                   trade::radiation(trade::jacket_emissivity, Temperature{25}, TemperatureDifference{rise});
    watts += trade::fin_conductance(fin, h).si() * rise;
  }
  return watts;
}

/// 1 mΩ at 100 A is 10 W: at the answer the two fins give off just that.
TEST(JointTemperature, BalancesTheHeatAlongBothCables) {
  const auto system = stud_between(35, 35, 0.001);
  const auto joint = at_stud(system);
  EXPECT_EQ(joint.cables, 2);
  EXPECT_NEAR(given_off(system, joint.rise), 10, 0.02);
}

TEST(JointTemperature, BalancesUnlikeCablesToo) {
  const auto system = stud_between(16, 70, 0.001);
  EXPECT_NEAR(given_off(system, at_stud(system).rise), 10, 0.02);
  const double thin = at_stud(stud_between(16, 16, 0.001)).rise,
               thick = at_stud(stud_between(70, 70, 0.001)).rise;
  EXPECT_LT(at_stud(system).rise, thin);
  EXPECT_GT(at_stud(system).rise, thick);
}

/// The order of magnitude of a worked figure: 10 W between two 35 mm² cables rises 62 K at h = 12 W/m²K; at
/// the real h of such a rise, about 17, it is some tenths less.
TEST(JointTemperature, StandsNearAWorkedFigure) {
  const double rise = at_stud(stud_between(35, 35, 0.001)).rise;
  EXPECT_GT(rise, 40);
  EXPECT_LT(rise, 62);
}

TEST(JointTemperature, IsGivenToFiveKelvin) {
  for (const double ohms : {0.0002, 0.0005, 0.0011, 0.0023}) {
    const double celsius = at_stud(stud_between(35, 35, ohms)).celsius;
    EXPECT_EQ(celsius, 5 * std::round(celsius / 5));
  }
}

/// The rise stands on top of the cable's own warmth.
TEST(JointTemperature, AddsToTheCablesOwnTemperature) {
  const auto system = stud_between(35, 35, 0.001, 150);
  const auto solved = solve_one(system, system.cases[0]);
  const auto wire = static_cast<std::size_t>(*solved.network.element("first"));
  const double own = solved.solution.temperature[wire];
  EXPECT_GT(own, 30);
  const auto joint = at_stud(system);
  EXPECT_NEAR(joint.celsius, own + joint.rise, 2.5 + 1e-9);
}

TEST(JointTemperature, CallsOutWhatBurnsAndWhatMelts) {
  const auto cool = at_stud(stud_between(35, 35, 0.0001));
  EXPECT_FALSE(cool.too_hot_to_touch);
  EXPECT_FALSE(heat_warning(cool).has_value());
  const auto hot = at_stud(stud_between(35, 35, 0.001));
  EXPECT_TRUE(hot.too_hot_to_touch);
  EXPECT_FALSE(hot.above_insulation);
  EXPECT_NE(heat_warning(hot).value().find("ISO 13732-1"), std::string::npos);
  const auto melting = at_stud(stud_between(35, 35, 0.004));
  EXPECT_TRUE(melting.above_insulation);
  EXPECT_NE(heat_warning(melting).value().find("105"), std::string::npos);
}

TEST(JointTemperature, TakesTheLowestInsulationRatingOfTheCables) {
  auto system = stud_between(35, 35, 0.001);
  system.runs[1].insulation = Temperature{60};
  EXPECT_EQ(at_stud(system).insulation_rating, 60);
  EXPECT_TRUE(at_stud(system).above_insulation);
}

TEST(JointTemperature, WithoutCurrentThereIsNone) {
  auto system = stud_between(35, 35, 0.001);
  add_case(system, "quiet", {});
  const auto solved = solve_one(system, system.cases[1]);
  EXPECT_FALSE(joint_temperature(system, solved, *solved.network.element("first/to")).has_value());
}

TEST(JointTemperature, OfAWireOrALoadThereIsNone) {
  const auto system = stud_between(35, 35, 0.001);
  const auto solved = solve_one(system, system.cases[0]);
  for (const char* id : {"first", "drive", "house"})
    EXPECT_FALSE(joint_temperature(system, solved, *solved.network.element(id)).has_value()) << id;
}

/// A joint between two lugs is cooled by both their cables, and warmed by their contacts too.
TEST(JointTemperature, OfAJointCountsTheLugsOnBothItsPoints) {
  auto system = empty_system(24);
  add_battery(system, "house", "b+", "b-", 25, 0.001);
  add_run(system, "first", "b+", "a", 1e-9, 1e-12);
  add_joint(system, "stud", "a", "b", 0.001);
  add_run(system, "second", "b", "l+", 1e-9, 1e-12);
  add_load(system, "drive", "l+", "b-", Current{100});
  const auto solved = solve_one(system, system.cases[0]);
  const auto joint = joint_temperature(system, solved, *solved.network.element("stud"));
  ASSERT_TRUE(joint.has_value());
  EXPECT_EQ(joint->cables, 2);
  EXPECT_NEAR(given_off(system, joint->rise), 10, 0.02);
}

TEST(JointTemperature, OfAJointWithoutCablesThereIsNone) {
  auto system = empty_system();
  add_battery(system, "house", "b+", "b-", 12, 0.001);
  add_joint(system, "stud", "b+", "l+", 0.001);
  add_load(system, "lamp", "l+", "b-", Current{10});
  const auto solved = solve_one(system, system.cases[0]);
  EXPECT_FALSE(joint_temperature(system, solved, *solved.network.element("stud")).has_value());
}

}  // namespace
}  // namespace ohmtrail::diagnose
