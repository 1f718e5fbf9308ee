#include <gtest/gtest.h>

#include "unit/netlist/netlist_text.hpp"

namespace ohmtrail::netlist::test {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

/// A value that is taken, but doubted.
struct Doubt {
  const char* pointer;
  const char* value;
  const char* warning;
};

void PrintTo(const Doubt& doubt, std::ostream* out) {
  *out << doubt.pointer << " = " << doubt.value;
}

class OneDoubt : public testing::TestWithParam<Doubt> {};

TEST_P(OneDoubt, IsAWarningNotAMistake) {
  const auto found = doubts(with(GetParam().pointer, GetParam().value));
  EXPECT_THAT(named(found), ElementsAre(GetParam().warning));
  for (const Problem& problem : found) {
    EXPECT_EQ(problem.severity, Problem::Severity::warning);
    EXPECT_GT(problem.line, 0);
  }
}

INSTANTIATE_TEST_SUITE_P(
    Unusual, OneDoubt,
    testing::Values(
        Doubt{"/system/nominal", "13", "unusual-nominal /system/nominal"},
        Doubt{"/batteries/0/nominal", "11", "unusual-nominal /batteries/0/nominal"},
        Doubt{"/batteries/0/emf", "6.3", "unusual-emf /batteries/0/emf"},
        Doubt{"/batteries/0/emf", "25", "unusual-emf /batteries/0/emf"},
        Doubt{"/batteries/0/resistance", "4", "unusual-resistance /batteries/0/resistance"},
        Doubt{"/batteries/0/resistance", "\"4 ohm\"", "unusual-resistance /batteries/0/resistance"},
        Doubt{"/batteries/0/resistance", "1e-6", "unusual-resistance /batteries/0/resistance"},
        Doubt{"/runs/0/length", "200", "unusual-length /runs/0/length"},
        Doubt{"/runs/0/gauge", "\"10\"", "gauge-without-unit /runs/0/gauge"},
        Doubt{"/runs/0/resistance", "3", "unusual-resistance /runs/0/resistance"},
        Doubt{"/runs/0/resistance", "8", "unusual-resistance /runs/0/resistance"},
        Doubt{"/runs/0/return/resistance", "8", "unusual-resistance /runs/0/return/resistance"},
        Doubt{"/runs/0/ends", "{\"from\": {\"sound\": 0.2}}", "unusual-resistance /runs/0/ends/from/sound"},
        Doubt{"/joints/0/resistance", "3", "unusual-resistance /joints/0/resistance"},
        Doubt{"/switches/0/sound", "0.3", "unusual-resistance /switches/0/sound"},
        Doubt{"/fuses/0/resistance", "2", "unusual-resistance /fuses/0/resistance"},
        Doubt{"/system/limits", "{\"critical_drop\": 0.03}", "unusual-percent /system/limits/critical_drop"},
        Doubt{"/batteries/0/soc", "0.8", "unusual-percent /batteries/0/soc"},
        Doubt{"/readings/0/volts", "142", "unusual-reading /readings/0/volts"},
        Doubt{"/readings/0/volts", "\"142 V\"", "unusual-reading /readings/0/volts"},
        Doubt{"/readings/0/volts", "-40", "unusual-reading /readings/0/volts"},
        Doubt{"/readings/-", "{\"ohms\": 3.5, \"across\": \"M\"}", "unusual-resistance /readings/1/ohms"},
        Doubt{"/readings/-", "{\"ohms\": 0.001, \"across\": \"M\", \"case\": \"run\"}",
              "case-of-ohms /readings/1/case"},
        Doubt{"/readings/-", "{\"amps\": 5, \"in\": \"M\", \"case\": \"run\", \"meter\": \"dmm\"}",
              "meter-without-accuracy /readings/1/meter"}));

INSTANTIATE_TEST_SUITE_P(
    Batteries, OneDoubt,
    testing::Values(
        Doubt{"/batteries/0/checks", "{\"rest\": {\"volts\": 6.3}}",
              "unusual-rest-voltage /batteries/0/checks/rest/volts"},
        Doubt{"/batteries/0/checks", "{\"cells\": [{\"sg\": 1.265}, {\"sg\": 1.265}]}",
              "cell-count /batteries/0/checks/cells"},
        Doubt{"/batteries/0/checks", "{\"load_test\": {\"before\": 12.4, \"amps\": 200, \"volts\": 12.4}}",
              "load-test-flat /batteries/0/checks/load_test/volts"},
        Doubt{"/batteries/0/checks",
              "{\"rest\": {\"volts\": 12.2}, \"load_test\": {\"amps\": 200, \"volts\": 12.4}}",
              "load-test-rises /batteries/0/checks/load_test/volts"},
        Doubt{"/batteries/0/checks", "{\"top_leak\": 300}", "unusual-leak /batteries/0/checks/top_leak"},
        Doubt{"/batteries/0/checks",
              "{\"rest\": {\"volts\": 12.6}, \"cells\": [{\"volts\": 2.1}, {\"volts\": 2.1}, {\"volts\": "
              "2.1}, {\"volts\": 2.1},"
              " {\"volts\": 2.1}, {\"volts\": 0.1}]}",
              "cells-against-rest /batteries/0/checks/cells"}));

TEST(Warnings, MilliohmsTypedAsOhmsAreProposed) {
  EXPECT_THAT(doubts(with("/switches/0/sound", "0.8")).at(0).hint, HasSubstr("write \"0.8 mohm\""));
  EXPECT_THAT(doubts(with("/readings/0/volts", "142")).at(0).hint, HasSubstr("write \"142 mV\""));
  EXPECT_THAT(doubts(with("/batteries/0/soc", "0.8")).at(0).hint, HasSubstr("write \"80 %\""));
}

TEST(Warnings, WithAUnitMilliohmsWereNotForgotten) {
  EXPECT_EQ(doubts(with("/batteries/0/resistance", "\"4 ohm\"")).at(0).hint, "");
  EXPECT_EQ(doubts(with("/readings/0/volts", "\"142 V\"")).at(0).hint, "");
  EXPECT_THAT(doubts(with("/switches/0/sound", "\"0.8 ohm\"")).at(0).hint, HasSubstr("write mohm"));
  EXPECT_EQ(doubts(with("/batteries/0/resistance", "1e-6")).at(0).hint, "") << "too little, not too much";
}

TEST(Warnings, ALoadTestIsHeldAgainstTheVoltageJustBeforeItFirst) {
  const auto checks = [](const char* test) {
    return doubts(
        with("/batteries/0/checks", fmt::format(R"({{"rest": {{"volts": 12.2}}, "load_test": {}}})", test)));
  };
  EXPECT_THAT(checks(R"({"before": 12.6, "amps": 200, "volts": 12.4})"), IsEmpty())
      << "12.4 V is above the rest voltage of another day";
  EXPECT_THAT(checks(R"({"amps": 200, "volts": 11.4})"), IsEmpty());
}

TEST(Warnings, CellsThatAddUpToTheRestVoltageAreNotDoubted) {
  const auto cells = [](double last) {
    return doubts(
        with("/batteries/0/checks",
             fmt::format(R"({{"rest": {{"volts": 12.6}}, "cells": [{{"volts": 2.1}}, {{"volts": 2.1}},
                           {{"volts": 2.1}}, {{"volts": 2.1}}, {{"volts": 2.1}}, {{"volts": {}}}]}})",
                         last)));
  };
  EXPECT_THAT(cells(2.1), IsEmpty());
  EXPECT_THAT(cells(1.5), IsEmpty()) << "4.8 % off: two readings of one battery";
  EXPECT_THAT(named(cells(1.4)), ElementsAre("cells-against-rest /batteries/0/checks/cells"));
}

