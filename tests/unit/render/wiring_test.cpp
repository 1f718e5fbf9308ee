#include "render/wiring.hpp"

#include <gmock/gmock.h>

#include <algorithm>
#include <set>

#include "support/random_cases.hpp"
#include "support/random_system.hpp"
#include "unit/network/built.hpp"

// A network as bars, lanes and items: nothing is lost, nothing stands twice.
namespace ohmtrail::render {
namespace {

using network::Network;
using testing::ElementsAre;

/// Battery, feed through a switch and a fuse to a bus bar, two lamps, one way back. More keys may follow.
std::string boat(const std::string& more = "") {
  return R"({"ohmtrail": 1, "system": {"name": "boat of our own invention", "nominal": 12},
    "batteries": [{"id": "bank", "plus": "b+", "minus": "b-", "nominal": 12}],
    "runs": [{"id": "feed", "from": "b+", "to": "s", "gauge": "6 AWG", "length": 2},
             {"id": "onward", "from": "bus", "to": "f", "gauge": "6 AWG", "length": 2},
             {"id": "back", "from": "l-", "to": "b-", "gauge": "6 AWG", "length": 2}],
    "switches": [{"id": "main", "from": "s", "to": "f", "kind": "battery-switch"}],
    "fuses": [{"id": "left fuse", "from": "bus", "to": "l+", "rating": 20},
              {"id": "right fuse", "from": "bus", "to": "r+", "rating": 20}],
    "loads": [{"id": "left", "plus": "l+", "minus": "l-", "takes": "5 A"},
              {"id": "right", "plus": "r+", "minus": "l-", "takes": "5 A"}])" +
         more + "}";
}

/// "bar: pieces: bar" of every lane, bars by their points, pieces by the ids of their runs or devices.
std::vector<std::string> lanes(const Network& network, const Wiring& wiring) {
  std::vector<std::string> all;
  for (const Lane& lane : wiring.lanes) {
    const auto name = [&](int bar) {
      return network.points[static_cast<std::size_t>(wiring.bars[static_cast<std::size_t>(bar)].point)];
    };
    std::string text = name(lane.left) + ":";
    for (const Piece& piece : lane.pieces) {
      const std::string& id = network.elements[static_cast<std::size_t>(piece.elements.front())].id;
      text += " " + id.substr(0, id.find('/'));
      if (piece.reversed) text += "~";
    }
    all.push_back(text + " :" + name(lane.right));
  }
  std::sort(all.begin(), all.end());
  return all;
}

TEST(Wiring, APlainChainIsOneLaneAndABranchABar) {
  const Network network = network::built(boat());
  const Wiring wiring = make_wiring(network);
  EXPECT_THAT(lanes(network, wiring),
              ElementsAre("b+: feed main onward~ :bus", "bus: left fuse :l+", "bus: right fuse :r+",
                          "l-: :l-", "l-: :l-", "l-: back :b-"))
      << "both lamps are bolted to their common minus";
  ASSERT_EQ(wiring.items.size(), 3U);
  EXPECT_EQ(wiring.items[0].kind, ItemKind::supply);
  EXPECT_EQ(wiring.items[1].kind, ItemKind::load);
}

TEST(Wiring, PlusLiesAboveMinusBelow) {
  const Network network = network::built(boat());
  const Wiring wiring = make_wiring(network);
  ASSERT_GE(wiring.bars.size(), 2U);
  for (const Bar& bar : wiring.bars) {
    const std::string& point = network.points[static_cast<std::size_t>(bar.point)];
    EXPECT_EQ(bar.upper, !point.ends_with('-')) << point;
  }
}

TEST(Wiring, BatteriesInSeriesAreOneItemWithTheirLinkInside) {
  const Network network = network::built(
      R"({"ohmtrail": 1, "system": {"name": "string of our own invention", "nominal": 24},
    "batteries": [{"id": "upper", "plus": "p", "minus": "m1", "nominal": 12},
                  {"id": "lower", "plus": "m2", "minus": "n", "nominal": 12}],
    "runs": [{"id": "link", "from": "m2", "to": "m1", "gauge": "2 AWG", "length": 0.3},
             {"id": "feed", "from": "p", "to": "l+", "gauge": "6 AWG", "length": 2},
             {"id": "back", "from": "l-", "to": "n", "gauge": "6 AWG", "length": 2}],
    "loads": [{"id": "motor", "plus": "l+", "minus": "l-", "takes": "40 A"}]
})");
  const Wiring wiring = make_wiring(network);
  ASSERT_EQ(wiring.items.size(), 2U);
  const Item& string = wiring.items[0];
  EXPECT_THAT(string.elements, ElementsAre(*network.element("upper"), *network.element("lower")));
  ASSERT_EQ(string.links.size(), 1U);
  ASSERT_EQ(string.links[0].size(), 1U);
  EXPECT_TRUE(string.links[0][0].reversed) << "from the upper battery down, against the way it was written";
  EXPECT_THAT(lanes(network, wiring), ElementsAre("l-: back :n", "p: feed :l+"));
}

