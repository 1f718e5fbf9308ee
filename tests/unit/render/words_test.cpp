#include "render/words.hpp"

#include <gtest/gtest.h>

#include <set>

#include "render/lettering.hpp"
#include "render/repairs.hpp"
#include "render/text.hpp"
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

TEST(Where, OfSeveralTheFirstAreNamedAndTheRestCounted) {
  const netlist::System system = test::shipped("yacht-12v");
  EXPECT_EQ(listed(system, {}, 2), "");
  EXPECT_EQ(listed(system, {"panel/wire", "panel/return-wire"}, 2), "cable panel; return cable of panel");
  EXPECT_EQ(listed(system, {"panel/wire", "panel/return-wire", "panel/to"}, 1), "cable panel and 2 more");
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

TEST(Where, AConverterHasAnInputAndAnOutput) {
  const netlist::System system = test::shipped("cart-48v");
  EXPECT_EQ(where(system, "light converter/in"), "light converter, its input");
  EXPECT_EQ(where(system, "light converter/out"), "light converter, its output");
  EXPECT_EQ(source_in_words(system, "light converter/out"), "light converter");
  EXPECT_EQ(source_of(system, "light converter/out"), Source::converter);
}

TEST(Where, SourcesAreToldApart) {
  const netlist::System yacht = test::shipped("yacht-12v");
  EXPECT_EQ(source_of(yacht, "A1"), Source::battery);
  EXPECT_EQ(source_of(yacht, yacht.chargers.at(0).id), Source::charger);
  EXPECT_EQ(source_in_words(yacht, "A1"), "A1");
}

TEST(Where, LeavesThePlacesOutWhereTheyDoNotFit) {
  netlist::System system = test::shipped("yacht-12v");
  system.points["panel +"].place = "behind the chart table";
  EXPECT_EQ(where_fitting(system, "panel/to", 7, 400), where(system, "panel/to"));
  EXPECT_EQ(where_fitting(system, "panel/to", 7, 130), "cable panel, its end at panel +");
  EXPECT_LE(measure(where_fitting(system, "panel/to", 7, 60), 7).width, 60);
}

TEST(EndsInWords, AnEndOfAConductorIsTold) {
  const netlist::System system = test::shipped("camper-12v");
  EXPECT_EQ(ends_in_words(system, R"(4 m from "battery plus@to" on)"),
            "4 m from cable battery plus, its end at fuse block on");
  EXPECT_EQ(ends_in_words(system, R"("fuse block" and "pump@return-from-metal")"),
            R"("fuse block" and return cable of pump, its end at pump -)");
}

TEST(EndsInWords, AllElseStays) {
  const netlist::System system = test::shipped("camper-12v");
  for (const char* text : {"", "plain", R"("no such@to" stays)", R"(a lone " stays)", R"(me@to unquoted)"})
    EXPECT_EQ(ends_in_words(system, text), text);
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

TEST(Repairs, PartsThatTheReadingsDoNotTellApartAreOneJob) {
  using network::Role;
  std::vector<diagnose::HotSpot> spots{spot(1, "a/from", Role::termination, "clean"),
                                       spot(2, "a/to", Role::termination, "clean it"),
                                       spot(3, "a/return-to", Role::termination, "clean")};
  spots[0].unparted = spots[1].unparted = diagnose::Unparted{"a", 0.98};
  spots[2].unparted = diagnose::Unparted{"a/return", 0.7};
  const auto list = repairs(spots);
  ASSERT_EQ(list.size(), 2u);
  EXPECT_EQ(ranks(list[0]), "1, 2");
  EXPECT_FALSE(list[0].of_each()) << "the figures of one stand for the whole";
  netlist::System system;
  system.runs.emplace_back().id = "a";
  system.runs.front().return_conductor.emplace();
  EXPECT_EQ(where(system, list[0]), "cable a with its ends");
  EXPECT_EQ(where(system, list[1]), "return cable of a with its ends");
  EXPECT_EQ(what_it_is(list[0]), text::cause_somewhere);
  EXPECT_EQ(what_to_do(system, list[0]),
            "Read across each end and across the cable itself first, to see which it is. clean");
}

}  // namespace
}  // namespace ohmtrail::render