TEST(Warnings, WhereANominalIsMissingNothingIsHeldAgainstIt) {
  OrderedJson base = sound_netlist();
  base["batteries"][0].erase("nominal");
  base["batteries"][0].update(OrderedJson::parse(
      R"({"emf": 6, "resistance": 4, "checks": {"rest": {"volts": 6}, "cells": [{}], "top_leak": 300}})"));
  const auto found = mistakes(base.dump());
  EXPECT_THAT(named(found), ElementsAre("missing-key /batteries/0/nominal"));
}

TEST(Warnings, ASealedBatteryHasNoGravity) {
  OrderedJson base = sound_netlist();
  base["batteries"][0]["chemistry"] = "agm";
  base["batteries"][0]["checks"] = OrderedJson::parse(R"({"cells": [{"sg": 1.265}, {}, {}, {}, {}, {}]})");
  EXPECT_THAT(named(doubts(base.dump())), ElementsAre("gravity-of-sealed /batteries/0/checks/cells/0/sg"));
}

TEST(Warnings, WhatIsUsualIsNotDoubted) {
  for (const char* nominal : {"6", "12", "12.8", "24", "36", "48", "51.2"}) {
    OrderedJson base = sound_netlist();
    base["system"]["nominal"] = OrderedJson::parse(nominal);
    EXPECT_THAT(doubts(base.dump()), IsEmpty()) << nominal;
  }
  EXPECT_THAT(doubts(with("/runs/0/ends", "{\"from\": {\"resistance\": \"300 mohm\"}}")), IsEmpty())
      << "burnt, but possible";
  EXPECT_THAT(doubts(with("/batteries/0/emf", "10.5")), IsEmpty());
  EXPECT_THAT(doubts(with("/batteries/0/emf", "14.6")), IsEmpty());
}

TEST(Warnings, ComeWithTheSystemAndAreGoneWhereMistakesAre) {
  OrderedJson base = sound_netlist();
  base["system"]["nominal"] = 13;
  base["loads"][0]["takes"] = "5";
  const auto found = mistakes(base.dump());
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].name, "bad-quantity");
}

}  // namespace
}  // namespace ohmtrail::netlist::test
