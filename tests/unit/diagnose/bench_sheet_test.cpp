#include "ohmtrail/diagnose/bench_sheet.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "ohmtrail/diagnose/staircase.hpp"
#include "ohmtrail/netlist/read.hpp"

namespace ohmtrail::diagnose {
namespace {

/// A battery, a fuse, a run out and back, a lamp in every case, a torch and a pump in one each. Invented.
constexpr const char* small = R"({"ohmtrail": 1, "system": {"name": "bench", "nominal": "12 V"},
"batteries": [{"id": "house", "plus": "b+", "minus": "b-", "nominal": "12 V", "emf": 12.6, "resistance": "5 mohm"}],
"fuses": [{"id": "main fuse", "from": "b+", "to": "f", "rating": "60 A"}],
"runs": [{"id": "feed", "from": "f", "to": "bus+", "gauge": "6 AWG", "length": "3 m", "resistance": "40 mohm",
          "return": {"from": "bus-", "to": "b-"}},
         {"id": "torch lead", "from": "bus+", "to": "torch+", "gauge": "16 AWG", "length": "1 m"},
         {"id": "pump cable", "from": "bus+", "to": "pump+", "gauge": "12 AWG", "length": "2 m"}],
"loads": [{"id": "lamp", "plus": "bus+", "minus": "bus-", "takes": "2 A"},
          {"id": "torch", "plus": "torch+", "minus": "bus-", "takes": "1 A"},
          {"id": "pump", "plus": "pump+", "minus": "bus-", "takes": "15 A"}],
"cases": [{"name": "evening", "on": ["lamp"]}, {"name": "reading", "on": ["lamp", "torch"]}, {"name": "pumping", "on": ["lamp", "pump"]}]})";

netlist::System system_of(const std::string& text) {
  auto read = netlist::read(text);
  if (!read) throw std::runtime_error("the test's own file is wrong");
  return read->system;
}

std::vector<solve::CaseSolution> solved(const netlist::System& system) {
  std::vector<solve::CaseSolution> all;
  for (const netlist::Case& one : system.cases) {
    auto solution = solve::solve_case(network::build(system, one));
    if (solution) all.push_back(std::move(*solution));
  }
  return all;
}

BenchSheet sheet_of(const netlist::System& system) {
  return bench_sheet(system, solved(system));
}

std::vector<BenchReading> of_kind(const BenchRound& round, BenchKind kind) {
  std::vector<BenchReading> list;
  std::copy_if(round.readings.begin(), round.readings.end(), std::back_inserter(list),
               [&](const BenchReading& reading) { return reading.kind == kind; });
  return list;
}

TEST(BenchSheet, BeginsAtRestAndThenTakesTheCasesInTurn) {
  const BenchSheet sheet = sheet_of(system_of(small));
  ASSERT_EQ(sheet.rounds.size(), 3u);
  EXPECT_EQ(sheet.rounds[0].in_case, "");
  EXPECT_EQ(sheet.rounds[1].in_case, "reading");
  EXPECT_EQ(sheet.rounds[2].in_case, "pumping");
  EXPECT_EQ(sheet.rounds[1].loads, (std::vector<std::string>{"lamp", "torch"}));
  EXPECT_EQ(sheet.rounds[2].loads, (std::vector<std::string>{"lamp", "pump"}));
}

// A full 12 V flooded battery rests at 12.6 to 12.8 V: common practice, and every handbook's table.
TEST(BenchSheet, AtRestAFullBatteryIsExpected) {
  const BenchSheet sheet = sheet_of(system_of(small));
  ASSERT_EQ(sheet.rounds[0].readings.size(), 1u);
  const BenchReading& rest = sheet.rounds[0].readings[0];
  EXPECT_EQ(rest.red, "b+");
  EXPECT_EQ(rest.black, "b-");
  EXPECT_GT(rest.expected, 12.6);
  EXPECT_LT(rest.expected, 12.8);
}

TEST(BenchSheet, EachPartIsReadOnceWhereItDropsMost) {
  const BenchSheet sheet = sheet_of(system_of(small));
  std::multiset<std::string> read;
  for (const BenchRound& round : sheet.rounds)
    for (const BenchReading& reading : of_kind(round, BenchKind::drop)) read.insert(reading.of);
  EXPECT_EQ(read, (std::multiset<std::string>{"feed/return-wire", "feed/wire", "main fuse", "pump cable/wire",
                                              "torch lead/wire"}));
  EXPECT_EQ(of_kind(sheet.rounds[1], BenchKind::drop).size(), 1u) << "with the pump on all else drops more";
}

