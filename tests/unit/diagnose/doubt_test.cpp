#include "ohmtrail/diagnose/doubt.hpp"

#include <gtest/gtest.h>

#include "ohmtrail/diagnose/rank.hpp"
#include "rank_rig.hpp"

/// What the readings bear out, and what a person has to be told of.
namespace ohmtrail::diagnose {
namespace {

using namespace test;
using units::Resistance;

constexpr units::Voltage twelve{12};

HotSpot spot(const std::string& id, double odds, double back) {
  HotSpot made;
  made.id = id;
  made.role = network::Role::termination;
  made.cause = Cause::bad_termination;
  made.likelihood = odds;
  made.recoverable = Recoverable{"lamp", back};
  return made;
}

std::vector<std::string> ids(const std::vector<HotSpot>& spots) {
  std::vector<std::string> all;
  for (const HotSpot& one : spots) all.push_back(one.id);
  return all;
}

TEST(Doubt, WithoutReadingsNothingIsInDoubt) {
  HotSpot given = spot("lug", 0, 0.2);
  given.likelihood.reset();
  EXPECT_FALSE(odds_of(given).has_value());
  EXPECT_FALSE(in_doubt(given));
}

TEST(Doubt, BelowOneHalfItIs) {
  EXPECT_TRUE(in_doubt(spot("lug", 0.49, 0.2)));
  EXPECT_FALSE(in_doubt(spot("lug", 0.51, 0.2)));
}

TEST(Doubt, OddsOfAConductorCountForItsParts) {
  HotSpot part = spot("feed/to", 0.37, 0.2);
  part.unparted = Unparted{"feed", 0.72};
  EXPECT_DOUBLE_EQ(odds_of(part).value(), 0.72);
  EXPECT_FALSE(in_doubt(part));
}

TEST(Doubt, WhatNoReadingHasToBearOutHasNoOdds) {
  for (const Cause cause : {Cause::undersized, Cause::discharged_battery}) {
    HotSpot known = spot("feed/wire", 0.02, 0.2);
    known.cause = cause;
    EXPECT_FALSE(odds_of(known).has_value());
  }
  HotSpot failed = spot("house", 0.46, 0.2);
  failed.role = network::Role::battery;
  failed.cause = Cause::weak_battery;
  EXPECT_TRUE(in_doubt(failed));
  failed.own_tests = BatteryState::sulphated_or_worn;
  EXPECT_FALSE(in_doubt(failed)) << "its load test condemns it";
}

TEST(WorthTelling, LeavesOutWhatIsInDoubtAndCostsNothing) {
  const auto told = worth_telling({spot("doubtful, dear", 0.2, 0.216), spot("doubtful, cheap", 0.2, 0.011),
                                   spot("sure, cheap", 0.9, 0.001), spot("hardly likely", 0.04, 0.216)},
                                  twelve);
  EXPECT_EQ(ids(told), (std::vector<std::string>{"doubtful, dear", "sure, cheap"}));
  EXPECT_EQ(told[1].rank, 2) << "ranked anew";
}

TEST(WorthTelling, KeepsWhatIsHotThoughInDoubt) {
  HotSpot hot = spot("contactor", 0.33, 0);
  hot.heat_warning = "too hot to touch";
  EXPECT_EQ(worth_telling({hot}, twelve).size(), 1U);
  hot.likelihood = 0.01;
  EXPECT_TRUE(worth_telling({hot}, twelve).empty()) << "its neighbour makes the heat";
}

TEST(WorthTelling, LeavesOutABatteryThatPassesItsTests) {
  HotSpot used = spot("house", 0, 0.05);
  used.likelihood.reset();
  used.role = network::Role::battery;
  used.cause = Cause::weak_battery;
  EXPECT_EQ(worth_telling({used}, twelve).size(), 1U);
  used.own_tests = BatteryState::healthy;
  EXPECT_TRUE(worth_telling({used}, twelve).empty());
  used.likelihood = 0.2;
  EXPECT_TRUE(worth_telling({used}, twelve).empty()) << "the readings do not bear it out either";
  used.likelihood = 0.8;
  EXPECT_EQ(worth_telling({used}, twelve).size(), 1U) << "they do";
  used.likelihood.reset();
  used.cause = Cause::discharged_battery;
  EXPECT_EQ(worth_telling({used}, twelve).size(), 1U) << "healthy, and still not full";
}

std::vector<HotSpot> ranked(const std::map<std::string, double>& odds) {
  auto system = out_and_back(10);
  system.runs[0].end_to.resistances.as_found = Resistance{0.022};
  RankOptions options;
  options.fault_probability = odds;
  return rank(system, solve_all(system), options);
}

TEST(Rivals, AreThoseThatAreAsLikelyOrHalfAsLikely) {
  const auto spots = ranked({{"out/to", 0.2}, {"out/from", 0.1}, {"back/to", 0.21}, {"back/wire", 0.09}});
  EXPECT_EQ(spots[0].rivals, (std::vector<std::string>{"back/to", "out/from"})) << "the likeliest first";
}

TEST(Rivals, AreNoneOfWhatIsSureOrFarBehind) {
  EXPECT_TRUE(ranked({{"out/to", 0.6}, {"back/to", 0.6}})[0].rivals.empty());
  EXPECT_TRUE(ranked({{"out/to", 0.2}, {"back/to", 0.9}, {"out/from", 0.2}})[0].rivals.empty());
  EXPECT_TRUE(ranked({{"out/to", 0.06}, {"back/to", 0.04}})[0].rivals.empty()) << "4 % is not worth a word";
}

}  // namespace
}  // namespace ohmtrail::diagnose
