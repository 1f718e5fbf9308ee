#include "unit/netlist/netlist_text.hpp"

#include <gtest/gtest.h>

namespace ohmtrail::netlist::test {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;

TEST(Sound, TheBaseOfTheseTestsIsRight) {
  EXPECT_THAT(doubts(sound_netlist().dump()), testing::IsEmpty());
}

/// One slip, put into the sound system: where, what is written there, and the mistake it must give.
struct Slip {
  const char* pointer;
  const char* value;
  const char* mistake;
};

void PrintTo(const Slip& slip, std::ostream* out) {
  *out << slip.pointer << " = " << slip.value;
}

class OneSlip : public testing::TestWithParam<Slip> {};

TEST_P(OneSlip, IsToldOnceWithItsPlace) {
  const Slip& slip = GetParam();
  const std::string text = with(slip.pointer, slip.value);
  const auto found = mistakes(text);
  EXPECT_THAT(named(found), ElementsAre(slip.mistake));
  for (const Problem& problem : found) {
    EXPECT_GT(problem.line, 0);
    EXPECT_GT(problem.column, 0);
    EXPECT_FALSE(problem.text.empty());
    EXPECT_FALSE(problem.expected.empty()) << problem.text;
  }
}

INSTANTIATE_TEST_SUITE_P(
    Top, OneSlip,
    testing::Values(
        Slip{"/ohmtrail", "2", "wrong-version /ohmtrail"},
        Slip{"/ohmtrail", "\"1\"", "wrong-version /ohmtrail"},
        Slip{"/ohmtrail", "1.5", "wrong-version /ohmtrail"}, Slip{"/system", "[]", "wrong-type /system"},
        Slip{"/system/nominal", "\"6 ft\"", "bad-quantity /system/nominal"},
        Slip{"/system/nominal", "0", "not-positive /system/nominal"},
        Slip{"/system/kind", "\"boat\"", "unknown-word /system/kind"},
        Slip{"/system/terminations", "true", "wrong-type /system/terminations"},
        Slip{"/system/ambient", "-300", "out-of-range /system/ambient"},
        Slip{"/system/ambient", "\"-500 F\"", "bad-quantity /system/ambient"},
        Slip{"/system/limits", "{\"critical_drop\": 130}", "out-of-range /system/limits/critical_drop"},
        Slip{"/system/limits", "{\"critical_drop\": \"-3 %\"}",
             "negative-value /system/limits/critical_drop"},
        Slip{"/system/limits", "{\"other_drop\": 0}", "not-positive /system/limits/other_drop"},
        Slip{"/system/job", "{\"customer\": 5}", "wrong-type /system/job/customer"},
        Slip{"/batteris", "[]", "unknown-key /batteris"}, Slip{"/note", "5", "wrong-type /note"},
        Slip{"/reference", "\"nowhere\"", "unknown-point /reference"},
        Slip{"/stubs", "[\"nowhere\"]", "unknown-point /stubs/0"},
        Slip{"/stubs", "\"b+\"", "wrong-type /stubs"},
        Slip{"/points", "{\"nowhere\": {}}", "unknown-point /points/nowhere"},
        Slip{"/points", "{\"b+\": {\"reach\": \"hard\"}}", "unknown-word /points/b+/reach"},
        Slip{"/points", "[]", "wrong-type /points"}, Slip{"/points", "{\"b+\": 5}", "wrong-type /points/b+"},
        Slip{"/points", "{\"no~where/else\": {}}", "unknown-point /points/no~0where~1else"}));

INSTANTIATE_TEST_SUITE_P(
    Elements, OneSlip,
    testing::Values(
        Slip{"/batteries/0/nominal", "null", "wrong-type /batteries/0/nominal"},
        Slip{"/batteries/0/chemistry", "\"lead\"", "unknown-word /batteries/0/chemistry"},
        Slip{"/batteries/0/capacity", "\"225 A\"", "bad-quantity /batteries/0/capacity"},
        Slip{"/batteries/0/capacity", "1e308", "out-of-range /batteries/0/capacity"},
        Slip{"/batteries/0/made", "[2019]", "wrong-type /batteries/0/made"},
        Slip{"/batteries/0/soc", "120", "out-of-range /batteries/0/soc"},
        Slip{"/batteries/0/resistance", "-0.001", "negative-value /batteries/0/resistance"},
        Slip{"/batteries/0/id", "12", "wrong-type /batteries/0/id"},
        Slip{"/batteries/0/seen", "\"frozen\"", "wrong-type /batteries/0/seen"},
        Slip{"/batteries/0/seen", "[\"rust\"]", "unknown-word /batteries/0/seen/0"},
        Slip{"/runs/0/id", "\"\"", "empty-name /runs/0/id"},
        Slip{"/runs/0/id", "\"a/b\"", "reserved-character /runs/0/id"},
        Slip{"/runs/0/id", "\"a@b\"", "reserved-character /runs/0/id"},
        Slip{"/runs/0/id", "\"a\\nb\"", "control-character /runs/0/id"},
        Slip{"/runs/0/id", "\"a\\u0085b\"", "control-character /runs/0/id"},
        Slip{"/runs/0/id", "\"S\"", "duplicate-id /switches/0/id"},
        Slip{"/runs/0/id", "\"L\"", "duplicate-id /loads/0/id"},
        Slip{"/runs/0/gauge", "\"7/0 AWG\"", "unknown-gauge /runs/0/gauge"},
        Slip{"/runs/0/gauge", "2", "wrong-type /runs/0/gauge"},
        Slip{"/runs/0/length", "\"-6 ft\"", "negative-value /runs/0/length"},
        Slip{"/runs/0/length", "0", "not-positive /runs/0/length"},
        Slip{"/runs/0/length", "\"6\"", "bad-quantity /runs/0/length"},
        Slip{"/runs/0/length", "\"nan ft\"", "bad-quantity /runs/0/length"},
        Slip{"/runs/0/length", "\"1e999 ft\"", "bad-quantity /runs/0/length"},
        Slip{"/runs/0/bundle", "0", "wrong-type /runs/0/bundle"},
        Slip{"/runs/0/bundle", "1.5", "wrong-type /runs/0/bundle"},
        Slip{"/runs/0/bundle", "\"2\"", "wrong-type /runs/0/bundle"},
        Slip{"/runs/0/bundle", "2000000", "wrong-type /runs/0/bundle"},
        Slip{"/runs/0/length_from", "\"guessed\"", "unknown-word /runs/0/length_from"},
        Slip{"/runs/0/ends", "\"glued\"", "unknown-word /runs/0/ends"},
        Slip{"/runs/0/ends", "5", "wrong-type /runs/0/ends"},
        Slip{"/runs/0/ends", "{\"from\": 5}", "wrong-type /runs/0/ends/from"},
        Slip{"/runs/0/ends", "{\"to\": \"glued\"}", "unknown-word /runs/0/ends/to"},
        Slip{"/runs/0/ends", "{\"note\": 5}", "wrong-type /runs/0/ends/note"},
        Slip{"/runs/0/note", "[]", "wrong-type /runs/0/note"},
        Slip{"/runs/0/ends", "{\"left\": \"crimped\"}", "unknown-key /runs/0/ends/left"},
        Slip{"/runs/0/ends", "{\"from\": {\"sound\": -1}}", "negative-value /runs/0/ends/from/sound"},
        Slip{"/joints/0/kind", "\"glue\"", "unknown-word /joints/0/kind"},
        Slip{"/switches/0/closed", "\"true\"", "wrong-type /switches/0/closed"},
        Slip{"/switches/0/closed", "1", "wrong-type /switches/0/closed"},
        Slip{"/switches/0/seen", "5", "wrong-type /switches/0/seen"},
        Slip{"/joints/0/seen", "{}", "wrong-type /joints/0/seen"},
        Slip{"/fuses/0/rating", "\"-100 A\"", "negative-value /fuses/0/rating"},
        Slip{"/loads/0/takes", "100", "wrong-type /loads/0/takes"},
        Slip{"/loads/0/takes", "\"12 V\"", "bad-quantity /loads/0/takes"},
        Slip{"/loads/0/takes", "\"0 W\"", "not-positive /loads/0/takes"},
        Slip{"/loads/0/takes", "\"-5 A\"", "negative-value /loads/0/takes"},
        Slip{"/loads/0/takes", "\"5 hA\"", "bad-quantity /loads/0/takes"},
        Slip{"/loads/0/class", "\"vital\"", "unknown-word /loads/0/class"},
        Slip{"/cable_list", "[{\"gauge\": \"6 AWG\", \"price\": \"3\"}]", "wrong-type /cable_list/0/price"},
        Slip{"/cable_list", "[{\"gauge\": \"6 AWG\", \"price\": -3}]", "negative-value /cable_list/0/price"},
        Slip{"/cable_list", "[{\"gauge\": \"11/0 AWG\"}]", "unknown-gauge /cable_list/0/gauge"},
        Slip{"/cable_list", "[{\"price\": 3}]", "missing-key /cable_list/0/gauge"}));

INSTANTIATE_TEST_SUITE_P(
    Checks, OneSlip,
    testing::Values(
        Slip{"/batteries/0/checks", "{\"cells\": [{\"sg\": 1.5}]}",
             "impossible-gravity /batteries/0/checks/cells/0/sg"},
        Slip{"/batteries/0/checks", "{\"cells\": [{\"sg\": 1265}]}",
             "impossible-gravity /batteries/0/checks/cells/0/sg"},
        Slip{"/batteries/0/checks", "{\"cells\": [{\"sg\": 0.9}]}",
             "impossible-gravity /batteries/0/checks/cells/0/sg"},
        Slip{"/batteries/0/checks", "{\"cells\": [{\"sg\": 5000}]}",
             "impossible-gravity /batteries/0/checks/cells/0/sg"},
        Slip{"/batteries/0/checks", "{\"cells\": [{\"sg\": \"1.265\"}]}",
             "wrong-type /batteries/0/checks/cells/0/sg"},
        Slip{"/batteries/0/checks", "{\"cells\": [{\"level\": \"low\"}]}",
             "unknown-word /batteries/0/checks/cells/0/level"},
        Slip{"/batteries/0/checks", "{\"tester\": {}}", "missing-key /batteries/0/checks/tester/cca"},
        Slip{"/batteries/0/checks", "{\"rest\": {\"hours\": 6}}",
             "missing-key /batteries/0/checks/rest/volts"},
        Slip{"/batteries/0/checks", "{\"load_test\": {\"before\": 12.2, \"amps\": 200, \"volts\": 12.4}}",
             "load-test-rises /batteries/0/checks/load_test/volts"}));

INSTANTIATE_TEST_SUITE_P(
    Cases, OneSlip,
    testing::Values(Slip{"/cases/0/on", "[\"M\"]", "unknown-load /cases/0/on/0"},
                    Slip{"/cases/0/on", "\"L\"", "wrong-type /cases/0/on"},
                    Slip{"/cases/0/set", "{\"K\": \"5 A\"}", "unknown-load /cases/0/set/K"},
                    Slip{"/cases/0/set", "{\"L\": 5}", "wrong-type /cases/0/set/L"},
                    Slip{"/cases/0/set", "{\"L\": \"inrush\"}", "no-inrush /cases/0/set/L"},
                    Slip{"/cases/0/open", "[\"X\"]", "unknown-element /cases/0/open/0"},
                    Slip{"/cases/0/open", "[\"M/middle\"]", "unknown-element /cases/0/open/0"},
                    Slip{"/cases/0/open", "[\"S/wire\"]", "unknown-element /cases/0/open/0"},
                    Slip{"/cases/0/open", "[\"Q/wire\"]", "unknown-element /cases/0/open/0"},
                    Slip{"/cases/0/open", "[\"\"]", "empty-name /cases/0/open/0"},
                    Slip{"/cases/0/closed", "[\"M\"]", "unknown-switch /cases/0/closed/0"},
                    Slip{"/cases/0/chargers", "[\"B\"]", "unknown-charger /cases/0/chargers/0"},
                    Slip{"/cases/0/hours_per_day", "-1", "negative-value /cases/0/hours_per_day"},
                    Slip{"/cases/0/name", "\"other\"", "unknown-case /readings/0/case"},
                    Slip{"/cases/-", "{\"name\": \"run\"}", "duplicate-case /cases/1/name"}));

INSTANTIATE_TEST_SUITE_P(
    Readings, OneSlip,
    testing::Values(Slip{"/readings/0/case", "\"walk\"", "unknown-case /readings/0/case"},
                    Slip{"/readings/0/red", "\"nowhere\"", "unknown-point /readings/0/red"},
                    Slip{"/readings/0/red", "\"M@middle\"", "unknown-point /readings/0/red"},
                    Slip{"/readings/0/red", "\"N@return-from\"", "unknown-point /readings/0/red"},
                    Slip{"/readings/0/red", "\"S@from\"", "unknown-point /readings/0/red"},
                    Slip{"/readings/0/red", "\"Q@from\"", "unknown-point /readings/0/red"},
                    Slip{"/readings/0/minutes", "\"5 V\"", "bad-quantity /readings/0/minutes"},
                    Slip{"/readings/0/red", "\"b-\"", "same-point /readings/0/black"},
                    Slip{"/readings/0/meter", "\"analogue\"", "unknown-meter /readings/0/meter"},
                    Slip{"/readings/0/amps", "5", "two-readings /readings/0/amps"},
                    Slip{"/readings/0/in", "\"M\"", "stray-key /readings/0/in"},
                    Slip{"/readings/0/spread", "\"5 A\"", "bad-quantity /readings/0/spread"},
                    Slip{"/readings/0/spread", "-0.1", "negative-value /readings/0/spread"},
                    Slip{"/readings/-", "{\"amps\": 5, \"case\": \"run\"}", "missing-key /readings/1/in"},
                    Slip{"/readings/-", "{\"amps\": 5, \"in\": \"Q\", \"case\": \"run\"}",
                         "unknown-element /readings/1/in"},
                    Slip{"/readings/-", "{\"amps\": 5, \"in\": \"M\"}", "missing-key /readings/1/case"},
                    Slip{"/readings/-", "{\"ohms\": -5, \"across\": \"M\"}",
                         "negative-value /readings/1/ohms"},
                    Slip{"/readings/-", "{\"temperature\": \"5 V\", \"at\": \"M\", \"case\": \"run\"}",
                         "bad-quantity /readings/1/temperature"},
                    Slip{"/readings/-", "{\"case\": \"run\"}", "no-reading /readings/1"},
                    Slip{"/readings/-", "5", "wrong-type /readings/1"},
                    Slip{"/meters/-", "{\"id\": \"dmm\"}", "duplicate-id /meters/1/id"},
                    Slip{"/meters/0/volts", "{\"counts\": 2}", "missing-key /meters/0/volts/digits_to"},
                    Slip{"/meters/0/volts", "{\"percent\": -2}", "negative-value /meters/0/volts/percent"},
                    Slip{"/meters/0/volts", "{\"percent\": \"5 V\"}", "bad-quantity /meters/0/volts/percent"},
                    Slip{"/meters/0/volts", "5", "wrong-type /meters/0/volts"}));

TEST(Mistakes, MissingKeysAreToldWhereTheyShouldBe) {
  EXPECT_THAT(named(mistakes(without("/ohmtrail"))), ElementsAre("missing-key /ohmtrail"));
  EXPECT_THAT(named(mistakes(without("/system"))), ElementsAre("missing-key /system"));
  EXPECT_THAT(named(mistakes(without("/runs/0/gauge"))), ElementsAre("missing-key /runs/0/gauge"));
  EXPECT_THAT(named(mistakes(without("/readings/0/case"))), ElementsAre("missing-key /readings/0/case"));
}

TEST(Mistakes, ASystemNeedsABatteryOrACharger) {
  OrderedJson base = sound_netlist();
  base["batteries"] = OrderedJson::array();
  EXPECT_THAT(mistakes(without("/chargers/0/note", base)), testing::SizeIs(0)) << "a charger alone will do";
  base.erase("chargers");
  const auto found = mistakes(base.dump());
  ASSERT_FALSE(found.empty());
  EXPECT_EQ(found.front().name, "no-source");
}

TEST(Mistakes, AllAreToldAtOnceInTheOrderOfTheFile) {
  OrderedJson base = sound_netlist();
  base["readings"][0]["case"] = "walk";
  base["loads"][0]["takes"] = "hello";
  base["runs"][1]["length"] = -1;
  base["system"]["nominal"] = "6 ft";
  base["fuses"][0]["id"] = "S";
  EXPECT_THAT(
      named(mistakes(base.dump(2))),
      ElementsAre("bad-quantity /system/nominal", "negative-value /runs/1/length", "duplicate-id /fuses/0/id",
                  "bad-quantity /loads/0/takes", "unknown-case /readings/0/case"));
}

TEST(Mistakes, DuplicateKeysAreToldAtTheSecond) {
  const auto found = mistakes(
      "{\"ohmtrail\": 1,\n \"system\": {\"name\": \"a\", \"nominal\": 12,\n  \"name\": \"b\"},\n"
      " \"batteries\": [{\"id\": \"B\", \"plus\": \"+\", \"minus\": \"-\", \"nominal\": 12}],\n"
      " \"stubs\": [\"+\", \"-\"]}");
  ASSERT_THAT(named(found), ElementsAre("duplicate-key /system/name"));
  EXPECT_EQ(found[0].line, 3);
  EXPECT_EQ(found[0].column, 3);
}

TEST(Mistakes, ANoteGivenTwiceIsADuplicateKeyToo) {
  const auto found = mistakes(
      "{\"ohmtrail\": 1, \"note\": \"a\", \"note\": \"b\", \"system\": {\"name\": \"a\", \"nominal\": 12},\n"
      " \"batteries\": [{\"id\": \"B\", \"plus\": \"+\", \"minus\": \"-\", \"nominal\": 12}],\n"
      " \"stubs\": [\"+\", \"-\"]}");
  EXPECT_THAT(named(found), ElementsAre("duplicate-key /note"));
}

/// Few keys are compared pair by pair, many are sorted.
TEST(Mistakes, AKeyTwiceAmongManyIsToldOnceForEachTooMany) {
  std::string points;
  std::string text = sound_netlist().dump();
  for (int k = 0; k < 20; ++k) points += fmt::format("\"p{}\": {{}}, ", k % 18);
  text.insert(text.size() - 1, ", \"points\": {" + points + "\"b+\": {}}");
  std::vector<std::string> twice;
  for (const Problem& problem : mistakes(text))
    if (problem.name == "duplicate-key") twice.push_back(problem.pointer);
  EXPECT_THAT(twice, ElementsAre("/points/p0", "/points/p1"));
}

TEST(Mistakes, ColumnsCountCharactersNotBytes) {
  const auto found = mistakes(
      "{\"note\": \"µΩ→\", \"ohmtrail\": 2, \"system\": {\"name\": \"a\", \"nominal\": 12},"
      " \"batteries\": [{\"id\": \"B\", \"plus\": \"+\", \"minus\": \"-\", \"nominal\": 12}],"
      " \"stubs\": [\"+\", \"-\"]}");
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].column, 29);
}

