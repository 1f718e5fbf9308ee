#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "ohmtrail/network/topology.hpp"
#include "ohmtrail/trade/conductor.hpp"
#include "ohmtrail/trade/gauge.hpp"
#include "unit/network/built.hpp"

namespace ohmtrail::network {
namespace {

using testing::ElementsAre;

TEST(Build, RunAndReturnInFileOrder) {
  const Network network = built(one_load());
  EXPECT_THAT(ids(network), ElementsAre("bat", "feed/from", "feed/wire", "feed/to", "feed/return-from",
                                        "feed/return-wire", "feed/return-to", "pump"));
  EXPECT_THAT(network.points, ElementsAre("b+", "b-", "feed@from", "feed@to", "l+", "l-", "feed@return-from",
                                          "feed@return-to"));
  EXPECT_EQ(network.case_name, "all-on");
  EXPECT_EQ(network.points.at(static_cast<std::size_t>(*network.reference)), "b-");
  const Element& to = element(network, "feed/to");
  EXPECT_EQ(network.points.at(static_cast<std::size_t>(to.from)), "feed@to");
  EXPECT_EQ(network.points.at(static_cast<std::size_t>(to.to)), "l+");
}

TEST(Build, BareRunMeansItsWire) {
  const Network network = built(one_load());
  EXPECT_EQ(element(network, "feed").id, "feed/wire");
  EXPECT_FALSE(network.element("nothing"));
  EXPECT_FALSE(network.point("nowhere"));
}

TEST(Build, TableWireIsCorrectedForTemperatureAndNoted) {
  const Network network = built(one_load());
  const Element& wire = element(network, "feed/wire");
  const auto expected =
      trade::wire_resistance_at_20C(trade::awg(6), units::Length{2}, trade::ConductorKind::tinned_copper);
  EXPECT_DOUBLE_EQ(wire.resistance.si(), expected.si());
  EXPECT_GT(wire.heating->temperature_coefficient, 0.0038);
  EXPECT_EQ(wire.heating->ambient.celsius(), 25);
  EXPECT_TRUE(wire.sound_from_table);
  const auto noted = [&](const std::string& id) {
    return std::any_of(network.assumptions.begin(), network.assumptions.end(),
                       [&](const Assumption& a) { return a.id == id; });
  };
  EXPECT_TRUE(noted("feed/wire"));
  EXPECT_TRUE(noted("feed/return-to"));
  EXPECT_TRUE(noted("system"));
  EXPECT_FALSE(noted("bat"));
}

TEST(Build, GivenResistanceStandsAtAnyTemperature) {
  const Network network = built(one_load(R"(, "sound": "2 mohm", "resistance": "5 mohm")"));
  const Element& wire = element(network, "feed/wire");
  EXPECT_DOUBLE_EQ(wire.resistance.si(), 0.005);
  EXPECT_DOUBLE_EQ(wire.sound->si(), 0.002);
  EXPECT_EQ(wire.heating->temperature_coefficient, 0);
  EXPECT_TRUE(wire.as_found_given);
  const Element& back = element(network, "feed/return-wire");
  EXPECT_DOUBLE_EQ(back.resistance.si(), 0.002) << "a return inherits sound, never resistance";
}

TEST(Build, EndsInTwoWhereTheSystemSaysSo) {
  std::string json =
      one_load(R"(, "ends": {"from": {"kind": "crimped", "sound": "60 uohm"}, "to": "crimped"})");
  json.replace(json.find("\"nominal\": 12}"), 14,
               "\"nominal\": 12, \"terminations\": \"contact-and-crimp\"}");
  const Network network = built(json);
  EXPECT_THAT(ids(network),
              ElementsAre("bat", "feed/from", "feed/from-crimp", "feed/wire", "feed/to-crimp", "feed/to",
                          "feed/return-from", "feed/return-from-crimp", "feed/return-wire",
                          "feed/return-to-crimp", "feed/return-to", "pump"));
  EXPECT_DOUBLE_EQ(element(network, "feed/from").resistance.si(), 30e-6);
  EXPECT_DOUBLE_EQ(element(network, "feed/from-crimp").resistance.si(), 30e-6);
  const Element& crimp = element(network, "feed/to-crimp");
  EXPECT_EQ(network.points.at(static_cast<std::size_t>(crimp.from)), "feed@to");
  EXPECT_EQ(network.points.at(static_cast<std::size_t>(crimp.to)), "feed@to-metal");
}

TEST(Build, ReadingOnTheLugsMetalOpensThatEndAlone) {
  const Network network = built(one_load(
      "", R"(, "readings": [{"volts": 0.01, "red": "b+", "black": "feed@from-metal", "case": "all-on"}])"));
  EXPECT_TRUE(network.element("feed/from-crimp"));
  EXPECT_FALSE(network.element("feed/to-crimp"));
  EXPECT_TRUE(network.point("feed@from-metal"));
}

const char* const cases_json = R"({"ohmtrail": 1, "system": {"name": "cases", "nominal": 12, "ambient": 30},
  "batteries": [{"id": "bat", "plus": "b+", "minus": "b-", "nominal": 12, "capacity": "100 Ah"}],
  "chargers": [{"id": "shore", "plus": "b+", "minus": "b-", "setpoint": 14.2, "limit": 30}],
  "runs": [{"id": "hot", "from": "s", "to": "l+", "gauge": "6 AWG", "length": 2, "in": "engine-space"}],
  "joints": [{"id": "bus", "from": "l-", "to": "n", "kind": "bus-bar"}],
  "switches": [{"id": "main", "from": "b+", "to": "f", "kind": "battery-switch", "closed": false}],
  "fuses": [{"id": "fuse", "from": "f", "to": "i", "rating": 60}],
  "shunts": [{"id": "shunt", "from": "n", "to": "b-", "rating": "500 A", "drop": "50 mV"}],
  "isolators": [{"id": "iso", "from": "i", "to": "s"}],
  "loads": [{"id": "lamp", "plus": "l+", "minus": "l-", "takes": "24 W", "class": "critical"},
            {"id": "pile", "plus": "l+", "minus": "l-", "takes": "0.1 ohm", "class": "test", "nominal": 11}],
  "converters": [{"id": "dc", "plus_in": "l+", "minus_in": "l-", "plus_out": "c+", "minus_out": "c-", "setpoint": 5, "limit": 10}],
  "stubs": ["c+", "c-"],
  "cases": [{"name": "day", "on": ["lamp"], "set": {"lamp": "3 A"}, "closed": ["main"]},
            {"name": "test", "on": "all", "chargers": ["shore"], "open": ["hot", "dc/in"], "closed": ["main"], "ambient": 10}]})";

