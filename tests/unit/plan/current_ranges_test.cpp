// The ranges that the flow model begins with hold the solved state of every design that keeps its limits.
#include "plan/current_ranges.hpp"

#include <gtest/gtest.h>

#include "support/random_cases.hpp"
#include "support/sizing_systems.hpp"
#include "unit/plan/sizing_rig.hpp"
#include "unit/plan/small_systems.hpp"
#include "units/index.hpp"

namespace ohmtrail::plan {
namespace {

void expect_holds(const Interval& range, double value, const std::string& what) {
  const double slack = 1e-6 * (1 + std::abs(value));
  EXPECT_GE(value, range.low - slack) << what;
  EXPECT_LE(value, range.high + slack) << what;
}

void expect_state_within(const CurrentRanges& ranges, const solve::CaseSolution& solved) {
  for (std::size_t e = 0; e < solved.network.elements.size(); ++e) {
    if (!solved.network.elements[e].active || !std::isfinite(solved.solution.drop[e])) continue;
    const std::string& id = solved.network.elements[e].id;
    const double amperes = solved.solution.current[e];
    EXPECT_LE(std::abs(amperes), ranges.most_amperes * (1 + 1e-6)) << id;
    if (solved.network.elements[e].role != network::Role::charger)
      expect_holds(ranges.amperes[e], amperes, "amperes of " + id);
    if (solved.network.elements[e].role == network::Role::load)
      expect_holds(ranges.load_volts[e], solved.solution.drop[e], "volts of " + id);
  }
  for (std::size_t s = 0; s < solved.supplies.size(); ++s)
    expect_holds(ranges.terminal[s], solved.supplies[s].terminal, "posts");
}

/// How many random designs kept their limits; each of them is within the ranges that the thickest gives.
int kept_within(const SizingRig& rig, std::mt19937& engine) {
  const Assessment probe = rig.judged(rig.thickest());
  int kept = 0;
  for (int pick = 0; pick < 10; ++pick) {
    const Assessment solved = rig.judged(rig.any_design(engine));
    if (!solved.keeps_limits()) continue;
    ++kept;
    for (std::size_t c = 0; c < solved.cases.size(); ++c)
      expect_state_within(current_ranges(rig.space.cases[c].network, probe.cases[c]), solved.cases[c]);
  }
  return kept;
}

TEST(CurrentRanges, OfTreesHoldEveryDesignThatKeepsItsLimits) {
  std::mt19937 engine(2);
  int kept = 0;
  for (int turn = 1; turn <= test::random_cases(30); ++turn) {
    SCOPED_TRACE(turn);
    kept += kept_within(
        SizingRig(test::SizingSystems(static_cast<unsigned>(turn)).make({4, 5, 2, true, false})), engine);
  }
  EXPECT_GT(kept, test::random_cases(30) / 3);
}

/// A ring of wire: which way the current goes is for the design to say.
test::Systems ring(unsigned seed) {
  test::Systems make(seed);
  make.battery("bank", "b+", "b-");
  make.run("left", "b+", "l+", 2), make.run("right", "b+", "r+", 2), make.run("tie", "l+", "r+", 2);
  make.run("back", "l-", "b-", 2);
  make.load("lamp", "l+", "l-"), make.load("pump", "r+", "l-");
  return make;
}

TEST(CurrentRanges, OfRingsHoldThemToo) {
  std::mt19937 engine(4);
  int kept = 0;
  for (int turn = 1; turn <= test::random_cases(20); ++turn) {
    SCOPED_TRACE(turn);
    kept += kept_within(SizingRig(ring(static_cast<unsigned>(turn)).done()), engine);
  }
  EXPECT_GT(kept, 0);
}

TEST(CurrentRanges, OfTwoUnlikeBatteriesAllowWhatOneDrivesThroughTheOther) {
  std::mt19937 engine(6);
  int kept = 0;
  for (int turn = 1; turn <= test::random_cases(20); ++turn) {
    SCOPED_TRACE(turn);
    test::Systems make(static_cast<unsigned>(turn));
    make.battery("a", "a+", "a-"), make.battery("b", "b+", "b-");
    make.run("jumper plus", "b+", "a+", 0.5), make.run("jumper minus", "b-", "a-", 0.5);
    make.run("feed", "a+", "l+", 2), make.load("lamp", "l+", "a-");
    kept += kept_within(SizingRig(make.done()), engine);
  }
  EXPECT_GT(kept, 0);
}

/// What is joined by one element alone carries what the loads beyond it take, exactly where that is a
/// constant.
TEST(CurrentRanges, OfABridgeFollowFromTheLoadsBeyondIt) {
  test::Systems make(1);
  make.battery("bank", "b+", "b-");
  make.run("feed", "b+", "bus", 2), make.run("branch", "bus", "l+", 1), make.run("back", "l-", "b-", 2);
  make.load("lamp", "l+", "l-").takes = units::Current{5};
  make.load("pump", "bus", "l-").takes = units::Current{7};
  const SizingRig rig(make.done());
  const Assessment probe = rig.judged(rig.thickest());
  const CurrentRanges ranges = current_ranges(rig.space.cases[0].network, probe.cases[0]);
  const auto range = [&](const char* run) {
    const auto e = at(*rig.space.cases[0].network.element(run));
    EXPECT_TRUE(ranges.known[e]) << run;
    return ranges.amperes[e];
  };
  for (const auto& [run, amperes] :
       {std::pair{"feed", 12.0}, std::pair{"branch", 5.0}, std::pair{"back", 12.0}}) {
    EXPECT_NEAR(range(run).low, amperes, 1e-12) << run;
    EXPECT_NEAR(range(run).high, amperes, 1e-12) << run;
  }
}

}  // namespace
}  // namespace ohmtrail::plan
