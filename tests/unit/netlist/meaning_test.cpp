#include <gtest/gtest.h>

#include "ohmtrail/netlist/names.hpp"
#include "unit/netlist/netlist_text.hpp"

/// What the words of the format mean, sentence by sentence.
namespace ohmtrail::netlist::test {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

TEST(Quantities, ABareNumberIsInTheUnitOfItsField) {
  OrderedJson base = sound_netlist();
  base["batteries"][0]["capacity"] = 225;
  base["batteries"][0]["soc"] = 80;
  base["batteries"][0]["checks"] =
      OrderedJson::parse(R"({"rest": {"volts": 12.6, "hours": 6, "temperature": 20}})");
  base["system"]["limits"] = OrderedJson::parse(R"({"critical_drop": 3, "swing": 2})");
  base["cases"][0]["hours_per_day"] = 4;
  base["loads"][0]["on_for"] = 90;
  const System system = system_of(base.dump());
  const Battery& battery = system.batteries.at(0);
  EXPECT_EQ(battery.capacity, Charge{225 * 3600.0});
  EXPECT_EQ(battery.state_of_charge, Fraction{0.8});
  EXPECT_EQ(battery.checks.rest->rested, Time{6 * 3600.0});
  EXPECT_EQ(battery.checks.rest->temperature, Temperature{20});
  EXPECT_EQ(system.info.limits.critical_drop, Fraction{0.03});
  EXPECT_EQ(system.info.limits.swing, Fraction{0.02});
  EXPECT_EQ(system.cases.at(0).per_day, Time{4 * 3600.0});
  EXPECT_EQ(system.loads.at(0).on_for, Time{90});
}

TEST(Quantities, AStringCarriesItsUnit) {
  OrderedJson base = sound_netlist();
  base["system"]["ambient"] = "77 F";
  base["batteries"][0]["capacity"] = "225 Ah";
  base["batteries"][0]["soc"] = "80 %";
  base["batteries"][0]["resistance"] = "4.2 mΩ";
  base["batteries"][0]["checks"] = OrderedJson::parse(R"({"rest": {"volts": "12.6 V", "hours": "90 min"}})");
  base["runs"][0]["length"] = "4 in";
  base["runs"][1]["sound"] = "0.35 mohm";
  base["loads"][0]["takes"] = "1.2 kW";
  const System system = system_of(base.dump());
  EXPECT_NEAR(system.info.ambient.celsius(), 25, 1e-12);
  EXPECT_EQ(system.batteries[0].capacity, Charge{225 * 3600.0});
  EXPECT_EQ(system.batteries[0].state_of_charge, Fraction{0.8});
  EXPECT_NEAR(system.batteries[0].resistance->si(), 0.0042, 1e-17);
  EXPECT_EQ(system.batteries[0].checks.rest->rested, Time{5400});
  EXPECT_EQ(system.runs[0].length, Length{4 * 0.0254});
  EXPECT_EQ(system.runs[1].wire.sound, Resistance{0.00035});
  EXPECT_EQ(std::get<Power>(system.loads[0].takes), Power{1200});
}

TEST(Defaults, AreThoseOfTheFormat) {
  const System system = system_of(sound_netlist().dump());
  EXPECT_EQ(system.info.ambient, Temperature{25});
  EXPECT_EQ(system.info.engine_space, Temperature{50});
  EXPECT_EQ(system.info.limits.critical_drop, Fraction{0.03});
  EXPECT_EQ(system.info.limits.other_drop, Fraction{0.10});
  EXPECT_EQ(system.info.terminations, Terminations::whole);
  EXPECT_EQ(system.batteries[0].chemistry, trade::Chemistry::flooded);
  EXPECT_EQ(system.runs[0].conductor, trade::ConductorKind::tinned_copper);
  EXPECT_EQ(system.runs[0].insulation, Temperature{105});
  EXPECT_EQ(system.runs[0].bundle, 1);
  EXPECT_FALSE(system.runs[0].length_estimated);
  EXPECT_EQ(system.runs[0].end_from.kind, trade::TerminationKind::crimped);
  EXPECT_TRUE(system.switches[0].closed);
  EXPECT_EQ(system.loads[0].load_class, LoadClass::other);
  EXPECT_FALSE(system.cases[0].all_on);
  EXPECT_THAT(system.cases[0].chargers, IsEmpty());
}

TEST(Cases, WithoutCasesOneNamedAllOnRunsEveryLoad) {
  OrderedJson base = sound_netlist();
  base.erase("cases");
  base["readings"][0]["case"] = "all-on";
  const System system = system_of(base.dump());
  ASSERT_EQ(system.cases.size(), 1U);
  EXPECT_EQ(system.cases[0].name, "all-on");
  EXPECT_TRUE(system.cases[0].all_on);
}

TEST(Cases, OpenNamesAnyElementRunOrPart) {
  EXPECT_THAT(mistakes(with("/cases/0/open", R"(["M", "S", "F", "L", "B", "M/from", "M/return-wire"])")),
              IsEmpty());
}

TEST(Cases, OneIdOpenAndClosedIsAMistake) {
  OrderedJson base = sound_netlist();
  base["cases"][0]["open"] = OrderedJson::array({"S"});
  base["cases"][0]["closed"] = OrderedJson::array({"S"});
  EXPECT_THAT(named(mistakes(base.dump())), ElementsAre("open-and-closed /cases/0/closed/0"));
}

TEST(Cases, InrushIsTheLoadsOwn) {
  OrderedJson base = sound_netlist();
  base["loads"][0]["inrush"] = "60 A";
  base["cases"][0]["set"] = {{"L", "inrush"}};
  EXPECT_EQ(system_of(base.dump()).cases[0].set.at("L"), Takes(Current{60}));
}

TEST(Cases, ConvertersMayBeListedAmongTheChargers) {
  OrderedJson base = sound_netlist();
  base["converters"] = OrderedJson::parse(R"([{"id": "V", "plus_in": "b+", "minus_in": "b-", "plus_out": "v+",
      "minus_out": "b-", "setpoint": 5, "limit": 2}])");
  base["stubs"] = OrderedJson::array({"v+"});
  base["cases"][0]["chargers"] = OrderedJson::array({"C", "V"});
  base["readings"].push_back(OrderedJson::parse(R"({"amps": 1, "in": "V/in", "case": "run"})"));
  EXPECT_THAT(mistakes(base.dump()), IsEmpty());
  EXPECT_EQ(system_of(base.dump()).converters.at(0).efficiency, Fraction{0.9});
}

