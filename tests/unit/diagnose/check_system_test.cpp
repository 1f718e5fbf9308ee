#include "ohmtrail/diagnose/check_system.hpp"

#include <gtest/gtest.h>

#include "ohmtrail/trade/gauge.hpp"
#include "rank_rig.hpp"

namespace ohmtrail::diagnose {
namespace {

using namespace test;
using units::Current;
using units::Length;
using units::Power;
using units::Resistance;

std::vector<Finding> check_all(const netlist::System& system) {
  return check_system(system, solve_all(system));
}

std::vector<Finding> of_rule(const std::vector<Finding>& findings, const std::string& rule) {
  std::vector<Finding> some;
  for (const auto& one : findings)
    if (one.rule == rule) some.push_back(one);
  return some;
}

/// Every finding says what it rests on and what to do.
void expect_whole(const std::vector<Finding>& findings) {
  for (const auto& one : findings) {
    EXPECT_FALSE(one.source.empty()) << one.rule;
    EXPECT_FALSE(one.subject.empty()) << one.rule;
    EXPECT_FALSE(one.text.empty()) << one.rule;
    EXPECT_FALSE(one.remedy.empty()) << one.rule;
  }
}

TEST(CheckSystem, ASoundOneHasNoFindings) {
  EXPECT_TRUE(check_all(out_and_back(10)).empty());
}

TEST(CheckSystem, NamesAnIslandThatNoCaseFeeds) {
  auto system = out_and_back(10);
  add_joint(system, "lost", "x", "y", 0.001);
  const auto found = of_rule(check_all(system), "island-without-source");
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].subject, "x");
  EXPECT_EQ(found[0].severity, Severity::soon);
  EXPECT_TRUE(found[0].in_case.empty());
  expect_whole(found);
}

TEST(CheckSystem, AnIslandOfOneCaseIsMilder) {
  auto system = out_and_back(10);
  add_switch(system, "main", "l+", "aft", 0.001);
  add_load(system, "pump", "aft", "aft-", Current{1});
  add_run(system, "aft-back", "aft-", "b-", 0.01, 0.001);
  add_case(system, "aft off", {"lamp"}).open = {"main"};
  const auto found = of_rule(check_all(system), "island-without-source");
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].subject, "aft");
  EXPECT_EQ(found[0].severity, Severity::improvement);
  EXPECT_EQ(found[0].in_case, "aft off");
}

TEST(CheckSystem, ALoadThatWaitsInADeadIslandIsNamed) {
  auto system = out_and_back(10);
  add_switch(system, "main", "l+", "aft", 0.001);
  add_load(system, "pump", "aft", "aft-", Current{1});
  add_switch(system, "return", "aft-", "b-", 0.001);
  add_case(system, "wrong", {"pump"}).open = {"main", "return"};
  const auto found = of_rule(check_all(system), "island-without-source");
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].severity, Severity::soon);
  EXPECT_NE(found[0].text.find("pump"), std::string::npos);
}

TEST(CheckSystem, ALiveOpenEndIsWorseThanADeadOne) {
  auto system = out_and_back(10);
  add_run(system, "spare-plus", "b+", "end+", 0.01, 0.001);
  add_run(system, "spare-minus", "b-", "end-", 0.01, 0.001);
  system.stubs = {"end+", "end-"};
  const auto found = of_rule(check_all(system), "open-end");
  ASSERT_EQ(found.size(), 2U);
  EXPECT_EQ(found[0].subject, "end+");
  EXPECT_EQ(found[0].severity, Severity::soon);
  EXPECT_EQ(found[1].subject, "end-");
  EXPECT_EQ(found[1].severity, Severity::improvement);
  expect_whole(found);
}

TEST(CheckSystem, AStubThatSomethingElseUsesIsNone) {
  auto system = out_and_back(10);
  system.stubs = {"l+"};
  EXPECT_TRUE(of_rule(check_all(system), "open-end").empty());
}

/// Swapped in the file, it would stand at −12 V: no limit is broken, the file is wrong.
TEST(CheckSystem, ALoadThatWouldRunBackwardsIsAMistakeInTheFile) {
  auto system = out_and_back(10);
  std::swap(system.loads[0].plus, system.loads[0].minus);
  EXPECT_TRUE(of_rule(check_all(system), "drop-limit").empty());
  const auto found = of_rule(check_all(system), "load-reversed");
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].subject, "lamp");
  EXPECT_EQ(found[0].severity, Severity::before_further_use);
  EXPECT_NE(found[0].remedy.find("swapped"), std::string::npos) << found[0].remedy;
  expect_whole(found);
}

