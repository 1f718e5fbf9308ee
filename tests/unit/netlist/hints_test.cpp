#include <gtest/gtest.h>

#include "netlist/key_hint.hpp"
#include "netlist/nearest.hpp"
#include "netlist/problems.hpp"
#include "unit/netlist/netlist_text.hpp"

namespace ohmtrail::netlist::test {
namespace {

using testing::HasSubstr;

struct Hint {
  const char* pointer;
  const char* value;
  const char* hint;
};

void PrintTo(const Hint& hint, std::ostream* out) {
  *out << hint.pointer << " = " << hint.value;
}

class LikelySlip : public testing::TestWithParam<Hint> {};

TEST_P(LikelySlip, GetsItsRemedy) {
  const auto found = mistakes(with(GetParam().pointer, GetParam().value));
  ASSERT_FALSE(found.empty());
  std::string all;
  for (const Problem& problem : found) all += format(problem, "f") + "\n";
  EXPECT_THAT(all, HasSubstr(GetParam().hint));
}

INSTANTIATE_TEST_SUITE_P(WordsOfTheTrade, LikelySlip,
                         testing::Values(Hint{"/batteries/0/chemistry", "\"Lithium\"", "write \"lfp\""},
                                         Hint{"/batteries/0/chemistry", "\"lead acid\"", "write \"flooded\""},
                                         Hint{"/system/kind", "\"motorhome\"", "write \"vehicle\""},
                                         Hint{"/system/kind", "\"boat\"", "write \"vessel\""},
                                         Hint{"/runs/0/conductor", "\"copper\"", "write \"bare-copper\""},
                                         Hint{"/joints/0/kind", "\"body\"", "write \"chassis\""},
                                         Hint{"/joints/0/kind", "\"chasis\"", "did you mean \"chassis\""}));

INSTANTIATE_TEST_SUITE_P(
    Meter, LikelySlip,
    testing::Values(
        Hint{"/system/nominal", "\"12,6 V\"", "write \"12.6 V\""},
        Hint{"/system/nominal", "\"12.6\"", "write \"12.6 V\""},
        Hint{"/system/nominal", "\"12,6\"", "write \"12.6 V\""},
        Hint{"/system/nominal", "\"12 Vdc\"", "write \"12 V\""},
        Hint{"/system/nominal", "\"about 12 V\"", "write \"12 V\""},
        Hint{"/system/nominal", "\"~12 V\"", "write \"12 V\""},
        Hint{"/runs/0/resistance", "\"0.35 mOhm\"", "write \"0.35 mohm\""},
        Hint{"/runs/0/resistance", "\"0.35 milliohm\"", "write \"0.35 mohm\""},
        Hint{"/runs/0/resistance", "\"0R35\"", "write \"0.35 ohm\""},
        Hint{"/runs/0/length", "\"6'\"", "write \"6 ft\""},
        Hint{"/runs/0/length", "\"4\\\"\"", "write \"4 in\""},
        Hint{"/runs/0/length", "\"6 V\"", "expected a length"},
        Hint{"/batteries/0/capacity", "\"225 AH\"", "Ah"},
        Hint{"/runs/0/gauge", "\"AWG 2/0\"", "write \"2/0 AWG\""},
        Hint{"/runs/0/gauge", "\"awg #4\"", "write \"4 AWG\""},
        Hint{"/runs/0/gauge", "\"7/0 AWG\"", "\"4/0 AWG\""}, Hint{"/runs/0/gauge", "\"36 mm2\"", "35 mm2"},
        Hint{"/runs/0/gauge", "35", "\"35 mm2\""}, Hint{"/runs/0/gauge", "\"sae 4\"", "write \"4 SAE\""},
        Hint{"/runs/0/gauge", "[]", "such as \"2/0 AWG\""}, Hint{"/runs/0/gauge", "\"AWG\"", "expected"},
        Hint{"/loads/0/takes", "100", "write \"100 W\""}, Hint{"/loads/0/takes", "[]", "a power \"1000 W\""},
        Hint{"/loads/0/takes", "\"0 A\"", "leave it out of \"on\""},
        Hint{"/loads/0/on_for", "\"90\"", "write \"90 s\""},
        Hint{"/system/ambient", "\"21 degrees C\"", "write \"21 °C\""},
        Hint{"/system/ambient", "\"70 deg F\"", "write \"70 °F\""},
        Hint{"/batteries/0/soc", "\"80\"", "write \"80 %\""},
        Hint{"/batteries/0/made", "{}", "a text in quotes"},
        Hint{"/readings/0/minutes", "[]", "or a number in minutes"},
        Hint{"/cases/0/hours_per_day", "[]", "or a number in hours"},
        Hint{"/batteries/0/id", "12", "write \"12\""}, Hint{"/switches/0/seen", "\"warm\"", "in brackets"},
        Hint{"/ohmtrail", "\"1\"", "without quotes"},
        Hint{"/switches/0/closed", "\"true\"", "without quotes"}, Hint{"/cases/0/on", "\"L\"", "in brackets"},
        Hint{"/batteries/0/checks", "{\"cells\": [{\"sg\": 1265}]}", "write 1.265"}));

INSTANTIATE_TEST_SUITE_P(
    Names, LikelySlip,
    testing::Values(Hint{"/runs/0/lenght", "2", "did you mean \"length\"?"},
                    Hint{"/batteries/0/positive", "\"b+\"", "did you mean \"plus\"?"},
                    Hint{"/batteries/0/voltage", "12", "did you mean \"nominal\"?"},
                    Hint{"/runs/0/awg", "2", "did you mean \"gauge\"?"},
                    Hint{"/loads/0/power", "5", "did you mean \"takes\"?"},
                    Hint{"/fuse", "[]", "did you mean \"fuses\"?"},
                    Hint{"/readings/0/reads", "\"1 V\"", "did you mean \"volts\"?"},
                    Hint{"/runs/0/comment", "\"x\"", "did you mean \"note\"?"},
                    Hint{"/joints/0/kind", "\"bus_bar\"", "did you mean \"bus-bar\"?"},
                    Hint{"/joints/0/kind", "\"Stud\"", "did you mean \"stud\"?"},
                    Hint{"/batteries/0/seen", "[\"green corrosion\"]", "did you mean \"green-corrosion\"?"},
                    Hint{"/readings/0/case", "\"Run\"", "did you mean \"run\"?"},
                    Hint{"/readings/0/red", "\"B+\"", "did you mean \"b+\"?"},
                    Hint{"/loads/0/plus", "\"ll+\"", "did you mean \"l+\"?"},
                    Hint{"/cases/0/open", "[\"m\"]", "did you mean \"M\"?"},
                    Hint{"/runs/0/id", "\"S\"", "first given at /runs/0/id"},
                    Hint{"/cases/0/open", "[\"M/from-crimps\"]", "with return- before it"}));

TEST(KeyHint, OffersTheFirstMeaningThatTheObjectKnows) {
  EXPECT_EQ(key_synonym("voltage", {"nominal", "setpoint"}), "nominal");
  EXPECT_EQ(key_synonym("voltage", {"setpoint", "limit"}), "setpoint");
  EXPECT_EQ(key_synonym("Positive", {"plus"}), "plus") << "capitals do not matter";
  EXPECT_EQ(key_synonym("voltage", {"id"}), "") << "no such key here";
  EXPECT_EQ(key_synonym("colour", {"id", "plus", "minus"}), "");
}

TEST(Nearest, CountsLettersPutInTakenOutChangedAndSwapped) {
  EXPECT_EQ(edit_distance("length", "lenght", 3), 1U);
  EXPECT_EQ(edit_distance("panel", "pannel", 3), 1U);
  EXPECT_EQ(edit_distance("abc", "", 3), 3U);
  EXPECT_EQ(edit_distance("abc", "xyz", 2), 3U);
  EXPECT_EQ(edit_distance("Bus_Bar", "bus-bar", 2), 0U);
  EXPECT_GT(edit_distance("a", "abcdefgh", 3), 3U);
}

TEST(Nearest, FindsTheFirstOfTheBestAndNothingFarOff) {
  EXPECT_EQ(nearest("guage", {"gauge", "usage"}), "gauge");
  EXPECT_EQ(nearest("windlass", {"fridge", "lights"}), "");
  EXPECT_EQ(nearest("x", {"y"}), "") << "one letter of one is no likeness";
  EXPECT_EQ(nearest("ab", {"aa", "bb"}), "aa");
  EXPECT_EQ(nearest(std::string(1000, 'a'), {"a"}), "");
  EXPECT_EQ(one_of({"a", "b", "c"}), "a, b or c");
  EXPECT_EQ(one_of({"a"}), "a");
}

TEST(Format, IsTheLineOfTheContract) {
  const Problem problem{Problem::Severity::error, "x",        "/runs/0/length", 3, 14,
                        "\"6 V\" is volts",       "a length", "check"};
  EXPECT_EQ(format(problem, "boat.json"),
            "boat.json:3:14: /runs/0/length: \"6 V\" is volts, expected a length; check");
}

TEST(Format, TheRootsPointerIsASlashAndWarningsSaySo) {
  const Problem problem{Problem::Severity::warning, "x", "", 1, 1, "odd", "", ""};
  EXPECT_EQ(format(problem, "-"), "-:1:1: /: warning: odd");
}

TEST(Hints, ALongTextIsNotGuessedAt) {
  const auto found = mistakes(with("/runs/0/length", "\"six feet or so" + std::string(40, ' ') + "\""));
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].hint, "");
}