TEST(Batteries, WhatIsOnTheLabelMayBeANumber) {
  EXPECT_EQ(system_of(with("/batteries/0/made", "2019")).batteries[0].made, "2019");
  EXPECT_EQ(system_of(with("/batteries/0/made", "\"week 12, 2019\"")).batteries[0].made, "week 12, 2019");
}

TEST(Meters, AccuracyIsPercentOfTheReadingAndCountsOfTheLastDigit) {
  OrderedJson base = sound_netlist();
  base["meters"].push_back(OrderedJson::parse(R"({"id": "other",
      "volts": {"percent": "0.5 %", "counts": 2, "digits_to": "1 mV"}, "amps": {"percent": 2},
      "ohms": {"counts": 3, "digits_to": "0.1 mohm"}, "temperature": {"counts": 1, "digits_to": "1 K"}})"));
  const Meter meter = system_of(base.dump()).meters.at(1);
  EXPECT_EQ(meter.volts, (Accuracy{0.5, 2, 0.001}));
  EXPECT_EQ(meter.amps, (Accuracy{2, 0, 0}));
  EXPECT_EQ(meter.ohms, (Accuracy{0, 3, 0.0001}));
  EXPECT_EQ(meter.temperature, (Accuracy{0, 1, 1}));
}

TEST(Runs, AWordForBothEndsOrOneForEach) {
  OrderedJson base = sound_netlist();
  base["runs"][0]["ends"] = "soldered";
  base["runs"][1]["ends"] =
      OrderedJson::parse(R"({"from": "ferrule", "to": {"resistance": "4 mohm", "seen": ["loose-nut"]}})");
  const System system = system_of(base.dump());
  EXPECT_EQ(system.runs[0].end_to.kind, trade::TerminationKind::soldered);
  EXPECT_EQ(system.runs[1].end_from.kind, trade::TerminationKind::ferrule);
  EXPECT_EQ(system.runs[1].end_to.kind, trade::TerminationKind::crimped) << "kind defaults to crimped";
  EXPECT_EQ(system.runs[1].end_to.resistances.as_found, Resistance{0.004});
  EXPECT_THAT(system.runs[1].end_to.resistances.seen, ElementsAre(trade::Observation::loose_nut));
}