TEST(Mistakes, AWrongSectionDoesNotAccuseTheOthers) {
  EXPECT_THAT(named(mistakes(with("/switches", "{}"))), ElementsAre("wrong-type /switches"));
  OrderedJson base = sound_netlist();
  base["fuse"] = base["fuses"];
  base.erase("fuses");
  EXPECT_THAT(named(mistakes(base.dump())), ElementsAre("unknown-key /fuse"));
  EXPECT_THAT(named(mistakes(with("/switches/0/to", "5"))), ElementsAre("wrong-type /switches/0/to"));
}

TEST(Mistakes, ANameThatCannotBeReadAccusesNobodyWhoUsesIt) {
  const auto one = [](const char* pointer, const char* value) {
    return named(mistakes(with(pointer, value)));
  };
  EXPECT_THAT(one("/cases/0/name", "5"), ElementsAre("wrong-type /cases/0/name"));
  EXPECT_THAT(one("/cases", "{}"), ElementsAre("wrong-type /cases"));
  EXPECT_THAT(one("/meters/0/id", "[]"), ElementsAre("wrong-type /meters/0/id"));
  EXPECT_THAT(one("/meters", "{}"), ElementsAre("wrong-type /meters"));
  EXPECT_THAT(one("/loads/0/id", "\"L/1\""), ElementsAre("reserved-character /loads/0/id"));
  OrderedJson base = sound_netlist();
  base["case"] = base["cases"];
  base.erase("cases");
  EXPECT_THAT(named(mistakes(base.dump())), ElementsAre("unknown-key /case"));
}