TEST(Build, CasesSwitchSetAndOpen) {
  const Network day = built(cases_json, 0);
  EXPECT_TRUE(element(day, "main").active);
  EXPECT_TRUE(element(day, "lamp").active);
  EXPECT_DOUBLE_EQ(std::get<units::Current>(*element(day, "lamp").takes).si(), 3);
  EXPECT_FALSE(element(day, "pile").active);
  EXPECT_FALSE(element(day, "shore").active);
  EXPECT_TRUE(element(day, "dc/in").active);
  const Network test = built(cases_json, 1);
  EXPECT_TRUE(element(test, "pile").active);
  EXPECT_TRUE(element(test, "shore").active);
  EXPECT_FALSE(element(test, "hot").active);
  EXPECT_FALSE(element(test, "dc/out").active);
  EXPECT_DOUBLE_EQ(std::get<units::Power>(*element(test, "lamp").takes).si(), 24);
}

TEST(Build, EverySectionHasItsRoleAndValues) {
  const Network network = built(cases_json);
  EXPECT_THAT(ids(network), ElementsAre("bat", "shore", "hot/from", "hot/wire", "hot/to", "bus", "main",
                                        "fuse", "shunt", "iso", "lamp", "pile", "dc/in", "dc/out"));
  EXPECT_DOUBLE_EQ(element(network, "shunt").resistance.si(), 1e-4);
  EXPECT_DOUBLE_EQ(element(network, "iso").voltage.si(), 0.7);
  EXPECT_EQ(element(network, "main").role, Role::switchgear);
  EXPECT_EQ(element(network, "fuse").role, Role::fuse);
  EXPECT_GT(element(network, "fuse").resistance.si(), 0);
  EXPECT_DOUBLE_EQ(element(network, "lamp").drop_limit->of_one(), 0.03);
  EXPECT_FALSE(element(network, "pile").drop_limit);
  EXPECT_DOUBLE_EQ(element(network, "pile").nominal->si(), 11);
  EXPECT_EQ(element(network, "hot").heating->ambient.celsius(), 50);
  const Element& out = element(network, "dc/out");
  EXPECT_EQ(out.role, Role::charger);
  EXPECT_EQ(network.elements.at(static_cast<std::size_t>(out.partner)).id, "dc/in");
  EXPECT_EQ(network.elements.at(static_cast<std::size_t>(element(network, "dc/in").partner)).id, "dc/out");
}

TEST(Topology, IslandsBridgesAndRings) {
  const Network day = built(cases_json, 0);
  const Topology topology = topology_of(day);
  EXPECT_EQ(topology.islands, 2);  // the converter's output stands alone
  EXPECT_EQ(topology.rings, 2);    // lamp and converter input side by side, closed through the battery
  for (const char* id : {"bat", "main", "lamp", "hot/wire"}) {
    EXPECT_FALSE(topology.bridge.at(static_cast<std::size_t>(*day.element(id)))) << id;
  }
  const Network test = built(cases_json, 1);
  const Topology torn = topology_of(test);
  EXPECT_TRUE(torn.bridge.at(static_cast<std::size_t>(*test.element("main"))));
  EXPECT_FALSE(torn.bridge.at(static_cast<std::size_t>(*test.element("hot"))));  // open: no part of the graph
}

}  // namespace
}  // namespace ohmtrail::network