TEST(Runs, AReturnInheritsEndsAndSoundNeverResistanceOrSeen) {
  OrderedJson base = sound_netlist();
  base["runs"][0]["sound"] = "1 mohm";
  base["runs"][0]["resistance"] = "2 mohm";
  base["runs"][0]["seen"] = OrderedJson::array({"warm"});
  base["runs"][0]["ends"] = OrderedJson::parse(
      R"({"from": {"kind": "soldered", "sound": "0.1 mohm", "resistance": "9 mohm", "seen": ["warm"]}, "to": "ferrule"})");
  const ReturnConductor back = *system_of(base.dump()).runs[0].return_conductor;
  EXPECT_EQ(back.wire.sound, Resistance{0.001});
  EXPECT_EQ(back.wire.as_found, std::nullopt);
  EXPECT_THAT(back.wire.seen, IsEmpty());
  EXPECT_EQ(back.end_from.kind, trade::TerminationKind::soldered);
  EXPECT_EQ(back.end_from.resistances.sound, Resistance{0.0001});
  EXPECT_EQ(back.end_from.resistances.as_found, std::nullopt);
  EXPECT_THAT(back.end_from.resistances.seen, IsEmpty());
  EXPECT_EQ(back.end_to.kind, trade::TerminationKind::ferrule);
}

TEST(Runs, WhatAReturnGivesItselfStands) {
  OrderedJson base = sound_netlist();
  base["runs"][0]["sound"] = "1 mohm";
  base["runs"][0]["ends"] = "soldered";
  base["runs"][0]["return"]["sound"] = "3 mohm";
  base["runs"][0]["return"]["ends"] = OrderedJson::parse(R"({"to": "ferrule"})");
  const ReturnConductor back = *system_of(base.dump()).runs[0].return_conductor;
  EXPECT_EQ(back.wire.sound, Resistance{0.003});
  EXPECT_EQ(back.end_from.kind, trade::TerminationKind::soldered);
  EXPECT_EQ(back.end_to.kind, trade::TerminationKind::ferrule);
}

TEST(Points, OneThatASingleElementNamesIsAMistakeUnlessAStub) {
  const auto found = mistakes(with("/loads/0/plus", "\"l+ \""));
  EXPECT_THAT(named(found), ElementsAre("dangling-point /runs/1/to", "dangling-point /loads/0/plus"));
  OrderedJson base = OrderedJson::parse(with("/loads/0/plus", "\"l+ \""));
  base["stubs"] = OrderedJson::array({"l+", "l+ "});
  EXPECT_THAT(mistakes(base.dump()), IsEmpty());
}

TEST(Points, StubsMayListAnyPointAlsoADerivedOne) {
  EXPECT_THAT(mistakes(with("/stubs", R"(["b+", "M@from"])")), IsEmpty());
}

TEST(Points, ReferenceAndPlacesMayBeDerived) {
  OrderedJson base = sound_netlist();
  base["reference"] = "M@return-to";
  base["points"] =
      OrderedJson::parse(R"({"M@from": {"place": "in the sheath", "reach": "no"}, "b+": {"note": "top"}})");
  const System system = system_of(base.dump());
  EXPECT_EQ(system.reference, "M@return-to");
  EXPECT_EQ(system.points.at("M@from").reach, Reach::no);
  EXPECT_EQ(system.points.at("b+").note, "top");
}

