#include <gtest/gtest.h>

#include "ohmtrail/diagnose/rank.hpp"
#include "rank_rig.hpp"

/// The fix in words: `seen` decides between tightening, cleaning and replacing; whatever burns is said first.
namespace ohmtrail::diagnose {
namespace {

using namespace test;
using trade::Observation;
using units::Current;
using units::Resistance;

std::string only_fix(const netlist::System& system) {
  const auto spots = rank(system, solve_all(system));
  EXPECT_EQ(spots.size(), 1U);
  return spots.empty() ? "" : spots[0].fix;
}

bool says(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

std::string lug_fix(netlist::Seen seen, double ohms = 0.031) {
  auto system = out_and_back(10);
  system.runs[1].end_to.resistances.as_found = Resistance{ohms};
  system.runs[1].end_to.resistances.seen = std::move(seen);
  return only_fix(system);
}

std::string wire_fix(netlist::Seen seen) {
  auto system = out_and_back(10);
  system.runs[1].wire.as_found = Resistance{0.031};
  system.runs[1].wire.seen = std::move(seen);
  return only_fix(system);
}

std::string joint_fix(trade::JointKind kind, netlist::Seen seen = {}) {
  auto system = out_and_back(10);
  system.runs[1].from = "x";
  auto& joint = add_joint(system, "joint", "l-", "x", 0.001);
  joint.kind = kind;
  joint.resistances.as_found = Resistance{0.020};
  joint.resistances.seen = std::move(seen);
  return only_fix(system);
}

std::string switch_fix(trade::SwitchKind kind, netlist::Seen seen = {}) {
  auto system = out_and_back(10);
  system.runs[1].from = "x";
  auto& item = add_switch(system, "switch", "l-", "x", 0.001);
  item.kind = kind;
  item.resistances.as_found = Resistance{0.020};
  item.resistances.seen = std::move(seen);
  return only_fix(system);
}

TEST(Fix, SaysToDisconnectTheBatteryFirst) {
  EXPECT_EQ(lug_fix({}).rfind("Disconnect the battery first.", 0), 0U);
  EXPECT_EQ(wire_fix({}).rfind("Disconnect the battery first.", 0), 0U);
  EXPECT_EQ(joint_fix(trade::JointKind::stud).rfind("Disconnect the battery first.", 0), 0U);
}

TEST(Fix, SaysToLetItCoolWhereItBurns) {
  EXPECT_TRUE(says(lug_fix({}, 0.300), "let it cool (it burns) and disconnect the battery first."));
}

TEST(Fix, AnUnseenLugIsCleanedAndTightenedBeforeItIsReplaced) {
  const auto text = lug_fix({});
  EXPECT_TRUE(says(text, "clean lug and stud"));
  EXPECT_TRUE(says(text, "if it stays high, crimp on a new lug"));
}

TEST(Fix, ALooseLugIsTightened) {
  for (const auto seen : {Observation::loose_nut, Observation::turns_by_hand}) {
    EXPECT_TRUE(says(lug_fix({seen}), "It is loose"));
    EXPECT_TRUE(says(lug_fix({seen}), "tighten the nut"));
    EXPECT_FALSE(says(lug_fix({seen}), "corroded"));
  }
}

TEST(Fix, ACorrodedLugIsCutOff) {
  for (const auto seen :
       {Observation::green_corrosion, Observation::white_corrosion, Observation::bulging_jacket}) {
    EXPECT_TRUE(says(lug_fix({seen}), "corroded"));
    EXPECT_TRUE(says(lug_fix({seen}), "crimp on a new tinned lug"));
  }
}

/// Flexed under load, loose joints and broken strands both jump: neither is claimed for a lug.
TEST(Fix, AReadingThatMovesIsLooseOrBroken) {
  EXPECT_TRUE(says(lug_fix({Observation::moves_reading}), "loose or has broken strands"));
  EXPECT_TRUE(says(wire_fix({Observation::moves_reading}), "Strands are broken"));
}

TEST(Fix, BrokenStrandsAreNotTightened) {
  const auto text = lug_fix({Observation::loose_nut, Observation::broken_strands});
  EXPECT_TRUE(says(text, "whole strands"));
  EXPECT_FALSE(says(text, "tighten"));
}

TEST(Fix, NamesTheWrongHardware) {
  EXPECT_TRUE(says(lug_fix({Observation::wing_nut}), "lock nut"));
  EXPECT_TRUE(says(lug_fix({Observation::washer_under_lug}), "from under the lug"));
  EXPECT_TRUE(says(lug_fix({Observation::melted}), "melted"));
  EXPECT_TRUE(says(lug_fix({Observation::darkened}), "run hot"));
}

TEST(Fix, LooksSoundAndNotReachedChangeNothing) {
  EXPECT_EQ(lug_fix({Observation::looks_sound}), lug_fix({}));
  EXPECT_EQ(lug_fix({Observation::not_reached}), lug_fix({}));
}

/// Before a cable is called corroded, gauge, length and metal are to be verified.
TEST(Fix, AnUnseenCableIsVerifiedFirst) {
  EXPECT_TRUE(says(wire_fix({}), "Verify gauge, length and metal"));
  EXPECT_FALSE(says(wire_fix({Observation::bulging_jacket}), "Verify"));
  EXPECT_TRUE(says(wire_fix({Observation::bulging_jacket}), "under the jacket"));
}

TEST(Fix, EachKindOfJointHasItsOwnWork) {
  using trade::JointKind;
  EXPECT_TRUE(says(joint_fix(JointKind::post_clamp), "negative off first and on last"));
  EXPECT_TRUE(says(joint_fix(JointKind::stud), "stack"));
  EXPECT_TRUE(says(joint_fix(JointKind::splice), "Cut the splice out"));
  EXPECT_TRUE(says(joint_fix(JointKind::plug), "pins and sockets"));
  EXPECT_TRUE(says(joint_fix(JointKind::terminal_strip), "ferrules"));
  EXPECT_TRUE(says(joint_fix(JointKind::fuse_clip), "clip"));
  EXPECT_TRUE(says(joint_fix(JointKind::bus_bar), "bar"));
  EXPECT_TRUE(says(joint_fix(JointKind::chassis), "chassis"));
  EXPECT_TRUE(says(joint_fix(JointKind::stud, {Observation::loose_nut}), "loose"));
  EXPECT_TRUE(says(joint_fix(JointKind::stud, {Observation::green_corrosion}), "corroded"));
}

TEST(Fix, EachKindOfSwitchHasItsOwnWork) {
  using trade::SwitchKind;
  EXPECT_TRUE(says(switch_fix(SwitchKind::battery_switch), "with the loads off"));
  EXPECT_TRUE(says(switch_fix(SwitchKind::breaker), "same rating and interrupting capacity"));
  EXPECT_TRUE(says(switch_fix(SwitchKind::contactor), "replace the contactor"));
  EXPECT_TRUE(says(switch_fix(SwitchKind::toggle, {Observation::pitted}), "pitted"));
}

TEST(Fix, AFuseKeepsItsRating) {
  auto system = out_and_back(10);
  system.runs[1].from = "x";
  add_fuse(system, "fuse", "l-", "x", 0.001).resistances.as_found = Resistance{0.020};
  EXPECT_TRUE(says(only_fix(system), "same rating"));
}

/// Every cause and every observation gives a whole sentence.
TEST(Fix, IsAlwaysASentence) {
  for (int k = 0; k <= static_cast<int>(Observation::frozen); ++k) {
    const auto seen = static_cast<Observation>(k);
    for (const auto& text : {lug_fix({seen}), wire_fix({seen}), joint_fix(trade::JointKind::stud, {seen}),
                             switch_fix(trade::SwitchKind::toggle, {seen})}) {
      ASSERT_GT(text.size(), std::string("Disconnect the battery first. ").size() + 10);
      EXPECT_EQ(text.back(), '.');
      EXPECT_EQ(text.find(".."), std::string::npos);
      EXPECT_LT(text.size(), 230U) << text;
    }
  }
}

}  // namespace
}  // namespace ohmtrail::diagnose
