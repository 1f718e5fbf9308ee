#include "ohmtrail/plan/rewire_findings.hpp"

#include "protection_rig.hpp"

namespace ohmtrail::plan {
namespace {

using test::Rig;

/// Three batteries side by side, two of them by cables of their own; a lamp whose negative is thin already.
Rig three_batteries() {
  Rig rig = test::fused_at(0.1);
  rig.system.runs[2].gauge = trade::awg(14);
  for (const char* side : {"a", "c"}) {
    const std::string id = side;
    rig.battery(id, id + "+", id + "-");
    rig.run(id + " plus", id + "+", "b+", 2, 0.5);
    rig.run(id + " minus", id + "-", "b-", 2, 0.5);
  }
  return rig;
}

SizeResult chosen(const Rig& rig) {
  SizeResult sized;
  sized.found = true;
  sized.rewired = rig.system;
  return sized;
}

TEST(RaisedByRewire, WhatWasSoBeforeIsNotRaised) {
  const Rig rig = three_batteries();
  ASSERT_FALSE(rig.of_rule("unlike-gauge").empty());
  EXPECT_TRUE(raised_by_rewire(rig.system, chosen(rig), RuleSet::us_small_craft).empty());
}

TEST(RaisedByRewire, NamesTheLinkThatBecameThin) {
  const Rig rig = three_batteries();
  SizeResult sized = chosen(rig);
  for (auto& run : sized.rewired.runs)
    if (run.id == "c minus") run.gauge = trade::awg(10);
  const auto raised = raised_by_rewire(rig.system, sized, RuleSet::us_small_craft);
  ASSERT_EQ(raised.size(), 1U);
  EXPECT_EQ(raised[0].rule, "unlike-links");
  EXPECT_EQ(raised[0].subject, "c minus");
}

TEST(RaisedByRewire, NothingChosenRaisesNothing) {
  const Rig rig = three_batteries();
  SizeResult sized = chosen(rig);
  sized.rewired.runs.back().gauge = trade::awg(10);
  sized.found = false;
  EXPECT_TRUE(raised_by_rewire(rig.system, sized, RuleSet::us_small_craft).empty());
}

}  // namespace
}  // namespace ohmtrail::plan
