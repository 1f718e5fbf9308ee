// Loads of short duty: their cable is chosen by the heat at the end of a turn.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "ohmtrail/plan/size.hpp"
#include "ohmtrail/trade/ampacity.hpp"
#include "ohmtrail/trade/conductor.hpp"
#include "ohmtrail/trade/gauge.hpp"

namespace ohmtrail::plan {
namespace {

/// A motor on short cable without a fuse, so that neither drop nor fuse decides.
netlist::System motor_on(double amperes) {
  netlist::System system;
  system.info.name = "motor (invented)";
  system.info.nominal = units::Voltage{12};
  netlist::Battery battery;
  battery.id = "bank", battery.plus = "b+", battery.minus = "b-";
  battery.nominal = units::Voltage{12}, battery.emf = units::Voltage{12.7};
  battery.resistance = units::Resistance{0.002};
  system.batteries.push_back(battery);
  netlist::Run run;
  run.id = "cable", run.from = "b+", run.to = "m+";
  run.gauge = trade::awg(2), run.length = units::Length{0.5};
  system.runs.push_back(run);
  netlist::Load motor;
  motor.id = "motor", motor.plus = "m+", motor.minus = "b-";
  motor.takes = units::Current{amperes};
  system.loads.push_back(motor);
  netlist::Case all;
  all.name = "all", all.all_on = true;
  system.cases.push_back(all);
  return system;
}

TEST(SizeShortDuty, AskForLessCopperThanAnEndlessLoad) {
  auto system = motor_on(150);
  const auto endless = size(system);
  system.loads[0].on_for = units::Time{60}, system.loads[0].rest_for = units::Time{900};
  const auto in_turns = size(system);
  ASSERT_TRUE(endless && in_turns && endless->proved && in_turns->proved);
  EXPECT_LT(in_turns->cost, endless->cost);
  EXPECT_EQ(endless->runs[0].reason, Reason::ampacity);
  EXPECT_EQ(in_turns->runs[0].reason, Reason::ampacity);
  EXPECT_GT(in_turns->runs[0].current, in_turns->runs[0].ampacity);
  EXPECT_LE(in_turns->runs[0].steady, in_turns->runs[0].ampacity);
  EXPECT_DOUBLE_EQ(endless->runs[0].steady, endless->runs[0].current);
}

/// (1 − e^(−on/τ)) / (1 − e^(−(on + rest)/τ)) of the rise, as the heat balance of a wire with one time
/// constant has it; the steady current that warms as much is its root.
TEST(SizeShortDuty, TheSteadyCurrentIsTheRootOfItsShareOfHeat) {
  auto system = motor_on(150);
  system.loads[0].on_for = units::Time{60}, system.loads[0].rest_for = units::Time{900};
  const auto sized = size(system);
  ASSERT_TRUE(sized && sized->found);
  const auto& run = sized->rewired.runs[0];
  const trade::WirePlace place{run.gauge, run.insulation, false, 1, run.conductor, units::Voltage{12}};
  const auto rated = trade::ampacity(place);
  // τ: heat stored for the rise at its ampacity over what it then gives off, its resistance as it begins.
  const double ohms = (trade::wire_resistance_at_20C(run.gauge, units::Length{1}, run.conductor) *
                       trade::resistance_factor(run.conductor, rated.reference_ambient))
                          .si();
  const double tau = trade::wire_heat_capacity(run.gauge, run.conductor).si() * rated.rise_at_rated.si() /
                     (rated.amps.si() * rated.amps.si() * ohms);
  const double share = (1 - std::exp(-60 / tau)) / (1 - std::exp(-960 / tau));
  EXPECT_NEAR(sized->runs[0].steady, 150 * std::sqrt(share), 0.01);
}

TEST(SizeShortDuty, AStartingMotorKnownByItsNameIsCranked) {
  auto system = motor_on(200);
  const auto motor = size(system);
  system.loads[0].id = "starter";
  const auto starter = size(system);
  ASSERT_TRUE(motor && starter && motor->found && starter->found);
  EXPECT_LT(starter->cost, motor->cost);
  const auto told = [](const SizeResult& result) {
    return std::count_if(result.assumptions.begin(), result.assumptions.end(), [](const auto& one) {
      return one.text.find("taken for a starting motor by its name") != std::string::npos;
    });
  };
  EXPECT_EQ(told(*motor), 0);
  EXPECT_EQ(told(*starter), 1);
  EXPECT_FALSE(starter->rewired.loads[0].on_for.has_value());  // assumed, not written
}

TEST(SizeShortDuty, WhatItsOwnerSaysOfAStarterCounts) {
  auto system = motor_on(200);
  system.loads[0].id = "starter";
  system.loads[0].on_for = units::Time{1e6};
  const auto sized = size(system);
  ASSERT_TRUE(sized && sized->found);
  EXPECT_NEAR(sized->runs[0].steady, sized->runs[0].current, 1e-6);
}

}  // namespace
}  // namespace ohmtrail::plan
