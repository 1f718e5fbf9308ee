// The guided search as it is spoken: what is shown, what is saved, and when a running load is called off.
#include <gtest/gtest.h>

#include "memory_doors.hpp"
#include "ohmtrail/netlist/read.hpp"

namespace ohmtrail::test {
namespace {

/// A windlass on a small boat (invented).
std::string boat(const std::string& load_keys = "") {
  return R"({"ohmtrail":1,"system":{"name":"invented launch","nominal":12},
    "batteries":[{"id":"B","plus":"+","minus":"-","nominal":12,"emf":12.7,"resistance":"4 mohm"}],
    "runs":[{"id":"feed","from":"+","to":"L+","gauge":"2 AWG","length":4,"return":{"from":"L-","to":"-"}}],
    "loads":[{"id":"windlass","plus":"L+","minus":"L-","takes":"80 A")" +
         load_keys + R"(}],
    "cases":[{"name":"hauling","on":["windlass"]},{"name":"at rest"}]})";
}
const std::string short_duty = R"(,"on_for":"60 s","rest_for":"300 s")";

struct TraceCommand : testing::Test {
  Program program;
  int exit = -1;

  void play(const std::string& file, std::initializer_list<std::string> typed) {
    program.files.content["boat.json"] = file;
    program.terminal.typed = typed;
    exit = program.run({"trace", "boat.json"});
  }
  [[nodiscard]] bool shown(const std::string& text) const {
    return program.terminal.shown.find(text) != std::string::npos;
  }
  [[nodiscard]] std::vector<netlist::Reading> saved() const {
    const auto read = netlist::read(program.files.content.at("boat.json"));
    EXPECT_TRUE(read);
    return read ? read->system.readings : std::vector<netlist::Reading>();
  }
};

TEST_F(TraceCommand, ShowsTheCautionsOnceAndFirst) {
  play(boat(), {"1", "done"});
  EXPECT_EQ(exit, 0);
  EXPECT_TRUE(program.terminal.shown.starts_with("Before you start\n"));
  EXPECT_EQ(program.terminal.shown.find("prove it dead"), program.terminal.shown.rfind("prove it dead"));
}

TEST_F(TraceCommand, SavesEveryReadingAtOnce) {
  play(boat(), {"1", "80", "12.3", "10.9"});
  EXPECT_EQ(program.files.written.size(), 3U);
  EXPECT_EQ(saved().size(), 3U);
  EXPECT_TRUE(shown("The input ended. What was read is saved"));
  EXPECT_TRUE(shown(" %\n")) << "the standing after the opening";
}

TEST_F(TraceCommand, WhatIsNotSavedDoesNotCount) {
  program.files.write_failure = "no space left";
  play(boat(), {"1", "80", "done"});
  EXPECT_TRUE(shown("Not saved, so not counted: no space left"));
  EXPECT_TRUE(saved().empty());
  EXPECT_EQ(program.terminal.shown.find("2. "), std::string::npos) << "the same is asked again";
}

TEST_F(TraceCommand, NoLineIsWiderThanSixtyColumns) {
  play(boat(short_duty), {"nowhere", "1", "", "banana", "80", "why", "", "12.3", "", "10.9", "", "why",
                          "seen elves", "-5", "skip", "back", "done"});
  EXPECT_GT(program.terminal.shown.size(), 1000U);
  std::size_t column = 0;
  for (const char c : program.terminal.shown) {
    column = c == '\n' ? 0 : column + ((c & 0xC0) != 0x80 ? 1 : 0);
    EXPECT_LE(column, 60U);
    if (column > 60) break;
  }
}

TEST_F(TraceCommand, CallsALoadOfShortDutyOffInTime) {
  play(boat(short_duty), {"1", "", "@90 80", "@1 done"});
  EXPECT_TRUE(shown("Switch \"windlass\" on, read, and switch it off."));
  const std::size_t off = program.terminal.shown.find("Time is up: switch \"windlass\" OFF now.");
  ASSERT_NE(off, std::string::npos);
  EXPECT_LT(off, program.terminal.shown.find("> 80")) << "said before the answer came";
  EXPECT_EQ(saved().size(), 1U) << "what was seen in time still counts";
}

TEST_F(TraceCommand, WaitsForTheRest) {
  play(boat(short_duty), {"1", "", "@60 ", "@10 ", "@400 ", "@5 80", "done"});
  EXPECT_TRUE(shown("\"windlass\" must rest 5 min more."));
  EXPECT_TRUE(shown("Not yet."));
  EXPECT_TRUE(shown("\"windlass\" has rested."));
  EXPECT_EQ(saved().size(), 1U);
}

TEST_F(TraceCommand, EndOfInputCallsTheLoadOff) {
  play(boat(short_duty), {"1", ""});
  EXPECT_TRUE(shown("Switch \"windlass\" off."));
  EXPECT_TRUE(shown("The input ended."));
}

TEST_F(TraceCommand, OrderToSwitchOffComesEvenIfNothingCanBeSaved) {
  program.files.write_failure = "no space left";
  play(boat(short_duty), {"1", "", "@5 80", "done"});
  EXPECT_TRUE(shown("Switch \"windlass\" off."));
  EXPECT_TRUE(shown("Not saved"));
}

TEST_F(TraceCommand, SaysAtOnceThatAReadingDoesNotFit) {
  play(boat(), {"1", "80", "12.3", "10.9", "9", "9", "9", "9", "done"});
  EXPECT_TRUE(shown("does not fit"));
}

TEST_F(TraceCommand, StoresTheMinuteOfEachReading) {
  play(boat(), {"1", "80", "@130 12.3", "done"});
  ASSERT_EQ(saved().size(), 2U);
  EXPECT_EQ(saved()[0].minutes, 0);
  EXPECT_EQ(saved()[1].minutes, 2);
  program.files.idle = units::Time{600};
  program.terminal.typed = {"10.9"};
  program.terminal.clock = {};
  program.run({"trace", "boat.json"});
  EXPECT_EQ(saved().back().minutes, 12);
}

TEST_F(TraceCommand, StartsANewFileFromSixAnswers) {
  program.terminal.typed = {"12 V", "AGM, 100 Ah", "2 AWG", "12 ft", "none", "80 A", "1", "80"};
  EXPECT_EQ(program.run({"trace", "--start", "new.json"}), 0);
  const auto read = netlist::read(program.files.content.at("new.json"));
  ASSERT_TRUE(read);
  EXPECT_EQ(read->system.readings.size(), 1U);
}

TEST_F(TraceCommand, StartNeverWritesOverAFile) {
  program.files.content["new.json"] = boat();
  EXPECT_EQ(program.run({"trace", "--start", "new.json"}), 2);
  EXPECT_NE(program.terminal.complaints.find("is there already"), std::string::npos);
  EXPECT_TRUE(program.files.written.empty());
}

TEST_F(TraceCommand, StartLeftHalfwayWritesNothing) {
  program.terminal.typed = {"12 V", "agm, 100 Ah", "2 AWG", "12 ft"};
  EXPECT_EQ(program.run({"trace", "--start", "new.json"}), 0);
  EXPECT_TRUE(shown("nothing was written"));
  EXPECT_TRUE(program.files.written.empty());
}

TEST_F(TraceCommand, KeepsTheReadingsInAnotherFileWhereAsked) {
  program.files.content["boat.json"] = boat();
  program.terminal.typed = {"1", "80"};
  EXPECT_EQ(program.run({"trace", "boat.json", "-o", "found.json"}), 0);
  EXPECT_EQ(program.files.content["boat.json"], boat());
  program.terminal.typed = {"12.3"};
  EXPECT_EQ(program.run({"trace", "boat.json", "-o", "found.json"}), 0);
  const auto read = netlist::read(program.files.content.at("found.json"));
  ASSERT_TRUE(read);
  EXPECT_EQ(read->system.readings.size(), 2U) << "goes on in the file that is there";
}

TEST_F(TraceCommand, WantsOneFileToWorkOn) {
  EXPECT_EQ(program.run({"trace"}), 2);
  EXPECT_EQ(program.run({"trace", "a.json", "--start", "b.json"}), 2);
  EXPECT_EQ(program.run({"trace", "-"}), 2);
}

}  // namespace
}  // namespace ohmtrail::test
