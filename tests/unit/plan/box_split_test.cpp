#include "plan/box_split.hpp"

#include <gtest/gtest.h>

#include <random>

#include "support/random_cases.hpp"

namespace ohmtrail::plan {
namespace {

bool holds(const Box& box, const std::vector<std::size_t>& design) {
  for (std::size_t k = 0; k < box.size(); ++k)
    if (!box[k][design[k]]) return false;
  return true;
}

/// Visits every design of three runs with four candidates.
template <class Visit>
void each_design(Visit visit) {
  for (std::size_t a = 0; a < 4; ++a)
    for (std::size_t b = 0; b < 4; ++b)
      for (std::size_t c = 0; c < 4; ++c) visit(std::vector<std::size_t>{a, b, c});
}

Box random_box(std::mt19937& engine) {
  Box box(3, std::vector<bool>(4, false));
  for (auto& allowed : box)
    for (std::size_t c = 0; c < 4; ++c) allowed[c] = engine() % 3 != 0;
  return box;
}

TEST(BoxSplit, WhatIsLeftOutsideIsEveryDesignButTheRefused) {
  std::mt19937 engine(2);
  for (int turn = 0; turn < test::random_cases(100); ++turn) {
    const BoxNode node{1, random_box(engine)};
    const Box refused = random_box(engine);
    std::vector<std::vector<double>> least(3, std::vector<double>(4));
    for (auto& run : least)
      for (double& one : run) one = static_cast<double>(engine() % 100);
    const auto parts = outside_of(node, refused, least, 1e9);
    each_design([&](const auto& design) {
      int in = 0;
      for (const BoxNode& part : parts) in += holds(part.box, design) ? 1 : 0;
      const bool wanted = holds(node.box, design) && !holds(refused, design);
      EXPECT_EQ(in, wanted ? 1 : 0);
    });
  }
}

TEST(BoxSplit, WhatIsTooDearIsLeftOut) {
  const BoxNode node{1, Box(2, {true, true})};
  const Box refused{{true, false}, {true, false}};
  const auto parts = outside_of(node, refused, {{1, 5}, {1, 3}}, 4);
  ASSERT_EQ(parts.size(), 1U);
  EXPECT_EQ(parts[0].bound, 3);
  EXPECT_FALSE(parts[0].box[1][0]);
}

TEST(BoxSplit, HalvesShareNothingAndLoseNothing) {
  std::mt19937 engine(4);
  for (int turn = 0; turn < test::random_cases(100); ++turn) {
    const BoxNode node{1, random_box(engine)};
    for (int candidate = 0; candidate < 4; ++candidate) {
      const auto halves = split_at(node, 1, candidate);
      if (halves.empty()) continue;
      ASSERT_EQ(halves.size(), 2U);
      each_design([&](const auto& design) {
        const int in = (holds(halves[0].box, design) ? 1 : 0) + (holds(halves[1].box, design) ? 1 : 0);
        EXPECT_EQ(in, holds(node.box, design) ? 1 : 0);
      });
      for (const BoxNode& half : halves) EXPECT_NE(half.box, node.box);
    }
  }
}

TEST(BoxSplit, APointIsNotSplit) {
  const BoxNode node{1, {{false, true}, {true, true}}};
  EXPECT_TRUE(split_at(node, 0, 1).empty());
  EXPECT_FALSE(is_point(node.box));
  EXPECT_TRUE(is_point(split_at(node, 1, 0)[0].box));
}

TEST(BoxSplit, RunsOnThePathComeLast) {
  RadialCase in_case;
  in_case.arms = {{2, {}, {}, {0}}, {0, {}, {}, {0}}, {-1, {}, {}, {0}}};
  in_case.loads.resize(1);
  in_case.loads[0].path = {0, 1, 2};
  Bounds broken;
  broken.broken_load = 0;
  EXPECT_EQ(off_path_first(in_case, broken, 4), (std::vector<int>{1, 3, 0, 2}));
}

}  // namespace
}  // namespace ohmtrail::plan
