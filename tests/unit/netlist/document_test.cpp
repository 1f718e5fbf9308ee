#include <gtest/gtest.h>

#include <fstream>
#include <sstream>

#include "ohmtrail/netlist/write.hpp"
#include "unit/netlist/netlist_text.hpp"

namespace ohmtrail::netlist::test {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::Not;

Document opened(const std::string& text) {
  auto document = Document::open(text);
  if (document) return std::move(*document);
  ADD_FAILURE() << format(document.error().front(), "test");
  return *Document::open(sound_netlist().dump());
}

/// As a person writes: comments in notes, numbers spelled in their own way, blanks where he likes them.
const char* const by_hand = R"json(
{ "ohmtrail": 1,
  "note": "by hand (invented)",
  "system": {"name": "x", "nominal": 12.0},
  "batteries": [ {"id":"B", "plus":"b+", "minus":"b-", "nominal":1.2e1} ],
  "runs": [
    {"id": "M", "from": "b+", "to": "f", "gauge": "2/0 AWG", "length": 2.50,
       "note": "behind the tank", "resistance": 0.00100},
    {"id": "N", "from": "f", "to": "l+", "gauge": "6 AWG", "length": "6 ft", "ends": "soldered",
     "return": {"from": "l-", "to": "b-"}}
  ],
  "loads": [{"id": "L", "plus": "l+", "minus": "l-", "takes": "5 A"}],
  "readings": [
    {"case": "all-on", "volts": 0.10, "red": "b+", "black": "f"}
  ],
  "stubs": []
}
)json";

TEST(Document, WithoutEditsEveryByteIsKept) {
  for (const std::string& text : {std::string(by_hand), sound_netlist().dump(), sound_netlist().dump(4)}) {
    EXPECT_EQ(opened(text).text(), text);
  }
}

TEST(Document, ASetResistanceChangesNothingElse) {
  Document document = opened(by_hand);
  ASSERT_TRUE(document.set_resistance("M", Resistance{0.0025}));
  std::string expected = by_hand;
  expected.replace(expected.find("0.00100"), 7, "0.0025");
  EXPECT_EQ(document.text(), expected);
}

TEST(Document, ANewKeyStandsLikeItsNeighbours) {
  Document document = opened(by_hand);
  ASSERT_TRUE(document.set_emf("B", Voltage{12.71}));
  ASSERT_TRUE(document.set_resistance("B", Resistance{0.004}));
  EXPECT_THAT(document.text(), HasSubstr(R"("nominal":1.2e1, "emf":12.71, "resistance":0.004} ])"));
}

TEST(Document, EveryPartOfARunCanBeSet) {
  Document document = opened(by_hand);
  const std::vector<std::pair<std::string, double>> values = {
      {"N/from", 1e-3},        {"N/wire", 2e-3},      {"N/to", 3e-3},   {"N/return-from", 4e-3},
      {"N/return-wire", 5e-3}, {"N/return-to", 6e-3}, {"M/from", 7e-3}, {"M/to", 8e-3}};
  for (const auto& [name, value] : values)
    ASSERT_TRUE(document.set_resistance(name, Resistance{value})) << name;
  const System system = system_of(document.text());
  const netlist::Run& run = system.runs.at(1);
  const ReturnConductor& back = run.return_conductor.value();
  EXPECT_EQ(run.end_from.resistances.as_found, Resistance{1e-3});
  EXPECT_EQ(run.wire.as_found, Resistance{2e-3});
  EXPECT_EQ(run.end_to.resistances.as_found, Resistance{3e-3});
  EXPECT_EQ(back.end_from.resistances.as_found, Resistance{4e-3});
  EXPECT_EQ(back.wire.as_found, Resistance{5e-3});
  EXPECT_EQ(back.end_to.resistances.as_found, Resistance{6e-3});
  EXPECT_EQ(back.end_from.kind, trade::TerminationKind::soldered) << "still as inherited";
  EXPECT_EQ(run.end_to.kind, trade::TerminationKind::soldered);
  EXPECT_EQ(system.runs[0].end_from.resistances.as_found, Resistance{7e-3});
  EXPECT_EQ(system.runs[0].end_to.resistances.as_found, Resistance{8e-3});
}

TEST(Document, AnEndThatStandsAsAnObjectKeepsWhatItHas) {
  OrderedJson base = sound_netlist();
  base["runs"][1]["ends"] = OrderedJson::parse(R"({"from": {"sound": 0.0001, "note": "new lug"}})");
  Document document = opened(base.dump());
  ASSERT_TRUE(document.set_resistance("N/from", Resistance{0.003}));
  ASSERT_TRUE(document.set_resistance("N/to", Resistance{0.004}));
  const netlist::Run run = system_of(document.text()).runs.at(1);
  EXPECT_EQ(run.end_from.note, "new lug");
  EXPECT_EQ(run.end_from.resistances.sound, Resistance{0.0001});
  EXPECT_EQ(run.end_from.resistances.as_found, Resistance{0.003});
  EXPECT_EQ(run.end_to.resistances.as_found, Resistance{0.004});
}

