// What a place and a case do to a wire, and what is taken from the tables where the file is silent.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "ohmtrail/trade/ampacity.hpp"
#include "ohmtrail/trade/conductor.hpp"
#include "ohmtrail/trade/gauge.hpp"
#include "ohmtrail/trade/sound.hpp"
#include "unit/network/built.hpp"

namespace ohmtrail::network {
namespace {

using testing::HasSubstr;

std::string note_on(const Network& network, const std::string& id) {
  std::string all;
  for (const Assumption& each : network.assumptions) {
    if (each.id == id) all += each.text + "\n";
  }
  return all;
}

TEST(Surroundings, AWireHasTheAmbientOfItsCase) {
  const std::string json = one_load("", R"(, "cases": [{"name": "winter", "on": "all", "ambient": "14 F"}])");
  EXPECT_NEAR(element(built(json), "feed").heating->ambient.celsius(), -10, 1e-9);
}

TEST(Surroundings, InTheEngineSpaceItHasThatOfTheEngineSpaceInEveryCase) {
  const std::string json = one_load(R"(, "in": "engine-space")",
                                    R"(, "cases": [{"name": "winter", "on": "all", "ambient": -10}])");
  const Network network = built(json);
  EXPECT_EQ(element(network, "feed").heating->ambient.celsius(), 50);
  EXPECT_EQ(element(network, "feed/return-wire").heating->ambient.celsius(), 50);
}

TEST(Surroundings, AnyOtherWordForThePlaceIsOnlyAWord) {
  const Network plain = built(one_load());
  const Network bilge = built(one_load(R"(, "in": "bilge")"));
  EXPECT_EQ(element(bilge, "feed").heating->ambient.celsius(), 25);
  EXPECT_EQ(element(bilge, "feed").heating->rated.si(), element(plain, "feed").heating->rated.si());
}

TEST(Surroundings, AmpacityIsThatOfTheRunAsItLies) {
  trade::WirePlace place;
  place.gauge = trade::awg(6);
  place.bundle = 5;
  place.insulation = units::Temperature{75};
  place.system = units::Voltage{12};
  const trade::Ampacity expected = trade::ampacity(place);
  const Network network = built(one_load(R"(, "bundle": 5, "insulation": 75)"));
  EXPECT_DOUBLE_EQ(element(network, "feed").heating->rated.si(), expected.amps.si());
  EXPECT_DOUBLE_EQ(element(network, "feed").heating->rise_at_rated.si(), expected.rise_at_rated.si());
}

TEST(Surroundings, AWireWarmsWithTheTimeConstantOfItsGaugeAndPlace) {
  trade::WirePlace place;
  place.gauge = trade::awg(6);
  place.system = units::Voltage{12};
  const double expected = trade::thermal_time_constant(place, trade::ampacity(place)).si();
  EXPECT_DOUBLE_EQ(element(built(one_load()), "feed").heating->time_constant.si(), expected);
}

TEST(Surroundings, ASoundValueFromTheTableStandsAtTheTemperatureOfTheGivenOne) {
  const Network network = built(
      one_load(R"(, "resistance": "5 mohm")", R"(, "cases": [{"name": "hot", "on": "all", "ambient": 70}])"));
  const double cold =
      trade::wire_resistance_at_20C(trade::awg(6), units::Length{2}, trade::ConductorKind::tinned_copper)
          .si();
  const double warm = trade::resistance_factor(trade::ConductorKind::tinned_copper, units::Temperature{70});
  EXPECT_NEAR(element(network, "feed").sound->si(), cold * warm, 1e-12);
  EXPECT_THAT(note_on(network, "feed/wire"), HasSubstr("at the ambient temperature"));
  EXPECT_THAT(note_on(built(one_load()), "feed/wire"), HasSubstr("at 20 °C"));
}

TEST(Surroundings, TheAmbientOfEachCaseIsNoted) {
  const Network network = built(one_load());
  EXPECT_THAT(note_on(network, "system"), HasSubstr("all-on"));
}

TEST(TableValues, TerminationsAreThoseOfTheTrade) {
  const Network network = built(one_load(R"(, "ends": "soldered")"));
  const trade::Sound expected = trade::sound_termination(trade::TerminationKind::soldered, trade::awg(6));
  for (const char* id : {"feed/from", "feed/to", "feed/return-from", "feed/return-to"}) {
    EXPECT_DOUBLE_EQ(element(network, id).resistance.si(), expected.value.si()) << id;
    EXPECT_THAT(note_on(network, id), HasSubstr(expected.basis)) << id;
  }
}

TEST(TableValues, ABatteryOfWhichNothingIsKnownIsNotedTwice) {
  const Network network = built(R"({"ohmtrail": 1, "system": {"name": "x", "nominal": 12},
    "batteries": [{"id": "bat", "plus": "+", "minus": "-", "nominal": 12, "capacity": "100 Ah"}],
    "loads": [{"id": "lamp", "plus": "+", "minus": "-", "takes": "1 A"}]})");
  EXPECT_THAT(note_on(network, "bat"), HasSubstr("open-circuit voltage"));
  EXPECT_THAT(note_on(network, "bat"), HasSubstr("internal resistance"));
  EXPECT_TRUE(element(network, "bat").sound_from_table);
  EXPECT_GT(element(network, "bat").voltage.si(), 12.5);
}

TEST(TableValues, AGivenBatteryIsNotNoted) {
  const Network network = built(one_load());
  EXPECT_EQ(note_on(network, "bat"), "");
  EXPECT_TRUE(element(network, "bat").as_found_given);
}

TEST(Opening, AnOpenRunIsOpenBothWays) {
  const Network network =
      built(one_load("", R"(, "cases": [{"name": "off", "on": "all", "open": ["feed"]}])"));
  EXPECT_FALSE(element(network, "feed/wire").active);
  EXPECT_FALSE(element(network, "feed/return-wire").active);
  EXPECT_TRUE(element(network, "feed/from").active);
}

TEST(Opening, OneConductorCanBeOpenedByItsName) {
  const Network network =
      built(one_load("", R"(, "cases": [{"name": "off", "on": "all", "open": ["feed/return-wire"]}])"));
  EXPECT_TRUE(element(network, "feed/wire").active);
  EXPECT_FALSE(element(network, "feed/return-wire").active);
}

TEST(Reference, IsTheOneNamedOrTheFirstBatterysMinus) {
  const Network named = built(one_load("", R"(, "reference": "l-")"));
  EXPECT_EQ(named.points.at(static_cast<std::size_t>(*named.reference)), "l-");
  const Network silent = built(one_load());
  EXPECT_EQ(silent.points.at(static_cast<std::size_t>(*silent.reference)), "b-");
}

TEST(Reference, ASystemOfChargersAloneHasNone) {
  const Network network = built(R"({"ohmtrail": 1, "system": {"name": "x", "nominal": 12},
    "chargers": [{"id": "shore", "plus": "+", "minus": "-", "setpoint": 14, "limit": 30}],
    "loads": [{"id": "lamp", "plus": "+", "minus": "-", "takes": "1 A"}],
    "cases": [{"name": "day", "on": "all", "chargers": ["shore"]}]})");
  EXPECT_FALSE(network.reference);
  EXPECT_TRUE(element(network, "shore").active);
}

TEST(ShortDuty, IsThatOfTheLoad) {
  const std::string json = R"({"ohmtrail": 1, "system": {"name": "x", "nominal": 12},
    "batteries": [{"id": "bat", "plus": "+", "minus": "-", "nominal": 12}],
    "loads": [{"id": "windlass", "plus": "+", "minus": "-", "takes": "80 A", "on_for": 60, "rest_for": 600},
              {"id": "starter", "plus": "+", "minus": "-", "takes": "300 A", "on_for": 5},
              {"id": "lamp", "plus": "+", "minus": "-", "takes": "1 A"}]})";
  const Network network = built(json);
  EXPECT_EQ(element(network, "windlass").short_duty->on.si(), 60);
  EXPECT_EQ(element(network, "windlass").short_duty->rest->si(), 600);
  EXPECT_FALSE(element(network, "starter").short_duty->rest);
  EXPECT_FALSE(element(network, "lamp").short_duty);
}

}  // namespace
}  // namespace ohmtrail::network
