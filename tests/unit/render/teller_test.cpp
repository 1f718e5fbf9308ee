#include "render/teller.hpp"

#include <gmock/gmock.h>

#include <algorithm>

#include "ohmtrail/trade/gauge.hpp"
#include "support/page_checks.hpp"
#include "unit/solve/solved_case.hpp"

// What a diagram says about each of its parts. The system is invented.
namespace ohmtrail::render {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;

// A battery of 10 mΩ, a feed of 40 mΩ in all, a lamp of 10 A; a pump behind an open switch; a charger.
constexpr const char* skiff = R"({"ohmtrail": 1, "system": {"name": "skiff", "nominal": 12},
  "batteries": [{"id": "bank", "plus": "b+", "minus": "b-", "nominal": 12, "emf": 12.6, "resistance": 0.01,
                 "capacity": "100 Ah"}],
  "chargers": [{"id": "shore", "plus": "b+", "minus": "b-", "setpoint": 14.4, "limit": 20}],
  "runs": [{"id": "feed", "from": "b+", "to": "l+", "gauge": "6 AWG", "length": 2, "sound": "20 mohm",
            "ends": {"from": {"sound": "10 mohm"}, "to": {"sound": "10 mohm"}},
            "return": {"from": "l-", "to": "b-", "sound": "0.1 mohm",
                       "ends": {"from": {"sound": "0.1 mohm"}, "to": {"sound": "0.1 mohm"}}}}],
  "switches": [{"id": "pump switch", "from": "l+", "to": "p+", "kind": "toggle", "rating": "15 A"}],
  "fuses": [{"id": "fuse", "from": "l+", "to": "lamp+", "rating": "20 A", "sound": "5 mohm"}],
  "loads": [{"id": "lamp", "plus": "lamp+", "minus": "l-", "takes": "10 A"},
            {"id": "pump", "plus": "p+", "minus": "l-", "takes": "50 W"},
            {"id": "radio", "plus": "lamp+", "minus": "l-", "takes": "1.2 ohm", "stops_below": 13}],
  "cases": [{"name": "evening", "on": ["lamp", "pump"], "open": ["pump switch"]},
            {"name": "in port", "on": ["radio"], "chargers": ["shore"], "open": ["pump switch"]}]})";

/// One case with its wiring, as told.
struct Told {
  netlist::System system;
  solve::CaseSolution solved;
  Wiring wiring;

  explicit Told(std::size_t in_case)
      : system(netlist::read(skiff).value().system),
        solved(solve::solved(skiff, in_case)),
        wiring(make_wiring(solved.network)) {}

  [[nodiscard]] Teller as(Show show, const std::vector<diagnose::HotSpot>& spots = {}) const {
    return {system, solved, spots, show};
  }
  [[nodiscard]] const Piece& piece(const std::string& id) const {
    for (const Lane& lane : wiring.lanes)
      for (const Piece& piece : lane.pieces)
        for (const int e : piece.elements)
          if (solved.network.elements[static_cast<std::size_t>(e)].id == id) return piece;
    throw std::runtime_error("no piece " + id);
  }
  [[nodiscard]] const Item& item(const std::string& id) const {
    for (const Item& item : wiring.items)
      if (solved.network.elements[static_cast<std::size_t>(item.elements.front())].id == id) return item;
    throw std::runtime_error("no item " + id);
  }
};

/// With plain blanks.
std::string plain_spaces(std::string text) {
  for (const char* space : {"\u202F", "\u00A0"})
    for (std::size_t at; (at = text.find(space)) != std::string::npos;)
      text.replace(at, std::string(space).size(), " ");
  return text;
}

std::vector<std::string> plain_spaces(std::vector<std::string> lines) {
  for (std::string& line : lines) line = plain_spaces(line);
  return lines;
}

TEST(Teller, ARunIsCableAndBothItsEnds) {
  const Told evening(0);
  const Piece& feed = evening.piece("feed/wire");
  EXPECT_EQ(evening.as(Show::volts).name(feed), "feed");
  EXPECT_EQ(plain_spaces(evening.as(Show::volts).value(feed)), "400 mV");
  EXPECT_EQ(plain_spaces(evening.as(Show::amps).value(feed)), "10.0 A");
  EXPECT_THAT(plain_spaces(evening.as(Show::heat).value(feed)), testing::StartsWith("4.00 W"));
  EXPECT_EQ(plain_spaces(evening.as(Show::gauge).value(feed)), "6 AWG · 2.00 m");
  EXPECT_EQ(plain_spaces(evening.as(Show::volts).title(feed)),
            "Run feed, 6 AWG, 2.00 m long: 400 mV lost at 10.0 A, 4.00 W of heat");
  EXPECT_EQ(evening.as(Show::volts).name(evening.piece("feed/return-wire")), "feed (return)");
}

