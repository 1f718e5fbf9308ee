#include <algorithm>
#include <cmath>

#include "unit/solve/solved_case.hpp"

namespace ohmtrail::solve {
namespace {

/// Two 12 V batteries in series with a link cable of 2 mΩ, ends of 0.1 mΩ, and a 24 V load of 1 Ω and a 12 V
/// one.
const char* const string_json = R"({"ohmtrail": 1, "system": {"name": "string", "nominal": 24},
  "batteries": [{"id": "lower", "plus": "m1", "minus": "n", "nominal": 12, "emf": 12.5, "resistance": 0.005},
                {"id": "upper", "plus": "p", "minus": "m2", "nominal": 12, "emf": 12.7, "resistance": 0.003}],
  "runs": [{"id": "link", "from": "m1", "to": "m2", "gauge": "2 AWG", "length": 0.3, "sound": "2 mohm",
            "ends": {"from": {"sound": "0.1 mohm"}, "to": {"sound": "0.1 mohm"}}}],
  "loads": [{"id": "motor", "plus": "p", "minus": "n", "takes": "1 ohm"},
            {"id": "radio", "plus": "m1", "minus": "n", "takes": "1 A", "nominal": 12, "class": "critical"}],
  "cases": [{"name": "both", "on": "all"}, {"name": "none"}]})";

TEST(CaseSolution, BatteriesInSeriesAreOneSupply) {
  const CaseSolution s = solved(string_json);
  ASSERT_EQ(s.supplies.size(), 1u);
  const Supply& supply = s.supplies.front();
  EXPECT_EQ(supply.elements, (std::vector<int>{0, 1}));
  EXPECT_EQ(s.network.points.at(static_cast<std::size_t>(supply.plus)), "p");
  EXPECT_EQ(s.network.points.at(static_cast<std::size_t>(supply.minus)), "n");
  EXPECT_DOUBLE_EQ(supply.open_circuit, 25.2);
  EXPECT_NEAR(supply.terminal, s.solution.drop[0] + s.solution.drop[1], 1e-12);
}

TEST(CaseSolution, DropLeavesTheStringAndItsLinkToTheWires) {
  const CaseSolution s = solved(string_json);
  const LoadResult& motor = s.loads.front();
  EXPECT_EQ(motor.supply, 0);
  // lower 5 mΩ carries i + 1 A, upper 3 mΩ and link 2.2 mΩ carry i; the motor is 1 Ω
  const double i = (25.2 - 0.005) / (1 + 0.005 + 0.003 + 0.0022);
  EXPECT_NEAR(motor.current, i, 1e-10);
  EXPECT_NEAR(motor.drop, 0.0022 * i, 1e-10);
  EXPECT_NEAR(motor.sag, 25.2 - i, 1e-10);
  EXPECT_NEAR(motor.drop_fraction, motor.drop / 24, 1e-14);
  EXPECT_TRUE(motor.within);
  EXPECT_TRUE(motor.running);
}

TEST(CaseSolution, LoadsThatAreOffHaveNoCurrentAndBreakNoLimit) {
  const CaseSolution s = solved(string_json, 1);
  ASSERT_FALSE(s.loads.empty());
  for (const LoadResult& load : s.loads) {
    EXPECT_FALSE(load.running);
    EXPECT_EQ(load.current, 0);
    EXPECT_EQ(load.power, 0);
    EXPECT_TRUE(load.within);
    EXPECT_TRUE(std::isnan(s.solution.resistance[static_cast<std::size_t>(load.element)]));
  }
}

TEST(CaseSolution, ParallelStringsWithLinkedMiddles) {
  const CaseSolution s = solved(R"({"ohmtrail": 1, "system": {"name": "bank", "nominal": 24},
    "batteries": [{"id": "a1", "plus": "p", "minus": "m", "nominal": 12, "emf": 12.6, "resistance": 0.005},
                  {"id": "a2", "plus": "m", "minus": "n", "nominal": 12, "emf": 12.6, "resistance": 0.005},
                  {"id": "b1", "plus": "p", "minus": "m", "nominal": 12, "emf": 12.6, "resistance": 0.005},
                  {"id": "b2", "plus": "m", "minus": "n", "nominal": 12, "emf": 12.6, "resistance": 0.005}],
    "loads": [{"id": "motor", "plus": "p", "minus": "n", "takes": "40 A"}]})");
  ASSERT_EQ(s.supplies.size(), 2u);
  EXPECT_EQ(s.supplies[0].elements, (std::vector<int>{0, 1}));
  EXPECT_EQ(s.supplies[1].elements, (std::vector<int>{2, 3}));
  EXPECT_NEAR(s.loads.front().sag, 0.2, 1e-12);
}

