// Connections whose temperature was taken, scaled to the fullest load. ANSI/NETA MTS thermographic criteria,
// as tabulated on a public page: above ambient 1 to 10 K possible, 11 to 20 K probable deficiency, over 40 K
// major.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "ohmtrail/diagnose/check_system.hpp"
#include "rank_rig.hpp"

namespace ohmtrail::diagnose {
namespace {

using namespace test;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;
using ::testing::SizeIs;
using units::Current;
using units::Temperature;

/// 20 A when it was read, 60 A at full load; 25 °C around.
netlist::System read_at(double celsius, const std::string& at = "out/to") {
  auto system = out_and_back(20);
  system.loads[0].load_class = netlist::LoadClass::test;
  add_case(system, "full", {"lamp"}).set["lamp"] = Current{60};
  netlist::Reading reading;
  reading.what = netlist::TemperatureReading{Temperature{celsius}, at};
  reading.in_case = "all-on";
  system.readings = {reading};
  return system;
}

std::vector<Finding> measured(const netlist::System& system) {
  std::vector<Finding> some;
  for (const auto& one : check_system(system, solve_all(system)))
    if (one.rule == "measured-heat") some.push_back(one);
  return some;
}

/// 5 K at a third of the current: 5 · 3^1.6 = 29 K to 5 · 9 = 45 K.
TEST(MeasuredHeat, IsScaledToTheFullestLoad) {
  const auto found = measured(read_at(30));
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_EQ(found[0].subject, "out/to");
  EXPECT_EQ(found[0].severity, Severity::soon);
  EXPECT_THAT(found[0].text, HasSubstr("30 °C with 20 A, 5 K above"));
  EXPECT_THAT(found[0].text,
              HasSubstr("at the 60 A of case full that makes 54 °C to 70 °C, too hot to touch"));
  EXPECT_THAT(found[0].source, HasSubstr("NETA"));
  EXPECT_FALSE(found[0].remedy.empty());
}

TEST(MeasuredHeat, AMilderOneIsMilder) {
  const auto found = measured(read_at(28));  // 27 K
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_EQ(found[0].severity, Severity::improvement);
  EXPECT_THAT(found[0].text, Not(HasSubstr("too hot")));
}

TEST(MeasuredHeat, AKelvinOrTwoIsNothing) {
  EXPECT_THAT(measured(read_at(26)), IsEmpty());
}

TEST(MeasuredHeat, TakenAtFullLoadItStandsAsItIs) {
  auto system = read_at(60);
  system.readings[0].in_case = "full";
  const auto found = measured(system);
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_EQ(found[0].severity, Severity::improvement);
  EXPECT_THAT(found[0].text, Not(HasSubstr("of case")));
}

TEST(MeasuredHeat, TheAirOfTheCaseCounts) {
  auto system = read_at(45);
  system.cases[0].ambient = Temperature{44};
  EXPECT_THAT(measured(system), IsEmpty());
}

TEST(MeasuredHeat, ALugInTheEngineSpaceIsHeldAgainstTheAirThere) {
  auto system = read_at(51);
  system.runs[0].in = "engine-space";
  EXPECT_THAT(measured(system), IsEmpty()) << "1 K over its 50 °C";
}

TEST(MeasuredHeat, OfACableItIsTheCurrentThatIsTold) {
  EXPECT_THAT(measured(read_at(60, "out")), IsEmpty());
}

TEST(MeasuredHeat, WithoutCurrentThereIsNothingToScale) {
  auto system = read_at(60);
  system.cases[0].all_on = false;
  EXPECT_THAT(measured(system), IsEmpty());
}

TEST(MeasuredHeat, NoSillyFigure) {
  EXPECT_THAT(measured(read_at(95)).at(0).text, HasSubstr("over 250 °C"));
}

}  // namespace
}  // namespace ohmtrail::diagnose
