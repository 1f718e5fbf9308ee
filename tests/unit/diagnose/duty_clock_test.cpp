#include "ohmtrail/diagnose/duty_clock.hpp"

#include <gtest/gtest.h>

#include "trace_rig.hpp"

namespace ohmtrail::diagnose {
namespace {

using units::Time;

const DutyClock::Ids motor{"motor"};

DutyClock minute_on_nine_off() {
  return DutyClock(test::TraceRig(0, R"(,"on_for":"60 s","rest_for":"540 s")").system);
}

TEST(DutyClock, KnowsWhichLoadsOfACaseAreOfShortDuty) {
  const netlist::System system = test::TraceRig(0, R"(,"on_for":"60 s")").system;
  const DutyClock clock(system);
  EXPECT_EQ(clock.short_duty(system, system.cases[0]), motor);
  EXPECT_TRUE(clock.short_duty(system, system.cases[1]).empty());
  const netlist::System lasting = test::TraceRig(0).system;
  EXPECT_TRUE(DutyClock(lasting).short_duty(lasting, lasting.cases[0]).empty());
}

TEST(DutyClock, KeepsAHandsReactionBack) {
  EXPECT_EQ(minute_on_nine_off().left(motor, Time{0}), Time{57});
  const DutyClock brief(test::TraceRig(0, R"(,"on_for":"4 s")").system);
  EXPECT_EQ(brief.left(motor, Time{0}), Time{2});
}

TEST(DutyClock, CountsDownWhileItRuns) {
  DutyClock clock = minute_on_nine_off();
  clock.start(motor, Time{100});
  EXPECT_EQ(clock.running(), motor);
  EXPECT_FALSE(clock.has_run(motor));
  EXPECT_EQ(clock.left(motor, Time{130}), Time{27});
  EXPECT_EQ(clock.left(motor, Time{200}), Time{0});
  EXPECT_EQ(clock.rest(motor, Time{130}), Time{0});
}

TEST(DutyClock, ShortRunsAddUp) {
  DutyClock clock = minute_on_nine_off();
  clock.start(motor, Time{0});
  clock.stop(Time{20});
  EXPECT_TRUE(clock.has_run(motor));
  EXPECT_EQ(clock.rest(motor, Time{20}), Time{0}) << "37 s are left";
  clock.start(motor, Time{30});
  EXPECT_EQ(clock.left(motor, Time{30}), Time{37});
  clock.stop(Time{65});
  EXPECT_EQ(clock.rest(motor, Time{65}), Time{540}) << "2 s are too short to read anything";
  EXPECT_EQ(clock.left(motor, Time{65}), Time{2});
}

TEST(DutyClock, HasRestedAfterItsWholeRest) {
  DutyClock clock = minute_on_nine_off();
  clock.start(motor, Time{0});
  clock.stop(Time{57});
  EXPECT_EQ(clock.rest(motor, Time{157}), Time{440});
  EXPECT_EQ(clock.rest(motor, Time{597}), Time{0});
  EXPECT_EQ(clock.left(motor, Time{597}), Time{57});
}

TEST(DutyClock, AShortRunIsForgottenAfterTheWholeRestToo) {
  DutyClock clock = minute_on_nine_off();
  clock.start(motor, Time{0});
  clock.stop(Time{20});
  EXPECT_EQ(clock.left(motor, Time{500}), Time{37});
  EXPECT_EQ(clock.left(motor, Time{560}), Time{57});
}

TEST(DutyClock, RestsThreeTimesAsLongWhereTheFileGivesNoRest) {
  const DutyClock clock(test::TraceRig(0, R"(,"on_for":"60 s")").system);
  EXPECT_EQ(clock.whole_rest(motor), Time{180});
  EXPECT_EQ(clock.whole_run(motor), Time{60});
}

TEST(DutyClock, StartingAgainStopsWhatRan) {
  DutyClock clock = minute_on_nine_off();
  clock.start(motor, Time{0});
  clock.start(motor, Time{10});
  EXPECT_EQ(clock.left(motor, Time{10}), Time{47});
}

TEST(DutyClock, ARunHeardOfAfterwardsCountsNoMoreThanItMayRun) {
  DutyClock clock = minute_on_nine_off();
  clock.spend(motor, Time{0}, Time{15});
  EXPECT_EQ(clock.left(motor, Time{15}), Time{42});
  EXPECT_TRUE(clock.running().empty());
  clock.spend(motor, Time{20}, Time{4000});
  EXPECT_EQ(clock.rest(motor, Time{4000}), Time{540});
}

TEST(DutyClock, TwoTogetherAreBoundByTheShorter) {
  netlist::System system = test::TraceRig(0, R"(,"on_for":"60 s","rest_for":"540 s")").system;
  netlist::Load second = system.loads.front();
  second.id = "thruster";
  second.on_for = Time{30};
  second.rest_for = Time{600};
  system.loads.push_back(second);
  system.cases.front().on.push_back("thruster");
  DutyClock clock(system);
  const DutyClock::Ids both = clock.short_duty(system, system.cases.front());
  EXPECT_EQ(both, (DutyClock::Ids{"motor", "thruster"}));
  EXPECT_EQ(clock.left(both, Time{0}), Time{27});
  clock.start(both, Time{0});
  clock.stop(Time{26});
  EXPECT_EQ(clock.rest(both, Time{26}), Time{600});
  EXPECT_EQ(clock.rest(motor, Time{26}), Time{0}) << "the motor has 31 s left";
}

TEST(DutyClock, WordsAreRoundedToTheSafeSide) {
  EXPECT_EQ(run_in_words(Time{57.9}), "55 s");
  EXPECT_EQ(run_in_words(Time{14.9}), "14 s");
  EXPECT_EQ(run_in_words(Time{119}), "1 min 50 s");
  EXPECT_EQ(rest_in_words(Time{539.2}), "9 min");
  EXPECT_EQ(rest_in_words(Time{121}), "2 min 10 s");
  EXPECT_EQ(rest_in_words(Time{43.2}), "45 s");
  EXPECT_EQ(rest_in_words(Time{0.2}), "1 s");
}

}  // namespace
}  // namespace ohmtrail::diagnose
