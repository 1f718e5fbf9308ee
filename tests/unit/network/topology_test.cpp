// Islands, bridges and rings against their definitions: taking every element out in turn and counting again.
#include "ohmtrail/network/topology.hpp"

#include <gtest/gtest.h>

#include <numeric>

#include "support/property.hpp"

namespace ohmtrail::network {
namespace {

Element joint(int from, int to, bool active = true) {
  Element made{};
  made.role = Role::joint;
  made.from = from;
  made.to = to;
  made.active = active;
  return made;
}

Network of(int points, std::vector<Element> elements) {
  Network made;
  for (int k = 0; k < points; ++k) made.points.push_back(std::to_string(k));
  made.elements = std::move(elements);
  return made;
}

/// By joining labels until nothing changes.
std::vector<int> islands_by_hand(const Network& network) {
  std::vector<int> label(network.points.size());
  std::iota(label.begin(), label.end(), 0);
  for (bool changed = true; changed;) {
    changed = false;
    for (const Element& each : network.elements) {
      if (!each.active) continue;
      int& a = label[static_cast<std::size_t>(each.from)];
      int& b = label[static_cast<std::size_t>(each.to)];
      changed = changed || a != b;
      a = b = std::min(a, b);
    }
  }
  return label;
}

int count(const std::vector<int>& label) {
  int islands = 0;
  for (std::size_t k = 0; k < label.size(); ++k) islands += label[k] == static_cast<int>(k);
  return islands;
}

Network any_network() {
  const int points = *rc::gen::inRange(1, 12);
  std::vector<Element> elements;
  const int count = *rc::gen::inRange(0, 18);
  for (int k = 0; k < count && points > 1; ++k) {
    const int from = *rc::gen::inRange(0, points);
    const int to = *rc::gen::inRange(0, points - 1);
    elements.push_back(joint(from, to >= from ? to + 1 : to, *rc::gen::inRange(0, 5) != 0));
  }
  return of(points, std::move(elements));
}

TEST(Topology, IslandsAreWhatHangsTogether) {
  test::holds([] {
    const Network network = any_network();
    const Topology found = topology_of(network);
    const auto expected = islands_by_hand(network);
    RC_ASSERT(found.islands == count(expected));
    for (std::size_t a = 0; a < expected.size(); ++a) {
      for (std::size_t b = 0; b < expected.size(); ++b) {
        RC_ASSERT((found.island[a] == found.island[b]) == (expected[a] == expected[b]));
      }
    }
  });
}

TEST(Topology, ABridgeIsWhatTearsItsIslandInTwo) {
  test::holds([] {
    Network network = any_network();
    const Topology found = topology_of(network);
    for (std::size_t k = 0; k < network.elements.size(); ++k) {
      if (!network.elements[k].active) {
        RC_ASSERT(!found.bridge[k]);
        continue;
      }
      network.elements[k].active = false;
      RC_ASSERT(found.bridge[k] == (count(islands_by_hand(network)) > found.islands));
      network.elements[k].active = true;
    }
  });
}

/// Euler: independent loops = elements − points + islands.
TEST(Topology, RingsByEuler) {
  test::holds([] {
    const Network network = any_network();
    int active = 0;
    for (const Element& each : network.elements) active += each.active;
    const Topology found = topology_of(network);
    RC_ASSERT(found.rings == active - static_cast<int>(network.points.size()) + found.islands);
  });
}

TEST(Topology, IslandsAreNumberedAsTheFileMeetsThem) {
  const Topology found = topology_of(of(5, {joint(3, 4), joint(0, 2)}));
  EXPECT_EQ(found.island, (std::vector<int>{0, 1, 0, 2, 2}));
  EXPECT_EQ(found.islands, 3);
}

TEST(Topology, TwoSideBySideAreARingAndNoBridge) {
  const Topology found = topology_of(of(2, {joint(0, 1), joint(1, 0)}));
  EXPECT_EQ(found.rings, 1);
  EXPECT_FALSE(found.bridge[0]);
  EXPECT_FALSE(found.bridge[1]);
}

TEST(Topology, NothingAtAll) {
  const Topology found = topology_of(Network{});
  EXPECT_EQ(found.islands, 0);
  EXPECT_EQ(found.rings, 0);
}

}  // namespace
}  // namespace ohmtrail::network
