#include "render/words.hpp"

#include <gtest/gtest.h>

#include <set>

#include "render/repairs.hpp"
#include "support/render_shipped.hpp"

namespace ohmtrail::render {
namespace {

TEST(Where, RunsAndTheirEndsAreTold) {
  netlist::System system = test::shipped("yacht-12v");
  system.points.clear();
  EXPECT_EQ(where(system, "panel/wire"), "cable panel");
  EXPECT_EQ(where(system, "panel/return-wire"), "return cable of panel");
  EXPECT_EQ(where(system, "panel/to"), "cable panel, its end at panel +");
  EXPECT_EQ(where(system, "panel/from-crimp"), "cable panel, its end at panel fuse out");
  EXPECT_EQ(where(system, "panel/return-from"), "return cable of panel, its end at panel -");
}

TEST(Where, PlacesOfPointsAreTold) {
  netlist::System system = test::shipped("yacht-12v");
  system.points["panel +"].place = "behind the chart table";
  EXPECT_EQ(where(system, "panel/to"), "cable panel, its end at panel + (behind the chart table)");
  EXPECT_EQ(point_in_words(system, "panel +"), "panel + (behind the chart table)");
  EXPECT_EQ(point_in_words(system, "nowhere"), "nowhere");
}

TEST(Where, BatteriesSayThatTheyAre) {
  netlist::System system = test::shipped("cart-48v");
  EXPECT_EQ(where(system, "4"), "battery 4");
  system.batteries[0].id = "starter battery";
  EXPECT_EQ(where(system, "starter battery"), "starter battery");
  EXPECT_EQ(where(system, "contactor"), "contactor");
}

TEST(Where, WhatLooksLikeARunButIsNoneStaysItself) {
  const netlist::System system = test::shipped("cart-48v");
  EXPECT_EQ(where(system, "no such/wire"), "no such/wire");
  EXPECT_EQ(where(system, ""), "");
}

TEST(Sentence, BeginsWithACapitalWhereItCan) {
  EXPECT_EQ(sentence("cable panel"), "Cable panel");
  EXPECT_EQ(sentence("Éclair"), "Éclair");
  EXPECT_EQ(sentence("12 V"), "12 V");
  EXPECT_EQ(sentence(""), "");
}

TEST(Words, EveryCauseAndRankHasItsOwn) {
  std::set<std::string_view> causes, ranks;
  using diagnose::Cause;
  for (const Cause cause :
       {Cause::corroded_conductor, Cause::bad_termination, Cause::bad_joint, Cause::worn_contact,
        Cause::undersized, Cause::weak_battery, Cause::discharged_battery})
    causes.insert(what_it_is(cause));
  EXPECT_EQ(causes.size(), 7u);
  using diagnose::Severity;
  for (const Severity severity : {Severity::before_further_use, Severity::soon, Severity::improvement})
    ranks.insert(rank_in_words(severity));
  EXPECT_EQ(ranks.size(), 3u);
}

diagnose::HotSpot spot(int rank, const std::string& id, network::Role role, const std::string& fix) {
  diagnose::HotSpot one;
  one.rank = rank;
  one.id = id;
  one.role = role;
  one.fix = fix;
  return one;
}

TEST(Repairs, OnlyLikeConductorsOfOneRunAreOneJob) {
  using network::Role;
  const std::vector<diagnose::HotSpot> spots{
      spot(1, "a/wire", Role::wire, "replace"), spot(2, "b/wire", Role::wire, "replace"),
      spot(3, "a/return-wire", Role::wire, "replace"), spot(4, "a/to", Role::termination, "replace"),
      spot(5, "b/return-wire", Role::wire, "look again")};
  const auto list = repairs(spots);
  ASSERT_EQ(list.size(), 4u);
  EXPECT_EQ(ranks(list[0]), "1, 3");
  EXPECT_EQ(ranks(list[1]), "2");
  EXPECT_EQ(list[3].first().rank, 5) << "another fix is another job";
}

}  // namespace
}  // namespace ohmtrail::render
