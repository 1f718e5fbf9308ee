#include "solve/short_duty.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "ohmtrail/solve/case_solution.hpp"
#include "ohmtrail/trade/gauge.hpp"

namespace ohmtrail::solve {
namespace {

using namespace units;

/// A battery, a run out and back, a motor and a lamp.
netlist::System launch(double motor_amperes, std::optional<double> on, std::optional<double> rest) {
  netlist::System system;
  system.info.name = "invented";
  system.info.nominal = Voltage{24};
  netlist::Battery battery;
  battery.id = "bank";
  battery.plus = "b+";
  battery.minus = "b-";
  battery.nominal = Voltage{24};
  battery.emf = Voltage{25.4};
  battery.resistance = Resistance{0.004};
  system.batteries = {battery};
  netlist::Run run;
  run.id = "feed";
  run.from = "b+";
  run.to = "m+";
  run.gauge = *trade::parse_gauge("4/0 AWG");
  run.length = Length{5};
  run.conductor = trade::ConductorKind::bare_copper;
  system.runs = {run};
  netlist::Load motor;
  motor.id = "motor";
  motor.plus = "m+";
  motor.minus = "b-";
  motor.takes = Current{motor_amperes};
  if (on) motor.on_for = Time{*on};
  if (rest) motor.rest_for = Time{*rest};
  netlist::Load lamp = motor;
  lamp.id = "lamp";
  lamp.takes = Current{20};
  lamp.on_for = lamp.rest_for = std::nullopt;
  system.loads = {motor, lamp};
  netlist::Case all;
  all.name = "all-on";
  all.all_on = true;
  system.cases = {all};
  return system;
}

double feed_temperature(const netlist::System& system) {
  const auto solved = solve_case(network::build(system, system.cases.front()));
  if (!solved) throw std::runtime_error("not solved");
  return solved->solution.temperature[static_cast<std::size_t>(*solved->network.element("feed"))];
}

// A 4/0 wire at 500 A gains about 7 K a minute: I²ρ/A over the heat capacity of its copper.
TEST(ShortDuty, AFourOughtWireGainsAboutSevenKelvinAMinute) {
  auto system = launch(500, 60, std::nullopt);
  system.loads.pop_back();
  EXPECT_NEAR(feed_temperature(system) - 25, 7, 0.7);
}

TEST(ShortDuty, WithoutItTheWireGetsSteadilyHot) {
  EXPECT_GT(feed_temperature(launch(500, std::nullopt, std::nullopt)), 100);
}

TEST(ShortDuty, TheLastingCurrentHeatsInFull) {
  auto lasting_only = launch(500, 60, 540);
  lasting_only.loads.erase(lasting_only.loads.begin());
  const double lamp = feed_temperature(lasting_only);
  const double both = feed_temperature(launch(500, 1e-6, std::nullopt));
  EXPECT_NEAR(both, lamp, 0.01);
}

TEST(ShortDuty, RepeatedTurnsLieBetweenOneTurnAndForEver) {
  const double once = feed_temperature(launch(400, 60, std::nullopt));
  const double again = feed_temperature(launch(400, 60, 540));
  const double lasting = feed_temperature(launch(400, std::nullopt, std::nullopt));
  EXPECT_LT(once, again);
  EXPECT_LT(again, lasting);
}

TEST(ShortDuty, TheSolutionStaysCertified) {
  const auto system = launch(500, 60, 540);
  const auto solved = solve_case(network::build(system, system.cases.front()));
  ASSERT_TRUE(solved);
  EXPECT_LT(solved->solution.current_residual, 1e-9);
  EXPECT_LT(solved->solution.power_residual, 1e-9);
}

}  // namespace
}  // namespace ohmtrail::solve
