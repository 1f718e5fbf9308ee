#include "ohmtrail/plan/size.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "ohmtrail/trade/gauge.hpp"
#include "plan/design_space.hpp"

namespace ohmtrail::plan {
namespace {

netlist::Run pair_of(const std::string& id, int from, int to, int awg, double metres) {
  netlist::Run run;
  run.id = id;
  run.from = "p" + std::to_string(from), run.to = "p" + std::to_string(to);
  run.gauge = trade::awg(awg);
  run.length = units::Length{metres};
  netlist::ReturnConductor back;
  back.from = "n" + std::to_string(to), back.to = "n" + std::to_string(from);
  run.return_conductor = back;
  return run;
}

netlist::Load load_at(const std::string& id, int point, netlist::Takes takes) {
  netlist::Load load;
  load.id = id;
  load.plus = "p" + std::to_string(point), load.minus = "n" + std::to_string(point);
  load.takes = takes;
  return load;
}

netlist::CableOffer offer(int awg, double price) {
  netlist::CableOffer one;
  one.gauge = trade::awg(awg);
  one.gauge_as_written = trade::print(one.gauge);
  one.price = price;
  return one;
}

/// A heater (a resistance) and a critical load share a trunk that stays. The thicker cable on the list is the
/// cheaper one; in the heater's branch it lets more current through the trunk and takes the critical load's
/// volts.
netlist::System heater_on_a_shared_trunk() {
  netlist::System system;
  system.info.name = "shared trunk (invented)";
  system.info.nominal = units::Voltage{12};
  system.info.limits.other_drop = units::Fraction{0.30};
  netlist::Battery battery;
  battery.id = "bank", battery.plus = "p0", battery.minus = "n0";
  battery.nominal = units::Voltage{12};
  battery.emf = units::Voltage{12}, battery.resistance = units::Resistance{0.0005};
  system.batteries.push_back(battery);
  system.runs = {pair_of("trunk", 0, 1, 4, 13.3), pair_of("heater branch", 1, 2, 10, 5)};
  system.loads = {load_at("heater", 2, units::Resistance{0.8}), load_at("instruments", 1, units::Current{1})};
  system.loads[1].load_class = netlist::LoadClass::critical;
  netlist::Case all;
  all.name = "all", all.all_on = true;
  system.cases.push_back(all);
  system.cable_list = {offer(14, 3), offer(6, 1)};
  return system;
}

solve::LoadResult instruments_with(netlist::System system, int awg) {
  rewire(system.runs[1], {trade::awg(awg), "", {}, {}, {}});
  const auto solved = solve::solve_case(network::build(system, system.cases[0]));
  EXPECT_TRUE(solved);
  return solved->loads[1];
}

TEST(Size, ThickerIsNotAlwaysBetter) {
  const auto system = heater_on_a_shared_trunk();
  // The trap: the thick cheap one breaks the limit, the thin dear one keeps it. A search that takes every
  // smaller choice away with a refused one would say that nothing suffices.
  ASSERT_FALSE(instruments_with(system, 6).within);
  ASSERT_TRUE(instruments_with(system, 14).within);
  SizeOptions options;
  options.only = {"heater branch"};
  const auto sized = size(system, options);
  ASSERT_TRUE(sized) << sized.error();
  ASSERT_TRUE(sized->found);
  EXPECT_TRUE(sized->proved);
  EXPECT_EQ(sized->runs[1].gauge, "14 AWG");
  EXPECT_DOUBLE_EQ(sized->cost, 2 * 5 * 3.0);
  EXPECT_DOUBLE_EQ(sized->bound, sized->cost);
  EXPECT_EQ(sized->runs[0].gauge, "4 AWG");
  EXPECT_FALSE(sized->runs[0].chosen);
}

TEST(Size, WithoutTheTrapTheCheaperThickCableIsTaken) {
  auto system = heater_on_a_shared_trunk();
  system.loads[1].load_class = netlist::LoadClass::other;
  SizeOptions options;
  options.only = {"heater branch"};
  const auto sized = size(system, options);
  ASSERT_TRUE(sized && sized->proved);
  EXPECT_EQ(sized->runs[1].gauge, "6 AWG");
}

TEST(Size, SaysWhatIsMissingWhereNothingSuffices) {
  auto system = heater_on_a_shared_trunk();
  system.loads[0].takes = units::Resistance{0.2};
  const auto sized = size(system);
  ASSERT_TRUE(sized);
  EXPECT_FALSE(sized->found);
  EXPECT_FALSE(sized->proved);
  ASSERT_FALSE(sized->shortfalls.empty());
  EXPECT_EQ(sized->shortfalls[0].in_case, "all");
  EXPECT_FALSE(sized->shortfalls[0].remedy.empty());
}

/// Two loads on cables of their own, one of them far too long: only its own wire counts, and the remedy,
/// applied, cures it.
TEST(Size, AShorterRouteByWhatItSaysSuffices) {
  auto system = heater_on_a_shared_trunk();
  system.runs = {pair_of("long", 0, 1, 4, 40), pair_of("other", 0, 2, 4, 2)};
  system.loads = {load_at("far lamp", 1, units::Current{20}), load_at("near lamp", 2, units::Current{20})};
  for (auto& load : system.loads) load.load_class = netlist::LoadClass::critical;
  const auto sized = size(system);
  ASSERT_TRUE(sized);
  ASSERT_EQ(sized->shortfalls.size(), 1U);
  EXPECT_EQ(sized->shortfalls[0].subject, "far lamp");
  const auto place = sized->shortfalls[0].remedy.find("about ");
  ASSERT_NE(place, std::string::npos);
  const double percent = std::stod(sized->shortfalls[0].remedy.substr(place + 6));
  EXPECT_GT(percent, 0);
  system.runs[0].length *= 1 - percent / 100;
  EXPECT_TRUE(size(system)->found);
  system.runs[0].length *= (1 - (percent - 3) / 100) / (1 - percent / 100);
  EXPECT_FALSE(size(system)->found);
}

/// Where the runs in scope cannot keep a limit at all, the rest is chosen and the limit told.
TEST(Size, ALimitOutOfReachOfTheRunsInScopeIsTold) {
  auto system = heater_on_a_shared_trunk();
  system.loads[0].takes = units::Resistance{0.2};
  SizeOptions options;
  options.only = {"heater branch"};
  const auto sized = size(system, options);
  ASSERT_TRUE(sized);
  ASSERT_TRUE(sized->found);
  EXPECT_EQ(sized->runs[1].gauge, "6 AWG");
  EXPECT_TRUE(std::any_of(sized->assumptions.begin(), sized->assumptions.end(), [](const auto& told) {
    return told.id == "instruments" && told.text.find("left out") != std::string::npos;
  }));
}

TEST(Size, AnUnknownRunIsAMistake) {
  SizeOptions options;
  options.only = {"nothing"};
  const auto sized = size(heater_on_a_shared_trunk(), options);
  ASSERT_FALSE(sized);
  EXPECT_NE(sized.error().find("nothing"), std::string::npos);
}

TEST(Size, TheStateAsChosenStandsInTheResult) {
  SizeOptions options;
  options.only = {"heater branch"};
  const auto sized = size(heater_on_a_shared_trunk(), options);
  ASSERT_TRUE(sized);
  ASSERT_EQ(sized->solved.size(), 1U);
  ASSERT_EQ(sized->loads.size(), 2U);
  EXPECT_DOUBLE_EQ(sized->solved[0].loads[1].volts, *sized->loads[1].volts_after);
  EXPECT_GT(*sized->loads[1].volts_after, 11.6);
}

/// New cable has new lugs: what was given for the old ones, crimps too, goes with another gauge.
TEST(Rewiring, AnotherGaugeForgetsTheOldLugs) {
  auto run = pair_of("run", 0, 1, 10, 3);
  run.end_from.resistances.sound = units::Resistance{0.001};
  run.end_from.crimp = netlist::Resistances{};
  run.end_from.crimp->as_found = units::Resistance{0.02};
  auto same = run;
  rewire(same, {trade::awg(10), "", {}, {}, {}});
  EXPECT_EQ(same.end_from.resistances.sound, units::Resistance{0.001});
  ASSERT_TRUE(same.end_from.crimp);
  EXPECT_FALSE(same.end_from.crimp->as_found);
  rewire(run, {trade::awg(6), "", {}, {}, {}});
  EXPECT_FALSE(run.end_from.resistances.sound);
  EXPECT_FALSE(run.end_from.crimp);
}

}  // namespace
}  // namespace ohmtrail::plan
