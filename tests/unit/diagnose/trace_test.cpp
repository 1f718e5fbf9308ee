#include "ohmtrail/diagnose/trace.hpp"

#include <gtest/gtest.h>

#include "trace_rig.hpp"

namespace ohmtrail::diagnose {
namespace {

using test::says;
using test::TraceRig;

constexpr units::Time start{};

/// A rig whose case is told and whose opening was read.
struct Opened {
  TraceRig rig;
  Trace trace;

  explicit Opened(int bad) : rig(bad), trace(rig.system) {
    static_cast<void>(trace.answer("running", start));
    for (int k = 0; k < 3; ++k) rig.take(trace);
  }
  std::string question() { return trace.question(start); }
  double chance_of(const std::string& repair) {
    for (const RepairChance& one : trace.standing()->repairs)
      if (one.id == repair) return one.probability;
    return -1;
  }
  Answered type(const std::string& line) {
    Answered answered = trace.answer(line, start);
    if (answered.change) {
      rig.apply(*answered.change);
      trace.update(rig.system, start);
    }
    return answered;
  }
};

TEST(Trace, AsksFirstWhatIsSwitchedOn) {
  TraceRig rig(3);
  Trace trace(rig.system);
  EXPECT_EQ(trace.question(start),
            "What is switched on? 1 = running (everything on) 2 = at rest (nothing on)");
  EXPECT_EQ(trace.standing(), nullptr);
  EXPECT_TRUE(says(trace.answer("nowhere", start).say, "none of these"));
  EXPECT_TRUE(says(trace.answer("", start).say, "Type the reading"));
  EXPECT_TRUE(trace.answer("1", start).say.empty());
  EXPECT_EQ(trace.question(start), "1. Clamp round \"lead\": amperes?");
}

TEST(Trace, AsksCurrentAndBothVoltagesBeforeItShowsHowThingsStand) {
  TraceRig rig(3);
  Trace trace(rig.system);
  static_cast<void>(trace.answer("running", start));
  rig.take(trace);
  EXPECT_EQ(trace.question(start), "2. Red on \"+\", black on \"-\": volts?");
  rig.take(trace);
  EXPECT_EQ(trace.question(start), "3. Red on \"p8\", black on \"-\": volts?");
  EXPECT_EQ(trace.standing(), nullptr);
  rig.take(trace);
  ASSERT_NE(trace.standing(), nullptr);
  EXPECT_TRUE(trace.question(start).starts_with("4. "));
}

TEST(Trace, FindsTheBadJointWhereverItIs) {
  for (int bad = 0; bad < TraceRig::joints; ++bad) {
    Opened search(bad);
    int readings = 0;
    for (; !search.trace.ended() && readings < 10; ++readings) search.rig.take(search.trace);
    EXPECT_TRUE(search.trace.ended());
    EXPECT_NE(search.trace.ending().find("It is the joint \"j" + std::to_string(bad) + '"'),
              std::string::npos)
        << search.trace.ending();
    EXPECT_LE(readings, 5) << "halvings of nine repairs, and one across it";
  }
}

TEST(Trace, GoesOnWhereTheReadingsEnd) {
  Opened search(5);
  search.rig.take(search.trace);
  const Trace again(search.rig.system);
  EXPECT_EQ(again.question(start), search.question());
  EXPECT_EQ(again.standing()->repairs.front().id, search.trace.standing()->repairs.front().id);
}

TEST(Trace, TakesReadingsAsPeopleTypeThem) {
  for (const auto& [typed, volts] : std::vector<std::pair<std::string, double>>{
           {"0.142", 0.142}, {"142 mV", 0.142}, {"142m", 0.142}, {" .142 ", 0.142}}) {
    Opened search(5);
    const Answered answered = search.trace.answer(typed, start);
    ASSERT_TRUE(answered.change) << typed;
    const auto& reading = std::get<netlist::Reading>(*answered.change);
    EXPECT_NEAR(std::get<netlist::VoltsReading>(reading.what).value.si(), volts, 1e-12);
    EXPECT_EQ(reading.in_case, "running");
    EXPECT_EQ(reading.meter, "m");
  }
}

TEST(Trace, RefusesNonsenseAndAsksTheSameAgain) {
  Opened search(5);
  const std::string question = search.question();
  for (const char* nonsense : {"banana", "12 A", "--", "4000", "nan", "1e9 V", "12 V 3"}) {
    const Answered answered = search.trace.answer(nonsense, start);
    EXPECT_FALSE(answered.change) << nonsense;
    EXPECT_FALSE(answered.say.empty()) << nonsense;
    EXPECT_EQ(search.question(), question);
  }
}

TEST(Trace, TakesTheLastReadingBack) {
  Opened search(5);
  const std::string question = search.question();
  search.rig.take(search.trace);
  search.type("back");
  EXPECT_EQ(search.question(), question);
  TraceRig empty(5);
  Trace fresh(empty.system);
  static_cast<void>(fresh.answer("1", start));
  EXPECT_TRUE(says(fresh.answer("back", start).say, "no reading to take back"));
}

TEST(Trace, SkippedReadingIsNotAskedAgain) {
  Opened search(5);
  std::set<std::string> asked;
  for (int k = 0; k < 6 && !search.trace.ended(); ++k) {
    EXPECT_TRUE(asked.insert(search.question()).second) << search.question();
    search.type("skip");
  }
}

// Nobody has a clamp: the search must come to its end all the same.
TEST(Trace, FindsTheFaultWithoutTheClamp) {
  TraceRig rig(2);
  Trace trace(rig.system);
  static_cast<void>(trace.answer("running", start));
  static_cast<void>(trace.answer("skip", start));
  EXPECT_TRUE(trace.question(start).starts_with("1. Red on \"+\""));
  for (int k = 0; k < 12 && !trace.ended(); ++k) {
    if (trace.question(start).find("lamp") != std::string::npos) {
      static_cast<void>(trace.answer("skip", start));
    } else {
      rig.take(trace);
    }
  }
  EXPECT_NE(trace.ending().find("\"j2\""), std::string::npos) << trace.ending();
}

TEST(Trace, SaysWhyItAsks) {
  Opened search(5);
  const Answered why = search.trace.answer("why", start);
  EXPECT_TRUE(says(why.say, "A sound system shows about"));
  EXPECT_TRUE(says(why.say, "one bit halves the suspects"));
}

TEST(Trace, NotesWhatWasSeen) {
  Opened search(5);
  const double before = search.chance_of("j6");
  const Answered there = search.type("seen green-corrosion, loose-nut at j6");
  ASSERT_TRUE(there.change);
  const auto& seen = std::get<SeenOn>(*there.change);
  EXPECT_EQ(seen.element, "j6");
  EXPECT_EQ(seen.seen.size(), 2U);
  EXPECT_GT(search.chance_of("j6"), 2 * before);
  EXPECT_FALSE(search.trace.answer("seen elves", start).change);
  EXPECT_TRUE(says(search.trace.answer("seen", start).say, "Seen what?"));
}

TEST(Trace, EndsWhenToldTo) {
  Opened search(5);
  search.type("done");
  EXPECT_TRUE(search.trace.ended());
  EXPECT_EQ(search.question(), "");
  EXPECT_TRUE(search.trace.remarks(start).empty());
  EXPECT_NE(search.trace.ending().find("goes on from here"), std::string::npos);
}

TEST(Trace, NamesAReadingThatDoesNotFit) {
  Opened search(5);
  search.type("skip");
  const std::string question = search.question();
  const double right = std::stod(search.rig.shown(question));
  search.type(std::to_string(-right));
  ASSERT_FALSE(search.trace.doubts().empty()) << question;
  EXPECT_TRUE(says(search.trace.doubts(), "does not fit the other readings"));
  EXPECT_TRUE(says(search.trace.doubts(), "probes swapped"));
  search.type("back");
  EXPECT_TRUE(search.trace.doubts().empty());
  search.rig.take(search.trace);
  EXPECT_TRUE(search.trace.doubts().empty()) << search.trace.doubts().front();
}

TEST(Trace, AsksOfAClampWhetherItWasTheOtherWayRound) {
  Opened search(5);
  TraceRig& rig = search.rig;
  Trace again(rig.system);
  const auto first = std::get<netlist::AmpsReading>(rig.system.readings.front().what);
  netlist::Reading turned = rig.system.readings.front();
  turned.what = netlist::AmpsReading{-first.value, first.in};
  rig.system.readings.push_back(turned);
  again.update(rig.system, start);
  EXPECT_TRUE(says(again.doubts(), "Was the clamp the other way round?"))
      << (again.doubts().empty() ? "no doubt" : again.doubts().front());
}

TEST(Trace, CountsMinutesFromTheFirstReading) {
  Opened search(5);
  search.rig.take(search.trace, units::Time{200});
  EXPECT_EQ(search.rig.system.readings.front().minutes, 0);
  EXPECT_EQ(search.rig.system.readings.back().minutes, 3);
  Trace after_lunch(search.rig.system, units::Time{5}, units::Time{1800});
  search.rig.take(after_lunch, units::Time{65});
  EXPECT_EQ(search.rig.system.readings.back().minutes, 34);
}

TEST(Trace, CautionsAreFewAndWhole) {
  const auto cautions = Trace::cautions();
  EXPECT_EQ(cautions.size(), 5U);
  for (const char* word : {"gas", "acid", "short circuit", "rings", "fused", "prove it dead", "swimmers",
                           "anchor", "wheels chocked", "licensed electrician", "shore power"}) {
    EXPECT_TRUE(says(cautions, word)) << word;
  }
}

}  // namespace
}  // namespace ohmtrail::diagnose