TEST(Mistakes, ANameOfTheWrongKindIsToldOnce) {
  for (const char* list : {"on", "open", "closed", "chargers"}) {
    for (const auto& [value, mistake] : {std::pair{"[5]", "wrong-type"}, std::pair{"[\"\"]", "empty-name"}}) {
      const std::string pointer = fmt::format("/cases/0/{}", list);
      EXPECT_THAT(named(mistakes(with(pointer, value))),
                  ElementsAre(fmt::format("{} {}/0", mistake, pointer)));
    }
  }
}

TEST(Mistakes, AnElementFromAPointToItself) {
  const auto same = [](const char* pointer, const char* value) {
    return named(mistakes(with(pointer, value)));
  };
  using testing::Contains;
  EXPECT_THAT(same("/loads/0/minus", "\"l+\""), Contains("same-point /loads/0/minus"));
  EXPECT_THAT(same("/batteries/0/minus", "\"b+\""), Contains("same-point /batteries/0/minus"));
  EXPECT_THAT(same("/runs/1/to", "\"fu\""), Contains("same-point /runs/1/to"));
  EXPECT_THAT(same("/runs/0/return/to", "\"l-\""), Contains("same-point /runs/0/return/to"));
}

TEST(Mistakes, OnlyAFewNamesAreListedManyAreCounted) {
  const auto expected = [](int loads) {
    OrderedJson base = sound_netlist();
    for (int k = 1; k < loads; ++k) {
      base["loads"].push_back(base["loads"][0]);
      base["loads"].back()["id"] = fmt::format("lamp {}", k);
    }
    base["cases"][0]["on"] = {"heater"};
    const auto found = mistakes(base.dump());
    return found.empty() ? std::string() : found.front().expected;
  };
  EXPECT_EQ(expected(3), "L, lamp 1 or lamp 2");
  EXPECT_EQ(expected(13), "one of the 13 names given");
  OrderedJson none = sound_netlist();
  none.erase("meters");
  EXPECT_EQ(mistakes(none.dump()).at(0).expected, "no meter: the file has none");
}

