#include "solve/elimination_order.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <numeric>
#include <random>
#include <set>

namespace ohmtrail::solve {
namespace {

using Edges = std::vector<std::pair<int, int>>;

bool is_permutation(std::vector<int> place) {
  std::sort(place.begin(), place.end());
  std::vector<int> counted(place.size());
  std::iota(counted.begin(), counted.end(), 0);
  return place == counted;
}

/// Entries that elimination in this order adds, by elimination itself.
std::size_t fill(int vertices, const Edges& edges, const std::vector<int>& place) {
  std::vector<std::set<int>> later(static_cast<std::size_t>(vertices));
  std::size_t before = 0, after = 0;
  for (auto [a, b] : edges) {
    if (a < 0 || b < 0 || a == b) continue;
    a = place[static_cast<std::size_t>(a)];
    b = place[static_cast<std::size_t>(b)];
    before += later[static_cast<std::size_t>(std::min(a, b))].insert(std::max(a, b)).second ? 1 : 0;
  }
  for (auto& beyond : later) {
    after += beyond.size();
    if (beyond.empty()) continue;
    auto& first = later[static_cast<std::size_t>(*beyond.begin())];
    first.insert(std::next(beyond.begin()), beyond.end());
  }
  return after - before;
}

Edges random_tree(int vertices, std::mt19937& random) {
  Edges edges;
  for (int v = 1; v < vertices; ++v)
    edges.emplace_back(static_cast<int>(random() % static_cast<unsigned>(v)), v);
  std::shuffle(edges.begin(), edges.end(), random);
  return edges;
}

TEST(EliminationOrder, NoVertices) {
  EXPECT_TRUE(elimination_order(0, {}).place.empty());
}

TEST(EliminationOrder, WithoutEdgesEveryVertexHasItsPlace) {
  EXPECT_TRUE(is_permutation(elimination_order(5, {}).place));
}

TEST(EliminationOrder, TreesMakeNoFill) {
  std::mt19937 random(3);
  for (const int vertices : {2, 3, 10, 200}) {
    const Edges edges = random_tree(vertices, random);
    const auto place = elimination_order(vertices, edges).place;
    EXPECT_TRUE(is_permutation(place));
    EXPECT_EQ(fill(vertices, edges, place), 0U) << vertices;
  }
}

TEST(EliminationOrder, EveryVertexOfATreeGoesBeforeAllButOneOfItsNeighbours) {
  std::mt19937 random(5);
  const Edges edges = random_tree(100, random);
  const auto place = elimination_order(100, edges).place;
  std::vector<int> later(100, 0);
  for (const auto& [a, b] : edges) {
    const bool a_first = place[static_cast<std::size_t>(a)] < place[static_cast<std::size_t>(b)];
    ++later[static_cast<std::size_t>(a_first ? a : b)];
  }
  EXPECT_LE(*std::max_element(later.begin(), later.end()), 1);
}

TEST(EliminationOrder, WhatHangsOnARingGoesBeforeTheRing) {
  const Edges edges{{0, 1}, {1, 2}, {2, 0}, {2, 3}, {3, 4}};
  const auto place = elimination_order(5, edges).place;
  EXPECT_TRUE(is_permutation(place));
  EXPECT_LT(place[4], place[3]);
  for (const std::size_t v : {0U, 1U, 2U}) EXPECT_LT(place[3], place[v]);
}

TEST(EliminationOrder, ARingFillsAsLittleAsItCan) {
  Edges ring;
  for (int v = 0; v < 12; ++v) ring.emplace_back(v, (v + 1) % 12);
  EXPECT_EQ(fill(12, ring, elimination_order(12, ring).place), 9U);  // every ring of n: n − 3
}

TEST(EliminationOrder, EdgesToNoVertexToItselfAndTwiceDoNotMatter) {
  const Edges plain{{0, 1}, {1, 2}};
  const Edges odd{{0, 1}, {-1, 2}, {1, 1}, {1, 2}, {0, -1}};
  EXPECT_EQ(elimination_order(3, plain).place, elimination_order(3, odd).place);
  const Edges twice{{0, 1}, {1, 0}, {1, 2}};
  const auto place = elimination_order(3, twice).place;
  EXPECT_TRUE(is_permutation(place));
  EXPECT_EQ(fill(3, twice, place), 0U);
}

TEST(EliminationOrder, SameEdgesSameOrder) {
  std::mt19937 random(7);
  Edges edges = random_tree(300, random);
  for (int k = 0; k < 20; ++k)
    edges.emplace_back(static_cast<int>(random() % 300U), static_cast<int>(random() % 300U));
  EXPECT_EQ(elimination_order(300, edges).place, elimination_order(300, edges).place);
  EXPECT_TRUE(is_permutation(elimination_order(300, edges).place));
}

}  // namespace
}  // namespace ohmtrail::solve
