#include "diagnose/trace/checks.hpp"

#include <gtest/gtest.h>

#include "trace_rig.hpp"

namespace ohmtrail::diagnose {
namespace {

using test::TraceRig;

netlist::Reading clamp() {
  netlist::Reading out;
  out.in_case = "running";
  out.what = netlist::AmpsReading{units::Current{100}, "lead"};
  return out;
}

netlist::Reading volts(const std::string& red, const std::string& black) {
  netlist::Reading out;
  out.in_case = "running";
  out.what = netlist::VoltsReading{units::Voltage{1}, red, black};
  return out;
}

netlist::System with_readings(std::size_t after_the_opening) {
  netlist::System out = TraceRig(3).system;
  out.readings = {clamp(), volts("+", "-"), volts("p8", "-")};
  for (std::size_t k = 0; k < after_the_opening; ++k) out.readings.push_back(volts("p1", "p2"));
  return out;
}

TEST(CheckDue, NotWithinTheFirstFiveReadings) {
  for (std::size_t k = 0; k < between_checks; ++k) EXPECT_FALSE(check_due(with_readings(k), "running")) << k;
}

TEST(CheckDue, AfterFiveReadingsTheClampThenTheBattery) {
  const auto first = check_due(with_readings(5), "running");
  ASSERT_TRUE(first);
  EXPECT_EQ(first->in, "lead");
  EXPECT_EQ(first->purpose, Purpose::opening);
  const auto second = check_due(with_readings(6), "running");
  ASSERT_TRUE(second);
  EXPECT_EQ(second->red, "+");
  EXPECT_EQ(second->black, "-");
  EXPECT_NE(second->where.find("red on \"+\""), std::string::npos);
}

TEST(CheckDue, AndAgainAfterFiveMore) {
  for (std::size_t k = 7; k < 12; ++k) EXPECT_FALSE(check_due(with_readings(k), "running")) << k;
  EXPECT_TRUE(check_due(with_readings(12), "running"));
  EXPECT_TRUE(check_due(with_readings(13), "running"));
  EXPECT_FALSE(check_due(with_readings(14), "running"));
}

TEST(CheckDue, NothingWhereItWasNeverRead) {
  EXPECT_FALSE(check_due(with_readings(5), "at rest"));
  netlist::System without_clamp = with_readings(6);
  without_clamp.readings.erase(without_clamp.readings.begin());
  EXPECT_FALSE(check_due(without_clamp, "running"));
}

// Skipping one of them passes it over this time only.
TEST(CheckDue, TraceAsksThemAndLetsThemBeSkipped) {
  netlist::System system = with_readings(5);
  for (std::size_t k = 0; k < 8; ++k) {  // sound readings, so that the search goes on
    auto* one = std::get_if<netlist::VoltsReading>(&system.readings[k].what);
    if (one == nullptr) continue;
    one->value = units::Voltage{one->red == "p8" ? 11.76 : one->red == "+" ? 12.36 : 0.02};
  }
  Trace trace(system);
  ASSERT_FALSE(trace.ended()) << trace.ending();
  EXPECT_NE(trace.question({}).find("Clamp round \"lead\""), std::string::npos);
  EXPECT_TRUE(test::says(trace.remarks({}), "nothing has drifted"));
  EXPECT_TRUE(test::says(trace.answer("why", {}).say, "honest"));
  static_cast<void>(trace.answer("skip", {}));
  EXPECT_EQ(trace.question({}).find("Clamp round"), std::string::npos);
}

}  // namespace
}  // namespace ohmtrail::diagnose
