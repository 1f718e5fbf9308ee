#include "ohmtrail/diagnose/staircase.hpp"

#include <gtest/gtest.h>

#include "rank_rig.hpp"

namespace ohmtrail::diagnose {
namespace {

using namespace test;
using units::Current;
using units::Resistance;

constexpr double exact = 1e-11;

int element_of(const solve::CaseSolution& solved, const std::string& id) {
  return *solved.network.element(id);
}

Staircase stairs_of(const netlist::System& system, const std::string& load) {
  const auto found = solve_one(system, system.cases[0]);
  const auto rated = solve::solve_case(as_rated(system, found.network));
  EXPECT_TRUE(rated.has_value());
  const auto stairs = staircase(found, &*rated, element_of(found, load));
  EXPECT_TRUE(stairs.has_value());
  return stairs.value_or(Staircase{});
}

TEST(Staircase, NamesEveryStepInOrder) {
  const auto stairs = stairs_of(out_and_back(10), "lamp");
  std::vector<std::string> names;
  for (const auto& step : stairs.steps) names.push_back(step.element);
  EXPECT_EQ(names, (std::vector<std::string>{"house", "out/from", "out/wire", "out/to", "lamp", "back/from",
                                             "back/wire", "back/to"}));
  EXPECT_EQ(stairs.supply, "house");
  EXPECT_EQ(stairs.load, "lamp");
  EXPECT_EQ(stairs.steps[1].from, "b+");
  EXPECT_EQ(stairs.steps[1].to, "out@from");
  EXPECT_EQ(stairs.steps[5].from, "l-");
}

TEST(Staircase, DescendsFromOpenCircuitToNothing) {
  const auto stairs = stairs_of(out_and_back(10), "lamp");
  EXPECT_NEAR(stairs.open_circuit, 12, exact);
  EXPECT_NEAR(stairs.terminal, 11.9, exact);
  EXPECT_NEAR(stairs.steps[0].lost, 0.1, exact);
  EXPECT_NEAR(stairs.steps[0].after, 11.9, exact);
  EXPECT_NEAR(stairs.steps[2].lost, 0.2, exact);
  EXPECT_NEAR(stairs.steps[3].after, 11.68, exact);
  EXPECT_NEAR(stairs.steps[4].lost, 12 - 0.54, exact);
  EXPECT_NEAR(stairs.steps.back().after, 0, 1e-9);
  EXPECT_NEAR(stairs.steps.back().after_as_rated, 0, 1e-9);
}

TEST(Staircase, ShowsWhatASoundSystemWouldLose) {
  auto system = out_and_back(10);
  system.runs[1].end_to.resistances.as_found = Resistance{0.031};
  const auto stairs = stairs_of(system, "lamp");
  ASSERT_TRUE(stairs.as_rated_known);
  const auto& bad = stairs.steps.back();
  EXPECT_EQ(bad.element, "back/to");
  EXPECT_NEAR(bad.lost, 0.31, exact);
  EXPECT_NEAR(bad.lost_as_rated, 0.01, exact);
  EXPECT_NEAR(stairs.steps[2].lost, stairs.steps[2].lost_as_rated, exact);
}

TEST(Staircase, CarriesTheLimitInVolts) {
  auto system = out_and_back(10);
  EXPECT_NEAR(stairs_of(system, "lamp").limit.value(), 1.2, exact);
  system.loads[0].load_class = netlist::LoadClass::critical;
  EXPECT_NEAR(stairs_of(system, "lamp").limit.value(), 0.36, exact);
  system.loads[0].load_class = netlist::LoadClass::test;
  EXPECT_FALSE(stairs_of(system, "lamp").limit.has_value());
}

TEST(Staircase, IsEmptyForALoadThatIsOff) {
  auto system = out_and_back(10);
  add_case(system, "quiet", {});
  const auto quiet = solve_one(system, system.cases[1]);
  EXPECT_FALSE(staircase(quiet, nullptr, element_of(quiet, "lamp")).has_value());
}

TEST(Staircase, WithoutARatedSolutionSaysSo) {
  const auto system = out_and_back(10);
  const auto found = solve_one(system, system.cases[0]);
  const auto stairs = staircase(found, nullptr, element_of(found, "lamp"));
  ASSERT_TRUE(stairs.has_value());
  EXPECT_FALSE(stairs->as_rated_known);
  for (const auto& step : stairs->steps) EXPECT_EQ(step.lost, step.lost_as_rated);
}

TEST(AsRated, TakesAwayEveryFaultAndNothingElse) {
  auto system = out_and_back(10);
  system.runs[0].wire.as_found = Resistance{0.050};
  system.runs[1].end_to.resistances.as_found = Resistance{0.031};
  const auto rated = as_rated(system, network::build(system, system.cases[0]));
  const auto clean = network::build(out_and_back(10), system.cases[0]);
  ASSERT_EQ(rated.elements.size(), clean.elements.size());
  for (std::size_t k = 0; k < rated.elements.size(); ++k)
    EXPECT_EQ(rated.elements[k].resistance, clean.elements[k].resistance) << rated.elements[k].id;
}

/// A wire measured warm is held against its table value; as rated it heats by its own current again.
TEST(AsRated, GivesAMeasuredWireItsTableValueBack) {
  auto measured = out_and_back(10);
  measured.runs[0].wire.sound.reset();
  auto never_measured = measured;
  measured.runs[0].wire.as_found = Resistance{0.050};
  const auto rated = solve::solve_case(as_rated(measured, network::build(measured, measured.cases[0])));
  const auto clean = solve_one(never_measured, never_measured.cases[0]);
  ASSERT_TRUE(rated.has_value());
  const auto wire = static_cast<std::size_t>(element_of(clean, "out"));
  EXPECT_NEAR(rated->solution.resistance[wire] / clean.solution.resistance[wire], 1, 1e-9);
}

}  // namespace
}  // namespace ohmtrail::diagnose
