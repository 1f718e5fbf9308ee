#include <gtest/gtest.h>

#include "unit/network/built.hpp"

// Loads that run for a while, and ends that a name somewhere in the file opens.
namespace ohmtrail::network {
namespace {

/// The pump with more keys, in a case that sets it.
Network with_pump(const std::string& keys, const std::string& set) {
  std::string text = one_load("", R"(, "cases": [{"name": "on", "on": "all")" + set + "}]");
  const std::string takes = R"("takes": "5 A")";
  text.insert(text.find(takes) + takes.size(), keys);
  return built(text);
}

TEST(Duty, ALoadWithATurnHasItsTurnAndItsRest) {
  const Element pump = element(with_pump(R"(, "on_for": 20, "rest_for": 600)", ""), "pump");
  ASSERT_TRUE(pump.short_duty);
  EXPECT_EQ(pump.short_duty->on, Time{20});
  EXPECT_EQ(pump.short_duty->rest, Time{600});
}

TEST(Duty, WithoutARestItIsOnceFromCold) {
  const Element pump = element(with_pump(R"(, "on_for": 20)", ""), "pump");
  ASSERT_TRUE(pump.short_duty);
  EXPECT_FALSE(pump.short_duty->rest);
  EXPECT_FALSE(element(with_pump("", ""), "pump").short_duty) << "it runs for ever";
}

TEST(Duty, AStartLastsHalfASecondWhateverTheTurn) {
  const Element pump = element(
      with_pump(R"(, "inrush": "60 A", "on_for": 20, "rest_for": 600)", R"(, "set": {"pump": "inrush"})"),
      "pump");
  EXPECT_EQ(std::get<Current>(*pump.takes), Current{60});
  ASSERT_TRUE(pump.short_duty);
  EXPECT_EQ(pump.short_duty->on, Time{0.5});  // common practice
  EXPECT_EQ(pump.short_duty->rest, Time{600});
}

TEST(Duty, WhatACaseSetsGoesThroughAnInvertersLosses) {
  std::string text = one_load("", R"(, "cases": [{"name": "on", "on": "all", "set": {"pump": "180 W"}}])");
  const std::string takes = R"("takes": "5 A")";
  text.replace(text.find(takes), takes.size(), R"("takes": "90 W", "efficiency": 90, "idle": "10 W")");
  EXPECT_NEAR(std::get<Power>(*element(built(text), "pump").takes).si(), 180 / 0.9 + 10, 1e-12);
}

bool has(const Network& network, const std::string& id) {
  return network.element(id).has_value();
}

TEST(OpenedEnds, ByAnyNameThatStandsSomewhereInTheFile) {
  const std::string cases = R"(, "cases": [{"name": "on", "on": "all"}])";
  for (const std::string& more :
       {cases + R"(, "readings": [{"ohms": 0.001, "across": "feed/from-crimp"}])",
        cases + R"(, "readings": [{"volts": 0.1, "red": "feed@from-metal", "black": "b+", "case": "on"}])",
        cases + R"(, "readings": [{"temperature": 40, "at": "feed/from-crimp", "case": "on"}])",
        cases + R"(, "readings": [{"amps": 5, "in": "feed/from-crimp", "case": "on"}])",
        cases + R"(, "points": {"feed@from-metal": {"place": "behind the panel"}})",
        std::string(R"(, "cases": [{"name": "on", "on": "all", "open": ["feed/from-crimp"]}])")}) {
    const Network network = built(one_load("", more));
    EXPECT_TRUE(has(network, "feed/from-crimp")) << more;
    EXPECT_FALSE(has(network, "feed/to-crimp")) << more;
    EXPECT_FALSE(has(network, "feed/return-from-crimp")) << more;
  }
  EXPECT_FALSE(has(built(one_load()), "feed/from-crimp"));
}

TEST(OpenedEnds, ContactAndCrimpShareWhatTheWholeHas) {
  const std::string ends = R"(, "ends": {"from": {"sound": "0.2 mohm", "resistance": "4 mohm"}})";
  const Network whole = built(one_load(ends));
  const Network apart = built(one_load(ends, R"(, "stubs": ["feed@from-metal"])"));
  EXPECT_EQ(element(whole, "feed/from").resistance, Resistance{0.004});
  EXPECT_EQ(element(apart, "feed/from").resistance, Resistance{0.002});
  EXPECT_EQ(element(apart, "feed/from-crimp").resistance, Resistance{0.002});
  EXPECT_EQ(element(apart, "feed/from-crimp").sound, Resistance{0.0001});
}

}  // namespace
}  // namespace ohmtrail::network
