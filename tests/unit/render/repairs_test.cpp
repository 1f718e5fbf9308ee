#include "render/repairs.hpp"

#include <gtest/gtest.h>

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

}  // namespace
}  // namespace ohmtrail::render