TEST(BenchSheet, ExpectsWhatASoundPartDropsNotWhatThisOneDoes) {
  const netlist::System system = system_of(small);
  const BenchSheet sheet = sheet_of(system);
  const auto all = solved(system);
  const auto sound = solve::solve_case(as_rated(system, all.back().network));
  ASSERT_TRUE(sound);
  for (const BenchReading& reading : of_kind(sheet.rounds[2], BenchKind::drop)) {
    if (reading.of != "feed/wire") continue;
    EXPECT_EQ(reading.red, "f");
    EXPECT_EQ(reading.black, "bus+");
    const auto volts = [&](const std::string& point) {
      return sound->solution.voltage[static_cast<std::size_t>(*sound->network.point(point))];
    };
    EXPECT_NEAR(reading.expected, volts("f") - volts("bus+"), 1e-9);
    EXPECT_LT(reading.expected, 17 * 0.040 / 2) << "the file says 40 mΩ, a sound one has far less";
  }
}

TEST(BenchSheet, TheClampGoesRoundWhatCarriesMost) {
  const BenchSheet sheet = sheet_of(system_of(small));
  const auto clamps = of_kind(sheet.rounds[2], BenchKind::amps);
  ASSERT_EQ(clamps.size(), 1u);
  EXPECT_EQ(clamps[0].of, "feed/wire");
  EXPECT_NEAR(clamps[0].expected, 17, 1e-6);
  EXPECT_EQ(clamps[0].red, "");
}

TEST(BenchSheet, DropsArePositiveWithRedOnTheSideOfTheBattery) {
  int readings = 0;
  for (const BenchRound& round : sheet_of(system_of(small)).rounds)
    for (const BenchReading& reading : round.readings) {
      EXPECT_GT(reading.expected, 0) << reading.of;
      ++readings;
    }
  EXPECT_GT(readings, 3);
}

TEST(BenchSheet, WhatNoProbeGetsToIsNamedAndNotAskedFor) {
  netlist::System system = system_of(small);
  system.points["bus+"].reach = netlist::Reach::no;
  system.points["b-"].reach = netlist::Reach::tools;
  const BenchSheet sheet = sheet_of(system);
  EXPECT_EQ(sheet.out_of_reach,
            (std::vector<std::string>{"lamp", "feed/wire", "torch lead/wire", "pump cable/wire"}));
  for (const BenchRound& round : sheet.rounds)
    for (const BenchReading& reading : round.readings) {
      EXPECT_NE(reading.red, "bus+");
      EXPECT_NE(reading.black, "bus+");
      EXPECT_EQ(reading.tools, reading.red == "b-" || reading.black == "b-") << reading.of;
    }
}

TEST(BenchSheet, ACaseThatShowsNothingNewIsLeftOut) {
  const BenchSheet sheet = sheet_of(system_of(small));
  ASSERT_FALSE(sheet.rounds.empty());
  for (const BenchRound& round : sheet.rounds) EXPECT_NE(round.in_case, "evening");
}

TEST(BenchSheet, WithNothingOnOnlyTheRestIsRead) {
  netlist::System system = system_of(small);
  for (netlist::Case& one : system.cases) one.on.clear();
  const BenchSheet sheet = sheet_of(system);
  ASSERT_EQ(sheet.rounds.size(), 1u);
  EXPECT_EQ(sheet.rounds[0].in_case, "");
}

/// A converter is no load that one switches on: what hangs on its output is.
TEST(BenchSheet, DoesNotTellToSwitchAConverterOn) {
  std::string text = small;
  const auto before = [&](const std::string& place, const std::string& what) {
    text.insert(text.find(place), what);
  };
  before(R"("cases")",
         R"("converters": [{"id": "buck", "plus_in": "bus+", "minus_in": "bus-", "plus_out": "five+",
    "minus_out": "bus-", "setpoint": "5 V", "limit": "3 A"}], )");
  before(R"({"id": "torch")",
         R"({"id": "phone", "plus": "five+", "minus": "bus-", "takes": "1 A", "nominal": "5 V"}, )");
  before(R"("on": ["lamp", "torch"])", R"("chargers": ["buck"], )");
  before(R"("lamp", "torch"])", R"("phone", )");
  bool phone = false;
  for (const BenchRound& round : sheet_of(system_of(text)).rounds)
    for (const std::string& load : round.loads) {
      EXPECT_NE(load, "buck/in");
      phone = phone || load == "phone";
    }
  EXPECT_TRUE(phone);
}

}  // namespace
}  // namespace ohmtrail::diagnose
