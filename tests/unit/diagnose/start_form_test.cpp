#include <gtest/gtest.h>

#include "ohmtrail/diagnose/trace.hpp"
#include "ohmtrail/netlist/read.hpp"
#include "ohmtrail/netlist/write.hpp"

namespace ohmtrail::diagnose {
namespace {

const std::vector<std::string> answers{"12 V", "agm, 100 Ah", "2 AWG", "12 ft", "switch, fuse 250 A", "80 A"};

/// The form with one of the answers put differently; the others as above.
StartForm filled(std::size_t which = 6, const std::string& otherwise = "") {
  StartForm form;
  for (std::size_t k = 0; k < answers.size(); ++k) {
    const auto mistake = form.answer(k == which ? otherwise : answers[k]);
    EXPECT_FALSE(mistake) << *mistake;
  }
  return form;
}

TEST(StartForm, AsksSixThingsEachWithAnExample) {
  StartForm form;
  for (std::size_t k = 0; k < answers.size(); ++k) {
    EXPECT_FALSE(form.complete());
    const std::string question = form.question();
    EXPECT_TRUE(question.starts_with(std::to_string(k + 1) + "/6 ")) << question;
    EXPECT_NE(question.find('('), std::string::npos) << question;
    EXPECT_FALSE(form.answer(answers[k]));
  }
  EXPECT_TRUE(form.complete());
}

TEST(StartForm, TakesABatteryWithoutCommas) {
  for (const char* line : {"flooded 200 Ah 700 CCA", "flooded, 200Ah 700CCA", "flooded 200 Ah, 700 CCA"}) {
    const netlist::Battery battery = filled(1, line).system().batteries.front();
    EXPECT_EQ(battery.chemistry, trade::Chemistry::flooded) << line;
    EXPECT_EQ(battery.capacity, units::Charge{200 * 3600.0}) << line;
    EXPECT_EQ(battery.cca, units::Current{700}) << line;
  }
}

TEST(StartForm, MakesAFileThatIsRight) {
  const auto read = netlist::read(netlist::to_json(filled().system()));
  ASSERT_TRUE(read) << netlist::format(read.error().front(), "form");
  const netlist::System& system = read->system;
  EXPECT_EQ(system.info.nominal, units::Voltage{12});
  ASSERT_EQ(system.batteries.size(), 1U);
  EXPECT_EQ(system.batteries[0].chemistry, trade::Chemistry::agm);
  EXPECT_NEAR(system.batteries[0].capacity->si(), 360000, 1);
  ASSERT_EQ(system.runs.size(), 1U);
  EXPECT_NEAR(system.runs[0].length.si(), 3.6576, 1e-9);
  EXPECT_TRUE(system.runs[0].length_estimated);
  EXPECT_TRUE(system.runs[0].return_conductor);
  ASSERT_EQ(system.fuses.size(), 1U);
  EXPECT_EQ(system.fuses[0].rating, units::Current{250});
  EXPECT_EQ(system.switches.size(), 1U);
  ASSERT_EQ(system.cases.size(), 2U);
  EXPECT_EQ(system.cases[0].on, std::vector<std::string>{"load"});
}

TEST(StartForm, EveryWayOfTypingAnAnswer) {
  for (const auto& [which, typed] :
       std::vector<std::pair<std::size_t, const char*>>{{0, "24"},
                                                        {0, " 48 V "},
                                                        {1, "100 Ah"},
                                                        {1, "flooded, 700 CCA"},
                                                        {1, "lfp, 200 Ah"},
                                                        {2, "35 mm2"},
                                                        {2, "2/0 AWG"},
                                                        {3, "4 m"},
                                                        {3, "144 in"},
                                                        {4, "none"},
                                                        {4, "switch"},
                                                        {4, "fuse 250"},
                                                        {4, "switch 300 A, fuse 250 A"},
                                                        {5, "80"},
                                                        {5, "1 kW"}}) {
    const StartForm form = filled(which, typed);
    EXPECT_TRUE(netlist::read(netlist::to_json(form.system()))) << typed;
  }
}

TEST(StartForm, NothingBetweenMakesNothing) {
  const netlist::System bare = filled(4, "none").system();
  EXPECT_TRUE(bare.fuses.empty());
  EXPECT_TRUE(bare.switches.empty());
  EXPECT_EQ(bare.runs[0].from, "battery +");
  EXPECT_EQ(filled(4, "fuse 250 A").system().runs[0].from, "fuse out");
}

TEST(StartForm, AMistakeIsSaidAndTheSameAskedAgain) {
  const std::vector<std::vector<std::string>> wrong{
      {"", "twelve", "0 V", "-12 V", "12 A"},        {"", "agm", "banana", "100 m", "agm, 0 Ah"},
      {"", "thick", "35 m", "2 AWG cable"},          {"", "12", "long", "-4 m", "4 V"},
      {"fuse", "fuse big", "lever", "switch, fuse"}, {"", "banana", "0 A", "12 V"}};
  StartForm form;
  for (std::size_t k = 0; k < wrong.size(); ++k) {
    const std::string question = form.question();
    for (const std::string& line : wrong[k]) {
      const auto mistake = form.answer(line);
      ASSERT_TRUE(mistake) << k << ": \"" << line << '"';
      EXPECT_FALSE(mistake->empty());
      EXPECT_EQ(form.question(), question);
    }
    EXPECT_FALSE(form.answer(answers[k]));
  }
}

// An answer that was refused leaves nothing behind.
TEST(StartForm, ARefusedAnswerDoesNotCount) {
  StartForm form;
  for (std::size_t k = 0; k < 4; ++k) EXPECT_FALSE(form.answer(answers[k]));
  EXPECT_TRUE(form.answer("switch, fuse 250 A, lever"));
  EXPECT_FALSE(form.answer("none"));
  EXPECT_FALSE(form.answer("80 A"));
  EXPECT_TRUE(form.system().switches.empty());
  EXPECT_TRUE(form.system().fuses.empty());
}

TEST(StartForm, TheSearchCanBeginWithIt) {
  Trace trace(filled().system());
  EXPECT_TRUE(trace.question({}).starts_with("What is switched on? 1 = load on"));
  static_cast<void>(trace.answer("1", {}));
  EXPECT_EQ(trace.question({}), "1. Clamp round \"cable\": amperes?");
}

}  // namespace
}  // namespace ohmtrail::diagnose
