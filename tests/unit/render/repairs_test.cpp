#include "render/repairs.hpp"

#include <gtest/gtest.h>

#include "render/text.hpp"
#include "render/words.hpp"
#include "support/render_shipped.hpp"

namespace ohmtrail::render {
namespace {

using diagnose::Cause;
using network::Role;

diagnose::HotSpot spot(int rank, const std::string& id, Role role, Cause cause, const std::string& fix) {
  diagnose::HotSpot made;
  made.rank = rank;
  made.id = id;
  made.role = role;
  made.cause = cause;
  made.fix = fix;
  return made;
}

std::vector<std::string> lists(const std::vector<diagnose::HotSpot>& spots) {
  std::vector<std::string> all;
  for (const Repair& repair : repairs(spots)) all.push_back(ranks(repair));
  return all;
}

TEST(Repairs, BothConductorsOfARunAreOneJob) {
  const std::vector<diagnose::HotSpot> spots{
      spot(1, "feed/wire", Role::wire, Cause::undersized, "thicker"),
      spot(2, "stud", Role::joint, Cause::bad_joint, "tighten"),
      spot(3, "feed/return-wire", Role::wire, Cause::undersized, "thicker")};
  EXPECT_EQ(lists(spots), (std::vector<std::string>{"1, 3", "2"})) << "in the order of their worst parts";
}

TEST(Repairs, OtherRunsCausesAndCuresAreJobsOfTheirOwn) {
  const auto first = spot(1, "feed/wire", Role::wire, Cause::undersized, "thicker");
  for (const auto& other : {spot(2, "tail/return-wire", Role::wire, Cause::undersized, "thicker"),
                            spot(2, "feed/return-wire", Role::wire, Cause::corroded_conductor, "thicker"),
                            spot(2, "feed/return-wire", Role::wire, Cause::undersized, "still thicker"),
                            spot(2, "feed/to", Role::termination, Cause::undersized, "thicker")})
    EXPECT_EQ(lists({first, other}), (std::vector<std::string>{"1", "2"})) << other.id;
}

TEST(Repairs, NamesWithASlashlessIdAreNeverJoined) {
  EXPECT_EQ(lists({spot(1, "a", Role::wire, Cause::undersized, "x"),
                   spot(2, "b", Role::wire, Cause::undersized, "x")})
                .size(),
            2U);
}

TEST(Repairs, SayWhereOfOnePartOrOfBoth) {
  const netlist::System system = test::shipped("camper-12v");
  const std::string run = system.runs.front().id;
  const std::vector<diagnose::HotSpot> spots{
      spot(1, run + "/wire", Role::wire, Cause::undersized, "thicker"),
      spot(2, run + "/return-wire", Role::wire, Cause::undersized, "thicker")};
  const std::string both = where(system, repairs(spots).front());
  const std::string one = where(system, repairs({spots.front()}).front());
  EXPECT_NE(both.find(run), std::string::npos);
  EXPECT_NE(one.find(run), std::string::npos);
  EXPECT_NE(both, one);
}

TEST(Repairs, InDoubtAskForMoreReadingsAndNameWhatElseItMayBe) {
  const netlist::System system = test::shipped("camper-12v");
  const std::string run = system.runs.front().id;
  auto doubtful = spot(1, run + "/to", Role::termination, Cause::bad_termination, "Undo it.");
  doubtful.likelihood = 0.18;
  doubtful.rivals = {run + "/from"};
  const std::vector<diagnose::HotSpot> spots{doubtful};
  const std::vector<Repair> list = repairs(spots);
  EXPECT_TRUE(list[0].in_doubt());
  EXPECT_EQ(what_it_is(list[0]), text::cause_in_doubt);
  const std::string told = what_to_do(system, list[0]);
  EXPECT_EQ(told.find("Undo it"), std::string::npos) << told;
  EXPECT_NE(told.find(where(system, run + "/from")), std::string::npos) << told;
}

}  // namespace
}  // namespace ohmtrail::render
