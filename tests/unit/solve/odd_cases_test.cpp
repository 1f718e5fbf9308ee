// Cases that few systems have: loads the wrong way round, rings of batteries, isolators, loads that take
// turns in a network that cannot carry the rest.
#include <algorithm>
#include <cmath>

#include "unit/solve/solved_case.hpp"

namespace ohmtrail::solve {
namespace {

bool notes(const CaseSolution& solved, const std::string& id, const std::string& start) {
  const auto& all = solved.network.assumptions;
  return std::any_of(all.begin(), all.end(), [&](const network::Assumption& one) {
    return one.id == id && one.text.starts_with(start);
  });
}

constexpr const char* reversed_text = "takes its current although its voltage is not above 0 V";

// "a constant-current load takes its current at any voltage, with a warning where that voltage is not
// positive"
TEST(OddCases, AConstantCurrentTheWrongWayRoundIsTakenAndSaid) {
  const CaseSolution s = solved(R"({"ohmtrail": 1, "system": {"name": "turned", "nominal": 12},
    "batteries": [{"id": "bat", "plus": "p", "minus": "n", "nominal": 12, "emf": 12.6, "resistance": 0.01}],
    "loads": [{"id": "lamp", "plus": "n", "minus": "p", "takes": "5 A"},
              {"id": "fan", "plus": "p", "minus": "n", "takes": "5 A"},
              {"id": "heater", "plus": "n", "minus": "p", "takes": "2 ohm"}]})");
  EXPECT_TRUE(notes(s, "lamp", reversed_text));
  EXPECT_FALSE(notes(s, "fan", reversed_text));
  EXPECT_FALSE(notes(s, "heater", reversed_text)) << "a resistance takes what its voltage gives";
  EXPECT_NEAR(load_of(s, "lamp").current, 5, 1e-12);
  EXPECT_LT(load_of(s, "lamp").volts, -12);
}

TEST(OddCases, ALoadThatIsOffIsNotDoubted) {
  const CaseSolution s = solved(R"({"ohmtrail": 1, "system": {"name": "turned", "nominal": 12},
    "batteries": [{"id": "bat", "plus": "p", "minus": "n", "nominal": 12, "emf": 12.6, "resistance": 0.01}],
    "loads": [{"id": "lamp", "plus": "n", "minus": "p", "takes": "5 A"}],
    "cases": [{"name": "off"}]})");
  EXPECT_FALSE(notes(s, "lamp", reversed_text));
}

TEST(OddCases, AnIsolatorCostsTheLoadBehindItItsDrop) {
  const CaseSolution s = solved(R"({"ohmtrail": 1, "system": {"name": "split", "nominal": 12},
    "batteries": [{"id": "bat", "plus": "p", "minus": "n", "nominal": 12, "emf": 12.6, "resistance": 0.01}],
    "isolators": [{"id": "iso", "from": "p", "to": "l", "drop": 0.6}],
    "loads": [{"id": "lamp", "plus": "l", "minus": "n", "takes": "10 A"}]})");
  EXPECT_NEAR(load_of(s, "lamp").volts, 12.6 - 0.1 - 0.6, 1e-12);
  EXPECT_NEAR(load_of(s, "lamp").drop, 0.6, 1e-12);
  EXPECT_NEAR(s.solution.heat[element_of(s, "iso")], 6, 1e-10);
}

// Three batteries plus to minus in a ring have no top: 3 E drive a current round it, and each is named by the
// first.
TEST(OddCases, BatteriesInARingAreOneSupplyNamedByTheFirst) {
  const CaseSolution s = solved(R"({"ohmtrail": 1, "system": {"name": "ring", "nominal": 12},
    "batteries": [{"id": "a", "plus": "x", "minus": "y", "nominal": 12, "emf": 12, "resistance": 0.1},
                  {"id": "b", "plus": "y", "minus": "z", "nominal": 12, "emf": 12, "resistance": 0.1},
                  {"id": "c", "plus": "z", "minus": "x", "nominal": 12, "emf": 12, "resistance": 0.1}],
    "loads": [{"id": "lamp", "plus": "x", "minus": "y", "takes": "1 A"}]})");
  ASSERT_EQ(s.supplies.size(), 1U);
  EXPECT_EQ(s.supplies[0].elements, (std::vector<int>{0, 1, 2}));
  EXPECT_NEAR(s.supplies[0].open_circuit, 36, 1e-12);
  // round the ring: 36 = 0.1 (3 i) + 0.1 · 1 A of the lamp's share in battery a
  EXPECT_NEAR(-s.solution.current[1], (36 - 0.1) / 0.3, 1e-9);
}