TEST(Wiring, AConverterIsOneItemWithPinsOnBothSides) {
  const Network network = network::built(boat(
      R"(, "converters": [{"id": "small", "plus_in": "bus", "minus_in": "l-", "plus_out": "c+",
            "minus_out": "c-", "setpoint": 5, "limit": 2}], "stubs": ["c+", "c-"])"));
  const Wiring wiring = make_wiring(network);
  const auto converter = std::find_if(wiring.items.begin(), wiring.items.end(),
                                      [](const Item& item) { return item.kind == ItemKind::converter; });
  ASSERT_NE(converter, wiring.items.end());
  EXPECT_THAT(converter->elements, ElementsAre(*network.element("small/in"), *network.element("small/out")));
  const int number = static_cast<int>(converter - wiring.items.begin());
  int in = 0, out = 0;
  for (const Bar& bar : wiring.bars)
    if (bar.item == number) ++(bar.outlet ? out : in);
  EXPECT_EQ(in, 2);
  EXPECT_EQ(out, 2);
}

TEST(Wiring, ARingGetsABarOnItsWay) {
  const Network network =
      network::built(boat(R"(, "joints": [{"id": "j1", "from": "r+", "to": "x", "kind": "stud"},
                           {"id": "j2", "from": "x", "to": "y", "kind": "stud"},
                           {"id": "j3", "from": "y", "to": "r+", "kind": "stud"}])"));
  const Wiring wiring = make_wiring(network);
  EXPECT_GE(wiring.lanes.size(), 4U) << "feed and return, and the ring in two or more";
  for (const Lane& lane : wiring.lanes) EXPECT_NE(lane.left, lane.right) << "no lane comes back to its bar";
}

TEST(Wiring, TurnedTwiceIsAsItWas) {
  std::vector<Piece> pieces{{true, {3, 4, 5}, false}, {false, {6}, true}};
  turn(pieces);
  EXPECT_THAT(pieces[0].elements, ElementsAre(6));
  EXPECT_FALSE(pieces[0].reversed);
  EXPECT_THAT(pieces[1].elements, ElementsAre(5, 4, 3));
  EXPECT_TRUE(pieces[1].reversed);
  turn(pieces);
  EXPECT_THAT(pieces[0].elements, ElementsAre(3, 4, 5));
}

/// Elements by how often they stand in lanes, links, ties and items.
std::multiset<int> drawn(const Wiring& wiring) {
  std::multiset<int> all;
  const auto add = [&](const std::vector<Piece>& pieces) {
    for (const Piece& piece : pieces) all.insert(piece.elements.begin(), piece.elements.end());
  };
  for (const Lane& lane : wiring.lanes) add(lane.pieces);
  for (const Tie& tie : wiring.ties) add(tie.pieces);
  for (const Item& item : wiring.items) {
    all.insert(item.elements.begin(), item.elements.end());
    for (const auto& link : item.links) add(link);
  }
  return all;
}

TEST(Wiring, OfAnySystemHoldsEveryElementOnce) {
  for (int seed = 0; seed < test::random_cases(60); ++seed) {
    SCOPED_TRACE(seed);
    const netlist::System system =
        test::random_system(static_cast<unsigned>(seed), {10 + seed, seed % 2 == 0, seed % 3 == 0});
    const Network network = network::build(system, system.cases.front());
    const std::multiset<int> all = drawn(make_wiring(network));
    for (int e = 0; e < static_cast<int>(network.elements.size()); ++e)
      EXPECT_EQ(all.count(e), 1U) << network.elements[static_cast<std::size_t>(e)].id;
    EXPECT_EQ(all.size(), network.elements.size());
  }
}

/// Pieces of a lane follow each other from its left bar's point to its right bar's.
TEST(Wiring, OfAnySystemLeadsWithoutAGap) {
  for (int seed = 0; seed < test::random_cases(60); ++seed) {
    SCOPED_TRACE(seed);
    const netlist::System system =
        test::random_system(static_cast<unsigned>(100 + seed), {10 + seed, seed % 2 == 0, seed % 3 == 0});
    const Network network = network::build(system, system.cases.front());
    const Wiring wiring = make_wiring(network);
    for (const Lane& lane : wiring.lanes) {
      int here = wiring.bars[static_cast<std::size_t>(lane.left)].point;
      for (const Piece& piece : lane.pieces)
        for (const int e : piece.elements) {
          const network::Element& element = network.elements[static_cast<std::size_t>(e)];
          EXPECT_EQ(piece.reversed ? element.to : element.from, here) << element.id;
          here = piece.reversed ? element.from : element.to;
        }
      EXPECT_EQ(here, wiring.bars[static_cast<std::size_t>(lane.right)].point);
    }
  }
}

}  // namespace
}  // namespace ohmtrail::render