TEST(Format, WithoutAPlaceThereIsNoneAndNoLineIsShown) {
  const Problem problem{Problem::Severity::error, "x", "", 0, 0, "cannot be read", "", "is it there?"};
  EXPECT_EQ(format(problem, "boat.json"), "boat.json: cannot be read; is it there?");
  EXPECT_EQ(format_with_line(problem, "boat.json", "{}"), "boat.json: cannot be read; is it there?");
}

TEST(Format, ALineBeyondTheTextIsEmpty) {
  const Problem problem{Problem::Severity::error, "x", "", 9, 1, "odd", "", ""};
  EXPECT_EQ(format_with_line(problem, "f", "{\n}"), "f:9:1: /: odd\n    \n    ^");
}

TEST(Format, NoControlCharacterReachesTheTerminal) {
  const Problem problem{Problem::Severity::error,
                        "x",
                        "/\x1b[31m",
                        1,
                        1,
                        "a\nb\x7f\xC2\x9B"
                        "c\u2028",
                        "",
                        ""};
  const std::string line = format(problem, "f");
  EXPECT_TRUE(std::none_of(line.begin(), line.end(),
                           [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7f; }));
  EXPECT_EQ(line.find("\xC2\x9B"), std::string::npos);
  EXPECT_EQ(line.find("\u2028"), std::string::npos);
}