TEST(Readings, AllFourKinds) {
  OrderedJson base = sound_netlist();
  base["readings"] = OrderedJson::parse(R"([
    {"volts": "142 mV", "red": "M@from", "black": "M@to", "case": "run", "spread": "5 mV", "minutes": 12},
    {"amps": 8.2, "in": "M", "case": "run", "spread": 0.2},
    {"ohms": "0.35 mohm", "across": "M/return-to"},
    {"temperature": "140 F", "at": "S", "case": "run", "spread": "2 K", "minutes": "2 min"}])");
  const System system = system_of(base.dump());
  ASSERT_EQ(system.readings.size(), 4U);
  const auto& volts = std::get<VoltsReading>(system.readings[0].what);
  EXPECT_EQ(volts.value, Voltage{0.142});
  EXPECT_EQ(volts.red, "M@from");
  EXPECT_EQ(system.readings[0].spread, 0.005);
  EXPECT_EQ(system.readings[0].minutes, 12);
  EXPECT_EQ(std::get<AmpsReading>(system.readings[1].what).in, "M");
  EXPECT_EQ(std::get<OhmsReading>(system.readings[2].what).value, Resistance{0.00035});
  EXPECT_EQ(system.readings[2].in_case, "");
  EXPECT_NEAR(std::get<TemperatureReading>(system.readings[3].what).value.celsius(), 60, 1e-12);
  EXPECT_EQ(system.readings[3].spread, 2);
  EXPECT_EQ(system.readings[3].minutes, 2);
}

TEST(Readings, AMetalPointOpensThatOneEnd) {
  const System system = system_of(with("/readings/0/red", "\"M@from-metal\""));
  EXPECT_TRUE(system.runs[0].end_from.opened);
  EXPECT_FALSE(system.runs[0].end_to.opened);
  EXPECT_FALSE(system.runs[0].return_conductor->end_from.opened);
  const System back = system_of(with("/readings/0/red", "\"M@return-to-metal\""));
  EXPECT_TRUE(back.runs[0].return_conductor->end_to.opened);
}

TEST(Readings, ACrimpHasAnElementOfItsOwnOnlyWhereTheEndIsOpened) {
  const std::string open = R"(["M/from-crimp"])";
  EXPECT_THAT(mistakes(with("/cases/0/open", open)), IsEmpty()) << "naming it opens the end";
  const System whole = system_of(sound_netlist().dump());
  EXPECT_FALSE(Names(whole).has_element("M/from-crimp"));
  const System apart = system_of(with("/system/terminations", "\"contact-and-crimp\""));
  EXPECT_TRUE(apart.runs[0].return_conductor->end_to.opened);
  EXPECT_TRUE(Names(apart).has_element("M/from-crimp"));
  EXPECT_TRUE(Names(apart).has_element("M/return-to-crimp"));
  EXPECT_FALSE(Names(apart).has_element("M/wire-crimp"));
}

TEST(Names, DerivedOnesExistAsTheFormatSays) {
  const System system = system_of(sound_netlist().dump());
  const Names names(system);
  for (const char* element :
       {"B", "C", "M", "M/from", "M/wire", "M/to", "M/return-from", "M/return-wire", "N/to", "S", "F", "L"})
    EXPECT_TRUE(names.has_element(element)) << element;
  for (const char* element : {"", "X", "M/", "/M", "N/return-wire", "S/from", "M/return", "M@from", "B/plus"})
    EXPECT_FALSE(names.has_element(element)) << element;
  for (const char* point : {"b+", "M@from", "M@to", "M@return-from", "M@from-metal", "M@return-to-metal"})
    EXPECT_TRUE(names.has_point(point)) << point;
  for (const char* point : {"", "x", "M@", "M@wire", "N@return-from", "S@from", "M/from"})
    EXPECT_FALSE(names.has_point(point)) << point;
  EXPECT_EQ(names.terminals_at("b+"), 3U);
}

