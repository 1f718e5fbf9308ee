#include "render/clip.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "support/seeded_random.hpp"

namespace ohmtrail::render {
namespace {

constexpr Box window{10, 10, 100, 50};

Shape line(std::vector<Point> points, double width = 0) {
  return {Kind::conductor, 3, Line{std::move(points), {palette::ink, width, false}, std::nullopt, false}};
}

std::vector<Point> points_of(const Shape& shape) {
  return std::get<Line>(shape.what).points;
}

TEST(Clip, LinesInsideStayAsTheyAre) {
  const Shape inside = line({{20, 20}, {30, 20}, {30, 40}});
  const auto kept = clipped(inside, window);
  ASSERT_EQ(kept.size(), 1u);
  EXPECT_EQ(points_of(kept[0]), points_of(inside));
  EXPECT_EQ(kept[0].kind, Kind::conductor);
  EXPECT_EQ(kept[0].group, 3);
}

TEST(Clip, LinesAreCutWhereTheyLeave) {
  const auto kept = clipped(line({{0, 30}, {200, 30}}), window);
  ASSERT_EQ(kept.size(), 1u);
  ASSERT_EQ(points_of(kept[0]).size(), 2u);
  EXPECT_NEAR(points_of(kept[0])[0].x, 10, 1e-9);
  EXPECT_NEAR(points_of(kept[0])[1].x, 110, 1e-9);
}

TEST(Clip, ALineThatComesBackIsTwo) {
  const auto kept = clipped(line({{20, 20}, {20, 100}, {40, 100}, {40, 20}}), window);
  ASSERT_EQ(kept.size(), 2u);
  EXPECT_EQ(points_of(kept[0]), (std::vector<Point>{{20, 20}, {20, 60}}));
  EXPECT_EQ(points_of(kept[1]), (std::vector<Point>{{40, 60}, {40, 20}}));
}

TEST(Clip, WhatIsOutsideGoes) {
  EXPECT_TRUE(clipped(line({{0, 0}, {5, 100}}), window).empty());
  EXPECT_TRUE(clipped(line({{0, 0}, {200, 0}}), window).empty());
  EXPECT_TRUE(clipped(line({}), window).empty());
}

TEST(Clip, ThePenStaysInsideToo) {
  const auto kept = clipped(line({{0, 30}, {200, 30}}, 4), window);
  ASSERT_EQ(kept.size(), 1u);
  EXPECT_TRUE(window.holds(bounds(kept[0])));
}

TEST(Clip, PolygonsAreCutToPolygons) {
  const Shape square{
      Kind::symbol, -1,
      Line{{{0, 0}, {40, 0}, {40, 40}, {0, 40}}, {palette::ink, 0, false}, palette::hair, true}};
  const auto kept = clipped(square, window);
  ASSERT_EQ(kept.size(), 1u);
  const Box left = bounds(kept[0]);
  EXPECT_DOUBLE_EQ(left.x, 10);
  EXPECT_DOUBLE_EQ(left.y, 10);
  EXPECT_DOUBLE_EQ(left.right(), 40);
  EXPECT_DOUBLE_EQ(left.bottom(), 40);
  EXPECT_TRUE(std::get<Line>(kept[0].what).fill);
}

TEST(Clip, TextAndCirclesAreKeptWholeOrNot) {
  const Shape in{Kind::disc, -1, Circle{{50, 30}, 5, {}, std::nullopt}},
      across{Kind::disc, -1, Circle{{10, 30}, 5, {}, std::nullopt}};
  EXPECT_EQ(clipped(in, window).size(), 1u);
  EXPECT_TRUE(clipped(across, window).empty());
  const Shape word{Kind::label, -1, Text{{100, 20, 20, 8}, 26, "wide", 7, false, palette::ink}};
  EXPECT_TRUE(clipped(word, window).empty());
}

double length(const std::vector<Point>& points) {
  double sum = 0;
  for (std::size_t k = 1; k < points.size(); ++k)
    sum += std::hypot(points[k].x - points[k - 1].x, points[k].y - points[k - 1].y);
  return sum;
}

TEST(Clip, FourWindowsShareALineBetweenThem) {
  test::SeededRandom random(4);
  for (int k = 0; k < 200; ++k) {
    std::vector<Point> points;
    for (int n = random.integer(2, 6); n > 0; --n)
      points.push_back({random.uniform(0, 100), random.uniform(0, 100)});
    double sum = 0;
    for (const double x : {0.0, 50.0})
      for (const double y : {0.0, 50.0})
        for (const Shape& kept : clipped(line(points), {x, y, 50, 50})) {
          EXPECT_TRUE((Box{x, y, 50, 50}.grown(1e-9).holds(bounds(kept))));
          sum += length(points_of(kept));
        }
    EXPECT_NEAR(sum, length(points), 1e-6);
  }
}

}  // namespace
}  // namespace ohmtrail::render