TEST(Format, PutsACaretUnderThePlace) {
  const std::string json = "{\r\n \"µ\": 1e999}\r\n";
  const auto found = mistakes(json);
  ASSERT_EQ(found.size(), 1U);
  const std::string told = format_with_line(found[0], "f", json);
  EXPECT_THAT(told, HasSubstr("\n     \"µ\": 1e999}\n          ^"));
}

TEST(Format, CutsLongLinesAroundTheCaret) {
  const std::string json =
      "{" + std::string(500, ' ') + "\"a\": 1e999, \"b\": \"" + std::string(500, 'x') + "\"}";
  const auto found = mistakes(json);
  ASSERT_EQ(found.size(), 1U);
  const std::string told = format_with_line(found[0], "f", json, 60);
  const auto line = told.find('\n') + 1, caret = told.find('\n', line) + 1;
  EXPECT_LE(caret - line, 61U);
  EXPECT_EQ(told.substr(line + (told.find('^') - caret), 5), "1e999");
}

TEST(Lines, AreCountedFromOneInOnePass) {
  LineCounter lines("ab\ncé\n\nd");
  const auto at = [&](std::uint32_t offset) {
    const auto p = lines.at(offset);
    return std::pair(p.line, p.column);
  };
  EXPECT_EQ(at(0), std::pair(1, 1));
  EXPECT_EQ(at(2), std::pair(1, 3));
  EXPECT_EQ(at(3), std::pair(2, 1));
  EXPECT_EQ(at(6), std::pair(2, 3));
  EXPECT_EQ(at(7), std::pair(3, 1));
  EXPECT_EQ(at(8), std::pair(4, 1));
  EXPECT_EQ(at(100), std::pair(4, 2));
}

}  // namespace
}  // namespace ohmtrail::netlist::test