TEST(OddCases, AShortIsToldWithTheBatteryAndWhatShortsIt) {
  const auto failed = solve_text(R"({"ohmtrail": 1, "system": {"name": "short", "nominal": 12},
    "batteries": [{"id": "bat", "plus": "p", "minus": "n", "nominal": 12, "emf": 12, "resistance": 0.004}],
    "switches": [{"id": "oops", "from": "p", "to": "n", "kind": "battery-switch", "resistance": 0}]})");
  ASSERT_FALSE(failed);
  EXPECT_EQ(failed.error().kind, Failure::Kind::shorted_source);
  EXPECT_EQ(failed.error().branches, (std::vector<int>{0, 1}));
  EXPECT_NEAR(failed.error().amperes, 3000, 1e-9);
}

/// A winch for 20 s on a cable that the radio shares. What the radio takes lasts, the winch's part comes in
/// turns.
std::string winch(const std::string& radio_takes, const std::string& more = "") {
  return R"({"ohmtrail": 1, "system": {"name": "anchor", "nominal": 12},
    "batteries": [{"id": "bat", "plus": "p", "minus": "n", "nominal": 12, "emf": 12.6, "resistance": 0.001}],
    "runs": [{"id": "feed", "from": "p", "to": "l", "gauge": "8 AWG", "length": 2}],
    "loads": [{"id": "winch", "plus": "l", "minus": "n", "takes": "60 A", "on_for": 20, "rest_for": 600},
              {"id": "radio", "plus": "l", "minus": "n", "takes": ")" +
         radio_takes + "\"}]" + more + "}";
}

TEST(OddCases, WhatLastsAndWhatComesInTurnsIsKeptPerElement) {
  const CaseSolution s = solved(winch("20 A"));
  ASSERT_TRUE(s.turns);
  ASSERT_EQ(s.turns->duties.size(), 1U);
  EXPECT_NEAR(s.turns->lasting[element_of(s, "feed")], std::pow(20.0 / 80, 2), 1e-9);
  EXPECT_NEAR(s.turns->lasting[element_of(s, "radio")], 1, 1e-9);
  EXPECT_EQ(s.turns->lasting[element_of(s, "winch")], 0);
  const CaseSolution steady = solved(winch("20 A", R"(, "cases": [{"name": "radio", "on": ["radio"]}])"));
  EXPECT_FALSE(steady.turns) << "no load of short duty runs";
}

TEST(OddCases, AWireOfShortTurnsIsCoolerThanIfTheyLasted) {
  const CaseSolution turns = solved(winch("20 A"));
  std::string lasting = winch("20 A");
  lasting.erase(lasting.find(R"(, "on_for": 20, "rest_for": 600)"), 31);
  const CaseSolution all = solved(lasting);
  const std::size_t feed = element_of(all, "feed");
  EXPECT_LT(turns.solution.temperature[feed], all.solution.temperature[feed]);
  EXPECT_LT(turns.solution.resistance[feed], all.solution.resistance[feed]);
  EXPECT_GT(turns.solution.temperature[feed], 25) << "but not cold";
}

TEST(OddCases, BehindAConverterThatIsOutOfReachTheIslandsStrongestIsTheSupply) {
  // the lamp hangs on the battery's own net, not on the converter's
  const CaseSolution s = solved(R"({"ohmtrail": 1, "system": {"name": "two nets", "nominal": 12},
    "batteries": [{"id": "bat", "plus": "p", "minus": "n", "nominal": 12, "emf": 12.6, "resistance": 0.01}],
    "isolators": [{"id": "iso", "from": "p", "to": "l"}],
    "converters": [{"id": "usb", "plus_in": "p", "minus_in": "n", "plus_out": "u", "minus_out": "n",
                    "setpoint": 5, "limit": 3}],
    "loads": [{"id": "lamp", "plus": "l", "minus": "n", "takes": "5 A"},
              {"id": "phone", "plus": "u", "minus": "n", "takes": "1 A", "nominal": 5}]})");
  EXPECT_EQ(load_of(s, "lamp").supply, static_cast<int>(element_of(s, "bat")))
      << "an isolator parts the lamp's net from both supplies': the stronger feeds it";
  EXPECT_EQ(load_of(s, "phone").supply, static_cast<int>(element_of(s, "usb/out")));
}

}  // namespace
}  // namespace ohmtrail::solve