TEST(Teller, ADeviceHasItsRating) {
  const Told evening(0);
  const Piece& fuse = evening.piece("fuse");
  EXPECT_EQ(plain_spaces(evening.as(Show::gauge).value(fuse)), "20.0 A");
  EXPECT_EQ(plain_spaces(evening.as(Show::volts).title(fuse)),
            "fuse: 50.0 mV lost at 10.0 A, 500 mW of heat");
  EXPECT_EQ(evening.as(Show::volts).copper(fuse), 0);
  EXPECT_NEAR(evening.as(Show::volts).copper(evening.piece("feed/wire")), 13.3e-6, 0.1e-6);
}

TEST(Teller, WhatIsOpenSaysSoWhateverIsShownButItsRating) {
  const Told evening(0);
  const Piece& open = evening.piece("pump switch");
  for (const Show show : {Show::volts, Show::amps, Show::heat})
    EXPECT_EQ(evening.as(show).value(open), "open");
  EXPECT_EQ(plain_spaces(evening.as(Show::gauge).value(open)), "15.0 A");
  EXPECT_EQ(evening.as(Show::volts).title(open), "pump switch: no current in this case");
}

TEST(Teller, LoadsThatAreOffAndLoadsThatDroppedOutAreToldApart) {
  EXPECT_THAT(plain_spaces(Told(0).as(Show::volts).values(Told(0).item("radio"), 0)),
              ElementsAre("1.20 Ω", "off"));
  netlist::System system = netlist::read(skiff).value().system;
  netlist::Case dim = system.cases[0];
  dim.on = {"radio"};
  const solve::CaseSolution solved = solve::solve_case(network::build(system, dim)).value();
  const Wiring wiring = make_wiring(solved.network);
  const auto radio = std::find_if(wiring.items.begin(), wiring.items.end(), [&](const Item& item) {
    return solved.network.elements[static_cast<std::size_t>(item.elements.front())].id == "radio";
  });
  EXPECT_THAT(plain_spaces(Teller(system, solved, {}, Show::volts).values(*radio, 0)),
              ElementsAre("1.20 Ω", "stopped"))
      << "13 V it never has without the charger";
}

TEST(Teller, ABatteryDeliversOrTakes) {
  const Told evening(0), in_port(1);
  EXPECT_EQ(plain_spaces(evening.as(Show::volts).title(evening.item("bank"), 0)),
            "Battery bank: 12.50 V at its posts, delivers 10.0 A");
  EXPECT_THAT(plain_spaces(in_port.as(Show::volts).title(in_port.item("bank"), 0)),
              HasSubstr("V at its posts, takes "));
  EXPECT_THAT(plain_spaces(evening.as(Show::volts).values(evening.item("bank"), 0)),
              ElementsAre("12 V · 100 Ah", "12.50 V"));
}

TEST(Teller, AChargerHasItsSetPointAndLimit) {
  const Told evening(0), in_port(1);
  EXPECT_THAT(plain_spaces(evening.as(Show::amps).values(evening.item("shore"), 0)),
              ElementsAre("14.40 V · 20.0 A", "off"));
  EXPECT_THAT(plain_spaces(in_port.as(Show::amps).values(in_port.item("shore"), 0)),
              ElementsAre("14.40 V · 20.0 A", "20.0 A"));
  EXPECT_EQ(evening.as(Show::volts).title(evening.item("shore"), 0), "shore: no current in this case");
}

TEST(Teller, TheTemperatureOfAHotSpotStandsBesideTheHeat) {
  const Told evening(0);
  diagnose::HotSpot spot;
  spot.id = "feed/to";
  spot.temperature = 83.4;
  const std::vector<diagnose::HotSpot> spots{spot};
  const Teller teller = evening.as(Show::heat, spots);
  const Piece& feed = evening.piece("feed/wire");
  EXPECT_EQ(plain_spaces(teller.value(feed)), "4.00 W · 83 °C");
  EXPECT_EQ(teller.hot_spot(*evening.solved.network.element("feed/to")), spots.data());
  EXPECT_EQ(teller.hot_spot(*evening.solved.network.element("feed/from")), nullptr);
}

