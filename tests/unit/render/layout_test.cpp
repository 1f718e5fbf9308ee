#include <gtest/gtest.h>

#include <cmath>

#include "render/arrange.hpp"
#include "render/flow.hpp"
#include "support/random_cases.hpp"
#include "support/random_system.hpp"

// Where bars, lanes and items stand, before anything is drawn.
namespace ohmtrail::render {
namespace {

std::size_t at(int index) {
  return static_cast<std::size_t>(index);
}

/// A supply and a load, each with its upper pin's bar, joined over `between` free bars in a row.
Wiring row_of(int between) {
  Wiring wiring;
  wiring.items = {Item{ItemKind::supply, {0}, {}}, Item{ItemKind::load, {1}, {}}};
  const int bars = between + 2;
  for (int b = 0; b < bars; ++b) {
    wiring.bars.emplace_back();
    wiring.bars.back().point = b;
    if (b > 0) {
      wiring.bars[at(b - 1)].lanes.push_back(b - 1);
      wiring.bars[at(b)].lanes.push_back(b - 1);
      wiring.lanes.push_back({b - 1, b, {}});
    }
  }
  wiring.bars.front().item = 0;
  wiring.bars.back().item = 1;
  return wiring;
}

Sizes plain_sizes(const Wiring& wiring) {
  Sizes sizes;
  sizes.lanes.resize(wiring.lanes.size());
  sizes.items.resize(wiring.items.size());
  sizes.bars.resize(wiring.bars.size());
  return sizes;
}

TEST(Flow, PotentialsFallEvenlyAlongARow) {
  const auto potential = potentials(row_of(3));
  for (int b = 0; b < 5; ++b) EXPECT_NEAR(potential[at(b)], 1 - b / 4.0, 1e-6) << b;
}

TEST(Flow, WhereLanesMeetAreTheMeanOfTheNeighbours) {
  Wiring wiring = row_of(2);
  // one more load on the first free bar: (1 + 0 + v2) / 3 and v2 = v1 / 2
  wiring.items.push_back({ItemKind::load, {2}, {}});
  wiring.bars.emplace_back();
  wiring.bars.back().item = 2;
  wiring.bars.back().lanes = {3};
  wiring.bars[1].lanes.push_back(3);
  wiring.lanes.push_back({1, 4, {}});
  const auto potential = potentials(wiring);
  EXPECT_NEAR(potential[1], 0.4, 1e-6);
  EXPECT_NEAR(potential[2], 0.2, 1e-6);
}

TEST(Flow, GoesIntoAConverterAndOnFromIt) {
  Wiring wiring = row_of(2);
  wiring.items.push_back({ItemKind::converter, {2, 3}, {}});
  wiring.bars[1].item = wiring.bars[2].item = 2;
  wiring.bars[2].outlet = true;
  const auto potential = potentials(wiring);
  EXPECT_EQ(potential[1], 0);
  EXPECT_EQ(potential[2], 1);
}

TEST(Flow, WhatHangsOnNothingStandsInTheMiddle) {
  Wiring wiring = row_of(1);
  wiring.bars.emplace_back();
  EXPECT_EQ(potentials(wiring).back(), 0.5);
}

TEST(Flow, OrdersBarsFromSupplyToLoad) {
  const auto place = flow_order(row_of(4));
  for (int b = 0; b < 6; ++b) EXPECT_EQ(place[at(b)], b);
}

TEST(Arrange, ARowKeepsTheLengthsThatItsLanesNeed) {
  Wiring wiring = row_of(2);
  Sizes sizes = plain_sizes(wiring);
  sizes.lanes[0].length = 50;
  sizes.lanes[1].length = 120;
  const Arrangement arranged = arrange(wiring, sizes);
  for (std::size_t l = 0; l < wiring.lanes.size(); ++l) {
    const Lane& lane = wiring.lanes[l];
    EXPECT_GE(arranged.bar_x[at(lane.right)] - arranged.bar_x[at(lane.left)], sizes.lanes[l].length - 1e-9);
  }
  EXPECT_EQ(arranged.crossings, 0);
}

TEST(Arrange, ALaneGivenBackwardsIsTurned) {
  Wiring wiring = row_of(2);
  std::swap(wiring.lanes[1].left, wiring.lanes[1].right);
  wiring.lanes[1].pieces = {{true, {7, 8, 9}, false}};
  static_cast<void>(arrange(wiring, plain_sizes(wiring)));
  EXPECT_EQ(wiring.lanes[1].left, 1);
  EXPECT_TRUE(wiring.lanes[1].pieces[0].reversed);
}

TEST(Arrange, LanesLevelThroughABarThatNothingElseMeets) {
  Wiring wiring = row_of(3);
  const Arrangement arranged = arrange(wiring, plain_sizes(wiring));
  EXPECT_EQ(arranged.lane_y[0], arranged.lane_y[1]);
  EXPECT_EQ(arranged.lane_y[1], arranged.lane_y[2]);
  EXPECT_LT(arranged.lane_y[0], 0) << "above the axis";
}

/// Wiring and sizes of a random system; every name takes the same room.
struct Laid {
  Wiring wiring;
  Sizes sizes;
  Arrangement arranged;
};

Laid laid(int seed) {
  const netlist::System system =
      test::random_system(static_cast<unsigned>(seed), {10 + seed, seed % 2 == 0, seed % 3 == 0});
  Laid made{make_wiring(network::build(system, system.cases.front())), {}, {}};
  made.sizes = plain_sizes(made.wiring);
  for (std::size_t l = 0; l < made.sizes.lanes.size(); ++l)
    made.sizes.lanes[l].length = 20 + 30.0 * static_cast<double>(made.wiring.lanes[l].pieces.size());
  for (std::size_t b = 0; b < made.sizes.bars.size(); ++b)
    if (made.wiring.bars[b].item < 0) made.sizes.bars[b] = {40, 9};
  for (std::size_t i = 0; i < made.sizes.items.size(); ++i)
    if (made.wiring.items[i].kind == ItemKind::converter) made.sizes.items[i].outlet = 10;
  made.arranged = arrange(made.wiring, made.sizes);
  return made;
}

TEST(Arrange, OfAnySystemEveryLaneRunsRightAndIsLongEnough) {
  for (int seed = 0; seed < test::random_cases(30); ++seed) {
    SCOPED_TRACE(seed);
    const Laid made = laid(seed);
    for (std::size_t l = 0; l < made.wiring.lanes.size(); ++l) {
      const Lane& lane = made.wiring.lanes[l];
      if (made.wiring.bars[at(lane.left)].item >= 0 && made.wiring.bars[at(lane.right)].item >= 0) continue;
      EXPECT_GE(made.arranged.bar_x[at(lane.right)] - made.arranged.bar_x[at(lane.left)],
                made.sizes.lanes[l].length - 1e-6);
    }
  }
}

TEST(Arrange, OfAnySystemNoTwoLanesTouch) {
  for (int seed = 0; seed < test::random_cases(30); ++seed) {
    SCOPED_TRACE(seed);
    const Laid made = laid(seed);
    const auto reach = [&](std::size_t l) {
      return Span{made.arranged.bar_x[at(made.wiring.lanes[l].left)],
                  made.arranged.bar_x[at(made.wiring.lanes[l].right)]};
    };
    for (std::size_t l = 0; l < made.wiring.lanes.size(); ++l)
      for (std::size_t k = 0; k < l; ++k) {
        if (!reach(l).overlaps(reach(k))) continue;
        const double distance = std::abs(made.arranged.lane_y[l] - made.arranged.lane_y[k]);
        EXPECT_GE(distance, made.sizes.lanes[l].above + made.sizes.lanes[k].below) << l << ", " << k;
      }
  }
}

TEST(Arrange, OfAnySystemItemsStandApartAndLanesClearOfThem) {
  for (int seed = 0; seed < test::random_cases(30); ++seed) {
    SCOPED_TRACE(seed);
    const Laid made = laid(seed);
    const auto& x = made.arranged.item_x;
    const auto room = [&](std::size_t i) {
      return Span{x[i] - made.sizes.items[i].left, x[i] + made.sizes.items[i].right};
    };
    for (std::size_t i = 0; i < x.size(); ++i) {
      for (std::size_t k = 0; k < i; ++k)
        EXPECT_FALSE(Span({room(i).low + 1e-6, room(i).high - 1e-6}).overlaps(room(k))) << i << ", " << k;
      for (std::size_t l = 0; l < made.wiring.lanes.size(); ++l) {
        const Span lane{made.arranged.bar_x[at(made.wiring.lanes[l].left)],
                        made.arranged.bar_x[at(made.wiring.lanes[l].right)]};
        if (!lane.overlaps(room(i))) continue;
        EXPECT_TRUE(made.arranged.lane_y[l] < -made.sizes.items[i].up ||
                    made.arranged.lane_y[l] > made.sizes.items[i].down)
            << i << ", " << l;
      }
    }
  }
}

TEST(Arrange, IsTheSameEveryTime) {
  for (const int seed : {6, 12}) {
    const Laid once = laid(seed), again = laid(seed);
    EXPECT_EQ(once.arranged.bar_x, again.arranged.bar_x);
    EXPECT_EQ(once.arranged.lane_y, again.arranged.lane_y);
  }
}

}  // namespace
}  // namespace ohmtrail::render