TEST(Mistakes, APartThatAnElementHasNotIsToldWithThoseItHas) {
  const auto parts = [](const char* open) {
    OrderedJson base = sound_netlist();
    base["converters"] =
        OrderedJson::parse(R"([{"id": "V", "plus_in": "b+", "minus_in": "b-", "plus_out": "v+",
            "minus_out": "b-", "setpoint": 5, "limit": 2}])");
    base["stubs"] = {"v+"};
    base["cases"][0]["open"] = {open};
    const auto found = mistakes(base.dump());
    return found.empty() ? std::string() : found.front().expected;
  };
  EXPECT_THAT(parts("M/middle"), HasSubstr("from, wire or to"));
  EXPECT_EQ(parts("V/middle"), "in or out");
  EXPECT_THAT(parts("S/in"), HasSubstr("only runs and converters have parts"));
}

TEST(Mistakes, ChargersAndConvertersAreBothNamedWhereEitherWouldDo) {
  OrderedJson base = sound_netlist();
  base["converters"] = OrderedJson::parse(R"([{"id": "V", "plus_in": "b+", "minus_in": "b-", "plus_out": "v+",
      "minus_out": "b-", "setpoint": 5, "limit": 2}])");
  base["stubs"] = {"v+"};
  base["cases"][0]["chargers"] = {"shore"};
  const auto found = mistakes(base.dump());
  ASSERT_THAT(named(found), ElementsAre("unknown-charger /cases/0/chargers/0"));
  EXPECT_EQ(found[0].expected, "C or V");
}