TEST(Teller, CurrentIsCountedLeftToRight) {
  const Told evening(0);
  Piece feed = evening.piece("feed/wire");
  const Teller teller = evening.as(Show::amps);
  const double one_way = teller.current(feed);
  EXPECT_NEAR(std::abs(one_way), 10, 1e-9);
  std::vector<Piece> turned{feed};
  turn(turned);
  EXPECT_EQ(teller.current(turned[0]), -one_way);
}

TEST(Teller, PostsAndBarsHaveTheirVoltageWhereVoltsAreShown) {
  const Told evening(0);
  const auto bar = std::find_if(evening.wiring.bars.begin(), evening.wiring.bars.end(), [&](const Bar& b) {
    return evening.solved.network.points[static_cast<std::size_t>(b.point)] == "b+";
  });
  ASSERT_NE(bar, evening.wiring.bars.end());
  EXPECT_EQ(evening.as(Show::volts).name(*bar), "b+");
  EXPECT_EQ(plain_spaces(evening.as(Show::volts).value(*bar)), "12.50 V");
  EXPECT_EQ(plain_spaces(evening.as(Show::volts).title(*bar)), "b+ · 12.50 V");
  EXPECT_EQ(evening.as(Show::amps).value(*bar), "");
  EXPECT_EQ(evening.as(Show::amps).title(*bar), "b+");
}

/// Battery, isolator, lamp.
constexpr const char* split = R"({"ohmtrail": 1, "system": {"name": "split", "nominal": 12},
  "batteries": [{"id": "bank", "plus": "b+", "minus": "b-", "nominal": 12, "emf": 12.6, "resistance": 0.01}],
  "isolators": [{"id": "splitter", "from": "b+", "to": "l+", "drop": 0.6, "rating": "70 A"}],
  "loads": [{"id": "lamp", "plus": "l+", "minus": "b-", "takes": "10 A"}]})";

TEST(Teller, AnIsolatorHasItsRatingAndWhatItLoses) {
  const netlist::System system = netlist::read(split).value().system;
  const solve::CaseSolution solved = solve::solved(split);
  const Wiring wiring = make_wiring(solved.network);
  const auto lane = std::find_if(wiring.lanes.begin(), wiring.lanes.end(),
                                 [](const Lane& one) { return !one.pieces.empty(); });
  ASSERT_NE(lane, wiring.lanes.end());
  const Piece& piece = lane->pieces.front();
  EXPECT_EQ(plain_spaces(Teller(system, solved, {}, Show::gauge).value(piece)), "70.0 A");
  EXPECT_EQ(plain_spaces(Teller(system, solved, {}, Show::volts).value(piece)), "600 mV");
  EXPECT_EQ(plain_spaces(Teller(system, solved, {}, Show::volts).title(piece)),
            "splitter: 600 mV lost at 10.0 A, 6.00 W of heat");
}

TEST(Diagram, DrawsAnIsolatorWithItsNameClearOfIt) {
  const netlist::System system = netlist::read(split).value().system;
  const Scene scene = diagram(system, solve::solved(split), {}, {});
  int symbols = 0;
  for (const Shape& shape : scene.shapes)
    if (shape.group >= 0 && scene.groups[static_cast<std::size_t>(shape.group)].id == "splitter")
      symbols += shape.kind == Kind::symbol ? 1 : 0;
  EXPECT_GE(symbols, 2) << "a triangle and a bar";
  test::expect_inside({scene});
  test::expect_letters_apart({scene});
}

TEST(GaugeNames, AreWrittenAsOnTheReel) {
  for (const auto& [gauge, name] :
       {std::pair{"2/0 AWG", "2/0 AWG"}, std::pair{"1/0 AWG", "1/0 AWG"}, std::pair{"6 AWG", "6 AWG"},
        std::pair{"4 SAE", "4 SAE"}, std::pair{"35 mm2", "35 mm²"}, std::pair{"2.5 mm2", "2.5 mm²"}})
    EXPECT_EQ(plain_spaces(gauge_name(*trade::parse_gauge(gauge))), name);
}

}  // namespace
}  // namespace ohmtrail::render