TEST(CaseSolution, ChargerThatDeliversMostIsTheSupply) {
  const CaseSolution s = solved(R"({"ohmtrail": 1, "system": {"name": "shore", "nominal": 12},
    "batteries": [{"id": "bat", "plus": "p", "minus": "n", "nominal": 12, "emf": 12.6, "resistance": 0.01}],
    "chargers": [{"id": "shore", "plus": "p", "minus": "n", "setpoint": 14, "limit": 50}],
    "loads": [{"id": "lamp", "plus": "p", "minus": "n", "takes": "5 A"}],
    "cases": [{"name": "in port", "on": "all", "chargers": ["shore"]}]})");
  EXPECT_EQ(s.loads.front().supply, 1);
  EXPECT_NEAR(s.solution.current[1], -50, 1e-10);
  EXPECT_NEAR(s.solution.voltage[0], 12.6 + 0.45, 1e-10);
}

TEST(CaseSolution, TornPartHasNoVoltsAndASecondSupplyItsOwnZero) {
  const CaseSolution s = solved(R"({"ohmtrail": 1, "system": {"name": "torn", "nominal": 12},
    "batteries": [{"id": "one", "plus": "p", "minus": "n", "nominal": 12, "emf": 12.6, "resistance": 0.01},
                  {"id": "two", "plus": "q", "minus": "r", "nominal": 12, "emf": 12.6, "resistance": 0.01}],
    "switches": [{"id": "main", "from": "p", "to": "l", "kind": "battery-switch"},
                 {"id": "back", "from": "k", "to": "n", "kind": "battery-switch"}],
    "loads": [{"id": "lamp", "plus": "l", "minus": "k", "takes": "5 A"},
              {"id": "fan", "plus": "q", "minus": "r", "takes": "5 A"}],
    "cases": [{"name": "off", "on": "all", "open": ["main", "back"]}]})");
  EXPECT_TRUE(std::isnan(s.loads[0].volts));
  EXPECT_EQ(s.loads[0].supply, -1);
  EXPECT_TRUE(std::isnan(s.loads[0].drop));
  EXPECT_EQ(s.loads[1].supply, 1);
  const auto& notes = s.network.assumptions;
  EXPECT_TRUE(std::any_of(notes.begin(), notes.end(),
                          [](const network::Assumption& a) { return a.text == "point r is taken as 0 V"; }));
}

// 24 V for the winch, a converter to 12 V for the radio, one minus for both.
TEST(CaseSolution, BehindAConverterTheConverterIsTheSupplyEvenWithACommonMinus) {
  const CaseSolution s = solved(R"({"ohmtrail": 1, "system": {"name": "two voltages", "nominal": 24},
    "batteries": [{"id": "bat", "plus": "p", "minus": "n", "nominal": 24, "emf": 25, "resistance": 0.01}],
    "converters": [{"id": "small", "plus_in": "p", "minus_in": "n", "plus_out": "q", "minus_out": "n",
                    "setpoint": 13, "limit": 20}],
    "runs": [{"id": "radio lead", "from": "q", "to": "r", "gauge": "14 AWG", "length": 2, "sound": "0.02 ohm",
              "ends": {"from": {"sound": "0.1 mohm"}, "to": {"sound": "0.1 mohm"}}}],
    "loads": [{"id": "winch", "plus": "p", "minus": "n", "takes": "20 A"},
              {"id": "radio", "plus": "r", "minus": "n", "takes": "5 A", "nominal": 12}],
    "cases": [{"name": "on", "on": "all"}]})");
  const auto load = [&](const char* id) { return load_of(s, id); };
  EXPECT_EQ(load("winch").supply, *s.network.element("bat"));
  EXPECT_EQ(load("small/in").supply, *s.network.element("bat"));
  EXPECT_EQ(load("radio").supply, *s.network.element("small/out"));
  EXPECT_NEAR(load("radio").drop, 5 * 0.0202, 1e-10);
  EXPECT_TRUE(load("radio").within);
}

TEST(CaseSolution, WarmWireSolvesResistanceAndTemperatureTogether) {
  const CaseSolution s = solved(R"({"ohmtrail": 1, "system": {"name": "warm", "nominal": 12, "ambient": 30},
    "batteries": [{"id": "bat", "plus": "p", "minus": "n", "nominal": 12, "emf": 12.6, "resistance": 0.001}],
    "runs": [{"id": "feed", "from": "p", "to": "l", "gauge": "8 AWG", "length": 2}],
    "loads": [{"id": "winch", "plus": "l", "minus": "n", "takes": "60 A"}]})");
  const auto k = static_cast<std::size_t>(*s.network.element("feed"));
  const network::WireHeating& heating = *s.network.elements[k].heating;
  const double load = 60 / heating.rated.si();
  const double warm = 30 + heating.rise_at_rated.si() * load * load;
  EXPECT_NEAR(s.solution.temperature[k], warm, 1e-9);
  EXPECT_NEAR(s.solution.resistance[k],
              s.network.elements[k].resistance.si() * (1 + heating.temperature_coefficient * (warm - 20)),
              1e-15);
  EXPECT_NEAR(s.solution.drop[k], 60 * s.solution.resistance[k], 1e-12);
}

}  // namespace
}  // namespace ohmtrail::solve