TEST(Document, ContactAndCrimpOfAnOpenedEndAreSetApart) {
  Document document = opened(with("/system/terminations", "\"contact-and-crimp\""));
  ASSERT_TRUE(document.set_resistance("M/from", Resistance{0.003}));
  ASSERT_TRUE(document.set_resistance("M/from-crimp", Resistance{0.001}));
  ASSERT_TRUE(document.set_resistance("M/return-to-crimp", Resistance{0.002}));
  const netlist::Run run = system_of(document.text()).runs.at(0);
  EXPECT_EQ(halves(run.end_from).contact.as_found, Resistance{0.003});
  EXPECT_EQ(halves(run.end_from).crimp.as_found, Resistance{0.001});
  EXPECT_EQ(halves(run.return_conductor->end_to).crimp.as_found, Resistance{0.002});
}

TEST(Document, JointsSwitchesFusesAndBatteriesAreSetNothingElseIs) {
  Document document = opened(sound_netlist().dump(1));
  for (const char* id : {"J", "S", "F", "B"})
    ASSERT_TRUE(document.set_resistance(id, Resistance{0.0125})) << id;
  for (const char* id : {"L", "H", "C", "X", "", "M/crimp", "S/wire", "M/from-crimp"})
    EXPECT_FALSE(document.set_resistance(id, Resistance{0.1})) << id;
  const System system = system_of(document.text());
  EXPECT_EQ(system.joints[0].resistances.as_found, Resistance{0.0125});
  EXPECT_EQ(system.switches[0].resistances.as_found, Resistance{0.0125});
  EXPECT_EQ(system.fuses[0].resistances.as_found, Resistance{0.0125});
  EXPECT_EQ(system.batteries[0].resistance, Resistance{0.0125});
}

TEST(Document, AFittedFileHasNoReadingsAndALongerNote) {
  Document document = opened(by_hand);
  document.remove_readings();
  document.add_to_note("Resistances from 1 reading.");
  const std::string text = document.text();
  EXPECT_THAT(text, Not(HasSubstr("readings")));
  EXPECT_THAT(text, HasSubstr(R"("note": "by hand (invented) Resistances from 1 reading.",)"));
  EXPECT_THAT(text, HasSubstr("\"takes\": \"5 A\"}],\n  \"stubs\": []\n}"));
  EXPECT_TRUE(read(text));
}

TEST(Document, TheFirstAndTheOnlyMemberCanGo) {
  Document first = opened(R"({"readings": [], "ohmtrail": 1, "system": {"name": "x", "nominal": 12},
    "batteries": [{"id": "B", "plus": "+", "minus": "-", "nominal": 12}], "stubs": ["+", "-"]})");
  first.remove_readings();
  EXPECT_THAT(first.text(), testing::StartsWith(R"({"ohmtrail": 1, )"));
  EXPECT_TRUE(read(first.text()));
}

TEST(Document, ReadingsGrowInTheirPlace) {
  Document document = opened(by_hand);
  Reading reading;
  reading.what = AmpsReading{Current{4.9}, "M"};
  reading.in_case = "all-on";
  document.add_reading(reading);
  EXPECT_THAT(document.text(),
              HasSubstr("\"black\": \"f\"},\n    {\"case\": \"all-on\", \"amps\": 4.9, \"in\": \"M\"}\n  ]"));
  EXPECT_EQ(system_of(document.text()).readings.size(), 2U);
  EXPECT_EQ(system_of(document.text()).readings.at(1), reading);
}

TEST(Document, TheFirstReadingMakesItsSection) {
  Document document = opened(without("/readings"));
  Reading reading;
  reading.what = VoltsReading{Voltage{0.142}, "M@from", "M@to"};
  reading.in_case = "run";
  document.add_reading(reading);
  document.add_reading(reading);
  EXPECT_THAT(system_of(document.text()).readings, ElementsAre(reading, reading));
}

TEST(Document, RemovedReadingsCanBeginAnew) {
  Document document = opened(by_hand);
  document.remove_readings();
  Reading reading;
  reading.what = OhmsReading{Resistance{0.001}, "M"};
  document.add_reading(reading);
  EXPECT_THAT(system_of(document.text()).readings, ElementsAre(reading));
}

