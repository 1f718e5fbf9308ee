#include <gtest/gtest.h>

#include "ohmtrail/netlist/write.hpp"
#include "ohmtrail/trade/gauge.hpp"
#include "unit/netlist/netlist_text.hpp"

// Edits that a rewire makes, and edits on top of edits.
namespace ohmtrail::netlist::test {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::Not;

Document opened(const OrderedJson& json) {
  auto document = Document::open(json.dump(1));
  if (document) return std::move(*document);
  ADD_FAILURE() << format(document.error().front(), "test");
  return *Document::open(sound_netlist().dump());
}

/// Run M with everything that can be said of a cable, its ends and its return.
OrderedJson well_known_run() {
  OrderedJson base = sound_netlist();
  base["runs"][0].update(OrderedJson::parse(R"({"sound": 0.001, "resistance": 0.002, "seen": ["warm"],
      "ends": {"from": {"kind": "soldered", "sound": 0.0001, "resistance": 0.01, "seen": ["loose-nut"],
                        "crimp": {"sound": 0.00005, "resistance": 0.004, "seen": ["darkened"]}},
               "to": "ferrule"}})"));
  base["runs"][0]["return"].update(
      OrderedJson::parse(R"({"sound": 0.003, "resistance": 0.005, "seen": ["melted"]})"));
  return base;
}

TEST(Rewire, RenewedCableKeepsWhatASoundOneHasAndLosesWhatWasFound) {
  Document document = opened(well_known_run());
  ASSERT_TRUE(document.renew_cable("M"));
  EXPECT_FALSE(document.renew_cable("S"));
  EXPECT_FALSE(document.renew_cable("nothing"));
  const netlist::Run run = system_of(document.text()).runs.at(0);
  EXPECT_EQ(run.wire, (Resistances{Resistance{0.001}, std::nullopt, {}}));
  EXPECT_EQ(run.end_from.resistances, (Resistances{Resistance{0.0001}, std::nullopt, {}}));
  EXPECT_EQ(run.end_from.crimp, (Resistances{Resistance{0.00005}, std::nullopt, {}}));
  EXPECT_EQ(run.end_from.kind, trade::TerminationKind::soldered);
  EXPECT_EQ(run.return_conductor->wire, (Resistances{Resistance{0.003}, std::nullopt, {}}));
  EXPECT_EQ(run.gauge.number, -1) << "the same cable";
}

TEST(Rewire, OtherCableTakesTheCrimpsAlong) {
  Document document = opened(well_known_run());
  ASSERT_TRUE(document.replace_cable("M", "4/0 AWG"));
  const netlist::Run run = system_of(document.text()).runs.at(0);
  EXPECT_FALSE(run.end_from.crimp);
  EXPECT_EQ(run.end_from.resistances, Resistances{});
  EXPECT_EQ(run.end_to.kind, trade::TerminationKind::ferrule);
}

TEST(Rewire, WhatWasJustSetGoesWithTheOldCableToo) {
  Document document = opened(sound_netlist());
  ASSERT_TRUE(document.set_resistance("N/from", Resistance{0.02}));
  ASSERT_TRUE(document.set_resistance("N", Resistance{0.03}));
  ASSERT_TRUE(document.replace_cable("N", "2 AWG"));
  const netlist::Run run = system_of(document.text()).runs.at(1);
  EXPECT_EQ(run.end_from.resistances, Resistances{});
  EXPECT_EQ(run.wire, Resistances{});
  ASSERT_TRUE(document.set_resistance("N/from", Resistance{0.001}));
  EXPECT_EQ(system_of(document.text()).runs.at(1).end_from.resistances.as_found, Resistance{0.001});
}

TEST(Rewire, CableOfAnotherKindSaysOnlyWhatDiffers) {
  Document document = opened(sound_netlist());
  ASSERT_TRUE(document.set_cable_kind("N", trade::ConductorKind::tinned_copper, Temperature{105}));
  EXPECT_EQ(document.text(), sound_netlist().dump(1)) << "what it was by default";
  ASSERT_TRUE(document.set_cable_kind("N", trade::ConductorKind::bare_copper, Temperature{90}));
  EXPECT_FALSE(document.set_cable_kind("F", trade::ConductorKind::bare_copper, Temperature{90}));
  const netlist::Run run = system_of(document.text()).runs.at(1);
  EXPECT_EQ(run.conductor, trade::ConductorKind::bare_copper);
  EXPECT_EQ(run.insulation, Temperature{90});
}

TEST(Rewire, AnotherFuseOrBreakerHasNothingOfTheOldOne) {
  OrderedJson base = sound_netlist();
  for (const char* section : {"fuses", "switches"})
    base[section][0].update(
        OrderedJson::parse(R"({"sound": 0.001, "resistance": 0.002, "seen": ["warm"], "note": "keep"})"));
  Document document = opened(base);
  ASSERT_TRUE(document.replace_device("F", Current{80}));
  ASSERT_TRUE(document.replace_device("S", Current{300}));
  EXPECT_FALSE(document.replace_device("J", Current{300}));
  EXPECT_FALSE(document.set_fuse_rating("S", Current{300})) << "a switch is no fuse";
  const System system = system_of(document.text());
  EXPECT_EQ(system.fuses[0].rating, Current{80});
  EXPECT_EQ(system.fuses[0].resistances, Resistances{});
  EXPECT_EQ(system.fuses[0].note, "keep");
  EXPECT_EQ(system.switches[0].rating, Current{300});
  EXPECT_EQ(system.switches[0].resistances, Resistances{});
}

TEST(Edits, OfWhatIsNotThereChangeNothing) {
  Document document = opened(sound_netlist());
  EXPECT_FALSE(document.set_emf("L", Voltage{12}));
  EXPECT_FALSE(document.set_emf("Q", Voltage{12}));
  EXPECT_FALSE(document.set_takes("B", Takes(Power{5})));
  EXPECT_FALSE(document.set_fuse_rating("Q", Current{5}));
  EXPECT_EQ(document.text(), sound_netlist().dump(1));
}

TEST(Edits, AFileWithoutANoteGetsOneAndASecondSentenceFollowsTheFirst) {
  Document document = opened(sound_netlist());
  document.add_to_note("Resistances from 3 readings.");
  EXPECT_EQ(system_of(document.text()).note, "Resistances from 3 readings.");
  document.add_to_note("Cable from the rewire.");
  EXPECT_EQ(system_of(document.text()).note, "Resistances from 3 readings. Cable from the rewire.");
}

TEST(Edits, TheSystemStaysAsItWasRead) {
  Document document = opened(sound_netlist());
  const System before = document.system();
  ASSERT_TRUE(document.set_resistance("J", Resistance{0.5}));
  document.remove_readings();
  EXPECT_EQ(document.system(), before);
  EXPECT_EQ(before, system_of(sound_netlist().dump()));
}

TEST(Edits, OnePerValueTheLastOneStands) {
  Document document = opened(sound_netlist());
  for (const double ohms : {0.1, 0.2, 0.3}) ASSERT_TRUE(document.set_resistance("J", Resistance{ohms}));
  const std::string text = document.text();
  EXPECT_EQ(system_of(text).joints[0].resistances.as_found, Resistance{0.3});
  EXPECT_THAT(text, Not(HasSubstr("0.2")));
}

TEST(Edits, AMovedDocumentKeepsThem) {
  Document document = opened(sound_netlist());
  ASSERT_TRUE(document.set_resistance("J", Resistance{0.3}));
  Document other = opened(well_known_run());
  other = std::move(document);
  EXPECT_EQ(system_of(other.text()).joints[0].resistances.as_found, Resistance{0.3});
}

TEST(Edits, OneOfEveryKindCanBeAdded) {
  Document document = opened(sound_netlist());

  Battery battery;
  battery.id = "B2", battery.plus = "x", battery.minus = "b-", battery.nominal = Voltage{12};
  Charger charger;
  charger.id = "C2", charger.plus = "x", charger.minus = "b-";
  charger.setpoint = Voltage{14.2}, charger.limit = Current{20};
  netlist::Run run;
  run.id = "R2", run.from = "x", run.to = "y", run.gauge = *trade::parse_gauge("35 mm2");
  run.length = Length{1.5};
  Switch one;
  one.id = "S2", one.from = "y", one.to = "z", one.kind = trade::SwitchKind::breaker;
  one.interrupts = Current{3000}, one.rating = Current{60};
  Fuse fuse;
  fuse.id = "F2", fuse.from = "z", fuse.to = "u", fuse.rating = Current{60};
  Shunt shunt;
  shunt.id = "H2", shunt.from = "u", shunt.to = "v", shunt.rating = Current{100}, shunt.drop = Voltage{0.05};
  Meter meter;
  meter.id = "clamp", meter.amps = Accuracy{2, 3, 0.1};
  document.add(battery);
  document.add(charger);
  document.add(run);
  document.add(one);
  document.add(fuse);
  document.add(shunt);
  document.add(meter);
  document.add_stub("v");
  const System system = system_of(document.text());
  EXPECT_EQ(system.batteries.at(1), battery);
  EXPECT_EQ(system.chargers.at(1), charger);
  EXPECT_EQ(system.runs.at(2), run);
  EXPECT_EQ(system.switches.at(1), one);
  EXPECT_EQ(system.fuses.at(1), fuse);
  EXPECT_EQ(system.shunts.at(1), shunt);
  EXPECT_EQ(system.meters.at(1), meter);
  EXPECT_THAT(system.stubs, ElementsAre("v"));
}

TEST(Edits, InAFileOnOneLineStayOnThatLine) {
  auto document = Document::open(sound_netlist().dump());
  ASSERT_TRUE(document);
  document->add_stub("b+");
  ASSERT_TRUE(document->set_resistance("N/to", Resistance{0.25}));
  const std::string text = document->text();
  EXPECT_THAT(text, Not(HasSubstr("\n")));
  EXPECT_EQ(system_of(text).runs[1].end_to.resistances.as_found, Resistance{0.25});
}

}  // namespace
}  // namespace ohmtrail::netlist::test