/// 30 A through 44 mΩ is 1.32 V, 11 % of 12 V where 10 % is allowed; 3 A in the other case is inside.
TEST(CheckSystem, NamesALoadOutsideItsLimitInItsWorstCase) {
  auto system = out_and_back(30);
  add_case(system, "worse", {"lamp"}).set["lamp"] = Current{40};
  add_case(system, "dim", {"lamp"}).set["lamp"] = Current{3};
  const auto found = of_rule(check_all(system), "drop-limit");
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].subject, "lamp");
  EXPECT_EQ(found[0].in_case, "worse");
  EXPECT_NE(found[0].text.find("1.76 V"), std::string::npos) << found[0].text;
  EXPECT_NE(found[0].text.find("10"), std::string::npos) << found[0].text;
  expect_whole(found);
}

TEST(CheckSystem, NamesALoadThatStopped) {
  auto system = out_and_back(30);
  system.loads[0].stops_below = units::Voltage{11};
  const auto found = of_rule(check_all(system), "dropped-out");
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].subject, "lamp");
  EXPECT_NE(found[0].text.find("11 V"), std::string::npos) << found[0].text;
  expect_whole(found);
}

/// E²/4R = 144 / 0.216 = 667 W is the most that can be carried.
TEST(CheckSystem, NamesACollapse) {
  auto system = out_and_back(30);
  system.loads[0].takes = Power{800};
  const auto found = of_rule(check_all(system), "collapse");
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].subject, "lamp");
  EXPECT_NE(found[0].text.find("667 W"), std::string::npos) << found[0].text;
  expect_whole(found);
}

netlist::System on_thin_wire(double amps) {
  auto system = out_and_back(amps);
  for (auto& run : system.runs) run.gauge = trade::awg(14);
  return system;
}

TEST(CheckSystem, NamesAWireAboveItsAmpacity) {
  EXPECT_TRUE(of_rule(check_all(on_thin_wire(10)), "over-ampacity").empty());
  const auto findings = check_all(on_thin_wire(60));
  const auto found = of_rule(findings, "over-ampacity");
  ASSERT_EQ(found.size(), 2U);
  EXPECT_EQ(found[0].subject, "out/wire");
  EXPECT_EQ(found[0].severity, Severity::before_further_use);
  EXPECT_NE(found[0].source.find("33 CFR 183.425"), std::string::npos);
  EXPECT_EQ(of_rule(findings, "insulation-temperature").size(), 2U);
  expect_whole(findings);
}

TEST(CheckSystem, WorstSeverityFirst) {
  auto system = on_thin_wire(60);
  add_run(system, "spare", "b-", "end-", 0.01, 0.001);
  system.stubs = {"end-"};
  const auto findings = check_all(system);
  ASSERT_GT(findings.size(), 2U);
  for (std::size_t k = 1; k < findings.size(); ++k) EXPECT_LE(findings[k - 1].severity, findings[k].severity);
}

TEST(CheckSystem, NamesAHotConnection) {
  auto system = out_and_back(100);
  system.loads[0].load_class = netlist::LoadClass::test;
  for (auto& run : system.runs)
    run.end_from.resistances.sound = run.end_to.resistances.sound = Resistance{1e-5};
  system.runs[0].end_to.resistances.as_found = Resistance{0.0008};
  const auto found = of_rule(check_all(system), "hot-connection");
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].subject, "out/to");
  expect_whole(found);
}

/// The lug beside a hot one, and lugs on a cable that is itself too warm, are sound and not named.
TEST(CheckSystem, DoesNotNameASoundConnectionHot) {
  auto system = on_thin_wire(60);
  EXPECT_TRUE(of_rule(check_all(system), "hot-connection").empty());
}

/// As an inferred one may be: a tenth above what is sound warms nothing that its cable does not.
TEST(CheckSystem, DoesNotNameAnAllButSoundConnectionHot) {
  auto system = on_thin_wire(60);
  auto& end = system.runs[0].end_to.resistances;
  end.sound = Resistance{1e-4};
  end.as_found = Resistance{1.1e-4};
  EXPECT_TRUE(of_rule(check_all(system), "hot-connection").empty());
  end.as_found = Resistance{2e-3};
  EXPECT_EQ(of_rule(check_all(system), "hot-connection").size(), 1U);
}

TEST(CheckSystem, SeveritiesHaveWords) {
  EXPECT_EQ(words(Severity::before_further_use), "before further use");
  EXPECT_EQ(words(Severity::soon), "soon");
  EXPECT_EQ(words(Severity::improvement), "improvement");
}

}  // namespace
}  // namespace ohmtrail::diagnose