TEST(Mistakes, WhatWasMetIsQuotedShort) {
  const auto met = [](const std::string& length) {
    const auto found = mistakes(with("/runs/0/length", length));
    return found.empty() ? std::string() : found.front().text;
  };
  EXPECT_EQ(met("{}"), "met {}");
  EXPECT_EQ(met("{\"a\": 1}"), "met an object {…}");
  EXPECT_EQ(met("[]"), "met []");
  EXPECT_EQ(met("[1]"), "met a list […]");
  EXPECT_EQ(met("true"), "met true");
  const std::string longest = mistakes(with("/system/kind", "\"" + std::string(60, 'x') + "\"")).at(0).text;
  EXPECT_THAT(longest, HasSubstr("\"" + std::string(39, 'x') + "…"));
  EXPECT_THAT(mistakes(with("/system/kind", "\"a\x7F\"")).at(0).text, HasSubstr("\"a \""));
}

TEST(Mistakes, LongListsAreCutAndCounted) {
  std::string text = sound_netlist().dump();
  text.pop_back();
  for (int i = 0; i < 100000; ++i) text += ", \"key " + std::to_string(i) + "\": 0";
  const auto found = mistakes(text + "}");
  ASSERT_EQ(found.size(), 101U);
  EXPECT_EQ(found.back().name, "and-more");
  EXPECT_THAT(found.back().text, HasSubstr("and 99900 more"));
}

TEST(Mistakes, NamesOfEightyWideCharactersAreTakenAndOneMoreIsNot) {
  std::string wide;
  for (int i = 0; i < 80; ++i) wide += "漢";
  EXPECT_THAT(mistakes(with("/switches/0/id", "\"" + wide + "\"")), testing::IsEmpty());
  EXPECT_THAT(named(mistakes(with("/switches/0/id", "\"" + wide + "字\""))),
              ElementsAre("name-too-long /switches/0/id"));
}

}  // namespace
}  // namespace ohmtrail::netlist::test
