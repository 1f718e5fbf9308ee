#include <gtest/gtest.h>

#include "unit/netlist/netlist_text.hpp"

// What the keys of a load say of each other, and what "inrush" and "stall" in a case stand for.
namespace ohmtrail::netlist::test {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

OrderedJson with_load(const std::string& more) {
  OrderedJson base = sound_netlist();
  base["loads"][0].update(OrderedJson::parse(more));
  return base;
}

TEST(LoadChecks, AnEfficiencyOfAmperesOrOhmsIsNotUsedAndSaidSo) {
  for (const char* takes : {"8 A", "1.2 ohm"}) {
    auto base = with_load(R"({"efficiency": 90})");
    base["loads"][0]["takes"] = takes;
    const auto found = doubts(base.dump(1));
    ASSERT_THAT(named(found), ElementsAre("efficiency-unused /loads/0/efficiency")) << takes;
    EXPECT_THAT(found[0].text, HasSubstr("\"L\""));
    EXPECT_THAT(found[0].hint, HasSubstr("in watts"));
    EXPECT_GT(found[0].line, 0);
  }
}

TEST(LoadChecks, AnIdleDrawOfAmperesIsNotUsedEither) {
  EXPECT_THAT(named(doubts(with_load(R"({"takes": "8 A", "idle": "20 W"})").dump())),
              ElementsAre("efficiency-unused /loads/0/idle"));
}

TEST(LoadChecks, OfWattsBothAreUsed) {
  EXPECT_THAT(doubts(with_load(R"({"efficiency": 90, "idle": "20 W"})").dump()), IsEmpty());
}

TEST(LoadChecks, AmperesInACaseLeaveTheEfficiencyOut) {
  auto base = with_load(R"({"efficiency": 90})");
  base["cases"][0]["set"] = {{"L", "60 A"}};
  EXPECT_THAT(named(doubts(base.dump())), ElementsAre("efficiency-unused /cases/0/set/L"));
  base["cases"][0]["set"] = {{"L", "60 W"}};
  EXPECT_THAT(doubts(base.dump()), IsEmpty());
}

TEST(LoadChecks, ARestWithoutATurnSaysNothing) {
  EXPECT_THAT(named(doubts(with_load(R"({"rest_for": 60})").dump())),
              ElementsAre("rest-without-turn /loads/0/rest_for"));
  EXPECT_THAT(doubts(with_load(R"({"on_for": 60, "rest_for": 60})").dump()), IsEmpty());
}

TEST(LoadChecks, ARestartNeedsAStopBelowIt) {
  EXPECT_THAT(named(doubts(with_load(R"({"restarts_above": 12})").dump())),
              ElementsAre("restart-without-stop /loads/0/restarts_above"));
  EXPECT_THAT(named(doubts(with_load(R"({"stops_below": 12, "restarts_above": 11})").dump())),
              ElementsAre("restart-below-stop /loads/0/restarts_above"));
  EXPECT_THAT(doubts(with_load(R"({"stops_below": 11, "restarts_above": 12})").dump()), IsEmpty());
}

/// A motor that is held fast has no back-emf: 120 A at 12 V is 0.1 Ω.
TEST(Stall, IsAResistance) {
  auto base = with_load(R"({"takes": "8 A", "stall": "120 A"})");
  base["cases"][0]["set"] = {{"L", "stall"}};
  const auto system = system_of(base.dump());
  EXPECT_EQ(system.cases[0].set.at("L"), Takes(Resistance{0.1}));
  EXPECT_THAT(system.cases[0].starting, IsEmpty()) << "it lasts until a breaker opens";
}

TEST(Stall, IsHeldAgainstTheLoadsOwnNominal) {
  auto base = with_load(R"({"takes": "8 A", "stall": "120 A", "nominal": 24})");
  base["cases"][0]["set"] = {{"L", "stall"}};
  EXPECT_EQ(system_of(base.dump()).cases[0].set.at("L"), Takes(Resistance{0.2}));
}

TEST(Stall, WithoutOneIsAMistakeThatSaysSo) {
  OrderedJson base = sound_netlist();
  base["cases"][0]["set"] = {{"L", "stall"}};
  const auto found = mistakes(base.dump());
  ASSERT_THAT(named(found), ElementsAre("no-stall /cases/0/set/L"));
  EXPECT_THAT(found[0].text, HasSubstr("has no stall"));
}

TEST(Inrush, LastsForAMoment) {
  auto base = with_load(R"({"inrush": "60 A"})");
  base["cases"][0]["set"] = {{"L", "inrush"}};
  const auto system = system_of(base.dump());
  EXPECT_EQ(system.cases[0].set.at("L"), Takes(Current{60}));
  EXPECT_THAT(system.cases[0].starting, ElementsAre("L"));
}

}  // namespace
}  // namespace ohmtrail::netlist::test
