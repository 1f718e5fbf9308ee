// A load of short duty never stays on past its `on_for`: what the search says, and when.
#include <gtest/gtest.h>

#include "ohmtrail/diagnose/trace.hpp"
#include "trace_rig.hpp"

namespace ohmtrail::diagnose {
namespace {

using test::says;
using test::TraceRig;
using units::Time;

struct ShortDuty : testing::Test {
  TraceRig rig{5, R"(,"on_for":"60 s","rest_for":"540 s")"};
  Trace trace{rig.system};
  double clock = 0;

  void SetUp() override { static_cast<void>(trace.answer("running", now())); }
  [[nodiscard]] Time now() const { return Time{clock}; }
  Answered type(const std::string& line) {
    Answered answered = trace.answer(line, now());
    if (answered.change) {
      rig.apply(*answered.change);
      trace.update(rig.system, now());
    }
    return answered;
  }
  Answered read_after(double seconds) {
    const std::string shown = rig.shown(trace.question(now()));
    type("");
    clock += seconds;
    return type(shown);
  }
};

TEST_F(ShortDuty, ToldToStayOffUntilItIsAskedFor) {
  Trace fresh(rig.system);
  EXPECT_TRUE(says(fresh.answer("running", now()).say, "Leave \"motor\" off until it is asked for"));
}

TEST_F(ShortDuty, ProbesGoOnFirstThenTheLoad) {
  EXPECT_TRUE(says(trace.remarks(now()), "\"motor\" may run 55 s, then rests 9 min"));
  EXPECT_TRUE(says(trace.remarks(now()), "Swimmers clear"));
  EXPECT_EQ(trace.question(now()), "1. \"motor\" still off: clamp round \"lead\"; then press Enter.");
  EXPECT_FALSE(trace.patience(now())) << "nothing runs: there is no hurry";
  EXPECT_TRUE(says(type("").say, "Switch \"motor\" on"));
  EXPECT_EQ(trace.question(now()), "1. Amperes, within 55 s?");
  EXPECT_EQ(trace.patience(now()), Time{57});
}

TEST_F(ShortDuty, SwitchedOffAsSoonAsItIsRead) {
  const Answered read = read_after(20);
  ASSERT_TRUE(read.change);
  EXPECT_TRUE(says(read.at_once, "Switch \"motor\" off. It may run 35 s more."));
  EXPECT_FALSE(trace.patience(now()));
}

TEST_F(ShortDuty, TimeIsUpBeforeItsOnForIs) {
  type("");
  clock += trace.patience(now())->si();
  EXPECT_LT(clock, 60);
  EXPECT_TRUE(says(trace.lapse(now()), "Time is up: switch \"motor\" OFF now. It must rest 9 min."));
  EXPECT_EQ(trace.question(now()), "1. Amperes if you have them; else press Enter.");
  EXPECT_FALSE(trace.patience(now()));
}

TEST_F(ShortDuty, AReadingSeenInTimeStillCounts) {
  type("");
  clock = 57;
  static_cast<void>(trace.lapse(now()));
  EXPECT_TRUE(type("100").change);
}

TEST_F(ShortDuty, NotSwitchedOnAgainBeforeItHasRested) {
  type("");
  clock = 57;
  static_cast<void>(trace.lapse(now()));
  type("");
  EXPECT_TRUE(says(trace.remarks(now()), "must rest 9 min more"));
  EXPECT_EQ(trace.patience(now()), Time{540});
  clock = 300;
  EXPECT_TRUE(says(type("").say, "Not yet"));
  EXPECT_TRUE(says(type("100").say, "should be resting"));
  EXPECT_TRUE(rig.system.readings.empty());
  clock = 597;
  EXPECT_TRUE(says(trace.lapse(now()), "\"motor\" has rested"));
  EXPECT_TRUE(says(type("").say, "Switch \"motor\" on"));
}

TEST_F(ShortDuty, SeveralShortRunsShareItsTime) {
  read_after(20);
  read_after(20);
  const Answered third = read_after(14);
  EXPECT_TRUE(says(third.at_once, "It must rest 9 min"));
  EXPECT_TRUE(says(trace.remarks(now()), "must rest"));
}

TEST_F(ShortDuty, ANumberTypedAtOnceCountsTheTimeSinceItWasAsked) {
  clock += 30;
  const Answered read = type("100");
  ASSERT_TRUE(read.change);
  EXPECT_TRUE(says(read.at_once, "It may run 25 s more"));
}

TEST_F(ShortDuty, EveryOtherAnswerSwitchesItOffToo) {
  for (const char* line : {"skip", "seen loose-nut at j3", "done"}) {
    Trace fresh(rig.system);
    static_cast<void>(fresh.answer("running", now()));
    static_cast<void>(fresh.answer("", now()));
    EXPECT_TRUE(says(fresh.answer(line, now()).at_once, "Switch \"motor\" off")) << line;
  }
  read_after(1);
  type("");
  EXPECT_TRUE(says(type("back").at_once, "Switch \"motor\" off"));
}

TEST_F(ShortDuty, NonsenseDoesNotStopTheClock) {
  type("");
  clock = 10;
  EXPECT_FALSE(type("banana").change);
  EXPECT_EQ(trace.patience(now()), Time{47});
  EXPECT_TRUE(says(type("").say, "Type the reading"));
  EXPECT_EQ(trace.patience(now()), Time{47});
}

// Whatever is answered, and however slowly, the load is off in time.
TEST_F(ShortDuty, WholeSearchNeverRunsItPastItsTime) {
  double on_since = -1, used = 0, stopped = -1e9;
  for (int k = 0; k < 60 && !trace.ended(); ++k) {
    const std::string question = trace.question(now());
    if (question.find("still off") != std::string::npos) {
      if (const auto rest = trace.patience(now())) clock += rest->si();
      const std::string shown = rig.shown(question);
      if (clock - stopped >= 540) used = 0;
      type("");
      ASSERT_NE(trace.question(now()).find("within"), std::string::npos) << question;
      on_since = clock;
      const double thinks = 7.0 * (k % 9);
      const double most = trace.patience(now())->si();
      clock += std::min(thinks, most);
      if (thinks >= most) static_cast<void>(trace.lapse(now()));
      used += clock - on_since;
      stopped = clock;
      EXPECT_LE(used, 60) << k;
      type(shown);
    }
    clock += 10;
  }
  EXPECT_NE(trace.ending().find("\"j5\""), std::string::npos) << trace.ending();
}

}  // namespace
}  // namespace ohmtrail::diagnose