TEST(Names, ADerivedPointLeadsToTheEndThatItStandsAt) {
  System system = system_of(sound_netlist().dump());
  const Names names(system);
  netlist::Run& run = system.runs[0];
  EXPECT_EQ(end_at(system, names, "M@from"), &run.end_from);
  EXPECT_EQ(end_at(system, names, "M@to-metal"), &run.end_to);
  EXPECT_EQ(end_at(system, names, "M@return-from"), &run.return_conductor->end_from);
  EXPECT_EQ(end_at(system, names, "M@return-to-metal"), &run.return_conductor->end_to);
  for (const char* none : {"", "b+", "x", "M@wire", "N@return-to", "S@from"})
    EXPECT_EQ(end_at(system, names, none), nullptr) << none;
}

TEST(Names, ConvertersHaveTwoHalves) {
  OrderedJson base = sound_netlist();
  base["converters"] = OrderedJson::parse(R"([{"id": "V", "plus_in": "b+", "minus_in": "b-", "plus_out": "v+",
      "minus_out": "b-", "setpoint": 5, "limit": 2}])");
  base["stubs"] = OrderedJson::array({"v+"});
  const System system = system_of(base.dump());
  const Names names(system);
  for (const char* element : {"V", "V/in", "V/out"}) EXPECT_TRUE(names.has_element(element)) << element;
  for (const char* element : {"V/", "V/wire", "V/from"}) EXPECT_FALSE(names.has_element(element)) << element;
}

TEST(Ends, ACrimpThatWasSeenKeepsWhatWasSeenOfIt) {
  RunEnd end;
  end.resistances.seen = {trade::Observation::loose_nut};
  EXPECT_THAT(halves(end).crimp.seen, ElementsAre(trade::Observation::loose_nut)) << "said of the whole end";
  end.crimp = Resistances{std::nullopt, std::nullopt, {trade::Observation::darkened}};
  EXPECT_THAT(halves(end).crimp.seen, ElementsAre(trade::Observation::darkened));
  EXPECT_THAT(halves(end).contact.seen, ElementsAre(trade::Observation::loose_nut));
}

TEST(Ends, HalvesShareWhatIsGivenForBoth) {
  RunEnd end;
  end.resistances.sound = Resistance{0.0002};
  end.resistances.as_found = Resistance{0.004};
  EXPECT_EQ(halves(end).contact.sound, Resistance{0.0001});
  EXPECT_EQ(halves(end).crimp.as_found, Resistance{0.002});
  end.crimp = Resistances{std::nullopt, Resistance{0.001}, {}};
  EXPECT_EQ(halves(end).contact.as_found, Resistance{0.004}) << "the crimp has its own";
  EXPECT_EQ(halves(end).crimp.as_found, Resistance{0.001});
  EXPECT_EQ(halves(end).crimp.sound, Resistance{0.0001});
}

TEST(Notes, AreAllowedOnEveryObject) {
  OrderedJson base = sound_netlist();
  base["note"] = "n";
  base["system"]["note"] = "n";
  base["system"]["limits"] = {{"note", "n"}};
  base["system"]["job"] = {{"note", "n"}};
  base["batteries"][0]["checks"] = OrderedJson::parse(
      R"({"note": "n", "rest": {"volts": 12.6, "note": "n"}, "load_test": {"amps": 9, "volts": 9, "note": "n"},
          "tester": {"cca": 9, "note": "n"}, "cells": [{"note": "n"}, {}, {}, {}, {}, {}]})");
  base["runs"][0]["ends"] = OrderedJson::parse(R"({"note": "n", "from": {"note": "n"}})");
  base["runs"][0]["return"]["note"] = "n";
  base["meters"][0]["volts"]["note"] = "n";
  base["cable_list"] = OrderedJson::parse(R"([{"gauge": "6 AWG", "note": "n"}])");
  for (const char* section : {"batteries", "chargers", "runs", "joints", "switches", "fuses", "shunts",
                              "loads", "cases", "meters", "readings"})
    base[section][0]["note"] = "n";
  EXPECT_THAT(doubts(base.dump()), IsEmpty());
  EXPECT_EQ(system_of(base.dump()).runs[0].end_from.note, "n");
}

}  // namespace
}  // namespace ohmtrail::netlist::test