TEST(Document, WhatWasSeenIsAddedToWhatIsThere) {
  OrderedJson base = sound_netlist();
  base["switches"][0]["seen"] = OrderedJson::array({"warm"});
  Document document = opened(base.dump(2));
  ASSERT_TRUE(document.add_seen("S", {trade::Observation::pitted}));
  ASSERT_TRUE(document.add_seen("M/return-from", {trade::Observation::loose_nut, trade::Observation::warm}));
  ASSERT_TRUE(document.add_seen("M/return-from", {trade::Observation::green_corrosion}));
  ASSERT_TRUE(document.add_seen("N", {trade::Observation::broken_strands}));
  EXPECT_FALSE(document.add_seen("nothing", {trade::Observation::warm}));
  const System system = system_of(document.text());
  EXPECT_EQ(system.switches[0].resistances.seen,
            (Seen{trade::Observation::warm, trade::Observation::pitted}));
  EXPECT_EQ(
      system.runs[0].return_conductor->end_from.resistances.seen,
      (Seen{trade::Observation::loose_nut, trade::Observation::warm, trade::Observation::green_corrosion}));
  EXPECT_EQ(system.runs[1].wire.seen, (Seen{trade::Observation::broken_strands}));
}

TEST(Document, OtherCableTakesTheOldOnesResistancesWithIt) {
  OrderedJson base = sound_netlist();
  base["runs"][0].update(
      OrderedJson::parse(R"({"sound": 0.001, "resistance": 0.002, "seen": ["warm"], "note": "keep",
      "ends": {"from": {"kind": "soldered", "resistance": 0.01, "note": "keep too"}, "to": "ferrule"}})"));
  base["runs"][0]["return"]["resistance"] = 0.005;
  Document document = opened(base.dump(2));
  ASSERT_TRUE(document.replace_cable("M", "4/0 AWG"));
  ASSERT_TRUE(document.set_fuse_rating("F", Current{250}));
  ASSERT_TRUE(document.set_takes("L", Takes(Current{7.5})));
  EXPECT_FALSE(document.replace_cable("S", "4/0 AWG"));
  const System system = system_of(document.text());
  const netlist::Run& run = system.runs[0];
  EXPECT_EQ(run.gauge.number, -3);
  EXPECT_EQ(run.wire, Resistances{});
  EXPECT_EQ(run.note, "keep");
  EXPECT_EQ(run.end_from.resistances, Resistances{});
  EXPECT_EQ(run.end_from.note, "keep too");
  EXPECT_EQ(run.end_from.kind, trade::TerminationKind::soldered);
  EXPECT_EQ(run.return_conductor->wire, Resistances{});
  EXPECT_EQ(system.fuses[0].rating, Current{250});
  EXPECT_EQ(system.loads[0].takes, Takes(Current{7.5}));
}

TEST(Document, ASystemGrowsElementByElement) {
  Document document = opened(by_hand);
  Joint joint;
  joint.id = "J";
  joint.from = "f";
  joint.to = "spare";
  joint.kind = trade::JointKind::stud;
  document.add(joint);
  document.add_stub("spare");
  document.set_point("spare", {"behind the panel", Reach::tools, ""});
  Load load;
  load.id = "L2";
  load.plus = "f";
  load.minus = "b-";
  load.takes = Power{60};
  document.add(load);
  Case one;
  one.name = "both";
  one.all_on = true;
  Case all = one;
  all.name = "all-on";
  document.add(all);
  document.add(one);
  document.set_job({"Example Customer", "", "2031-05-01", "7", "lights go dim"});
  const System system = system_of(document.text());
  EXPECT_EQ(system.joints, std::vector{joint});
  EXPECT_EQ(system.loads.at(1), load);
  EXPECT_EQ(system.cases.at(1), one);
  EXPECT_EQ(system.points.at("spare").reach, Reach::tools);
  EXPECT_EQ(system.info.job.complaint, "lights go dim");
}

TEST(Document, ATextWithMistakesIsNotOpened) {
  const auto document = Document::open(with("/loads/0/takes", "5"));
  ASSERT_FALSE(document);
  EXPECT_EQ(document.error().front().name, "wrong-type");
}

TEST(Document, TheShippedNetlistsComeBackByteForByte) {
  int files = 0;
  for (const char* name : {"camper-12v", "cart-48v", "launch-24v", "yacht-12v"}) {
    std::ifstream file(std::string(OHMTRAIL_SOURCE_DIR) + "/netlists/" + name + ".json");
    std::stringstream text;
    text << file.rdbuf();
    ASSERT_FALSE(text.str().empty()) << name;
    EXPECT_EQ(opened(text.str()).text(), text.str()) << name;
    ++files;
  }
  EXPECT_EQ(files, 4);
}

}  // namespace
}  // namespace ohmtrail::netlist::test
