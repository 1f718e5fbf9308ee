#include "render/scene.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "render/canvas.hpp"
#include "render/geometry.hpp"

namespace ohmtrail::render {
namespace {

TEST(Box, OverlapNeedsMoreThanAnEdge) {
  const Box a{0, 0, 10, 10};
  EXPECT_TRUE(a.overlaps({9, 9, 5, 5}));
  EXPECT_FALSE(a.overlaps({10, 0, 5, 5}));
  EXPECT_FALSE(a.overlaps({0, 10, 5, 5}));
  EXPECT_TRUE(a.overlaps({2, 2, 1, 1})) << "inside counts";
}

TEST(Box, HoldsWhatLiesInsideItsEdges) {
  const Box a{0, 0, 10, 10};
  EXPECT_TRUE(a.holds({0, 0, 10, 10}));
  EXPECT_TRUE(a.holds({2, 3, 4, 5}));
  EXPECT_FALSE(a.holds({-1, 0, 5, 5}));
  EXPECT_FALSE(a.holds({6, 0, 5, 5}));
}

TEST(Box, GrownAndJoined) {
  const Box grown = Box{10, 10, 4, 4}.grown(2);
  EXPECT_EQ(grown.x, 8);
  EXPECT_EQ(grown.right(), 16);
  const Box both = joined({0, 5, 1, 1}, {10, 0, 2, 2});
  EXPECT_EQ(both.x, 0);
  EXPECT_EQ(both.y, 0);
  EXPECT_EQ(both.right(), 12);
  EXPECT_EQ(both.bottom(), 6);
}

TEST(SceneBounds, ALineTakesHalfItsPenMore) {
  const Shape line{Kind::conductor, -1, Line{{{0, 0}, {10, 0}}, {palette::ink, 4, false}, {}, false}};
  const Box box = bounds(line);
  EXPECT_EQ(box.y, -2);
  EXPECT_EQ(box.bottom(), 2);
  EXPECT_EQ(box.x, -2);
}

TEST(SceneBounds, ACircleTakesItsRimToo) {
  const Shape circle{Kind::disc, -1, Circle{{5, 5}, 3, {palette::ink, 2, false}, {}}};
  EXPECT_EQ(bounds(circle).x, 1);
  EXPECT_EQ(bounds(circle).right(), 9);
}

TEST(Place, MovesScalesAndRenumbersGroups) {
  Scene part{10, 10, "part", {}, {}};
  const int group = add_group(part, "a", "title of a");
  draw_line(part, Kind::conductor, group, {{0, 0}, {10, 0}}, {palette::ink, 2, false});
  draw_line(part, Kind::furniture, -1, {{0, 5}, {10, 5}}, {palette::ink, 2, false});
  Scene scene{100, 100, "whole", {{"first", "first"}}, {}};
  place(scene, part, {20, 30}, 2);
  ASSERT_EQ(scene.groups.size(), 2u);
  EXPECT_EQ(scene.shapes[0].group, 1);
  EXPECT_EQ(scene.shapes[1].group, -1);
  const Line& line = std::get<Line>(scene.shapes[0].what);
  EXPECT_EQ(line.points[1], (Point{40, 30}));
  EXPECT_EQ(line.stroke.width, 4);
}

TEST(Place, ScalesLetteringWithItsRoom) {
  Scene part{10, 10, "part", {}, {}};
  const Box before = write(part, Kind::label, -1, {5, 5}, "volts", {8, false, palette::ink});
  Scene scene{100, 100, "whole", {}, {}};
  place(scene, part, {0, 0}, 0.5);
  const Text& text = std::get<Text>(scene.shapes[0].what);
  EXPECT_EQ(text.size, 4);
  EXPECT_NEAR(text.bounds.width, before.width / 2, 1e-9);
}

TEST(Write, AlignsAroundItsPoint) {
  Scene scene{100, 100, "s", {}, {}};
  const Lettering style{8, false, palette::ink};
  const Box left = write(scene, Kind::label, -1, {50, 10}, "abc", style, Align::left),
            middle = write(scene, Kind::label, -1, {50, 10}, "abc", style, Align::middle),
            right = write(scene, Kind::label, -1, {50, 10}, "abc", style, Align::right);
  EXPECT_EQ(left.x, 50);
  EXPECT_NEAR(middle.middle().x, 50, 1e-9);
  EXPECT_NEAR(right.right(), 50, 1e-9);
  EXPECT_NEAR(left.middle().y, 10, 1e-9);
}

TEST(Write, NothingLeavesNothing) {
  Scene scene{100, 100, "s", {}, {}};
  EXPECT_EQ(write(scene, Kind::label, -1, {50, 10}, "", {8, false, palette::ink}).width, 0);
  EXPECT_TRUE(scene.shapes.empty());
}

TEST(Disc, ItsRingIsClosedAsFarAsItIsLikely) {
  const auto ring = [](double likelihood) {
    Scene scene{50, 50, "s", {}, {}};
    draw_disc(scene, -1, {25, 25}, 5, 3, likelihood);
    double length = 0;
    for (const Shape& shape : scene.shapes)
      if (const Line* line = std::get_if<Line>(&shape.what))
        for (std::size_t k = 1; k < line->points.size(); ++k)
          length += std::hypot(line->points[k].x - line->points[k - 1].x,
                               line->points[k].y - line->points[k - 1].y);
    return length;
  };
  const double whole = 2 * std::numbers::pi * (5 - 0.9);
  EXPECT_NEAR(ring(1), whole, 0.02 * whole);
  EXPECT_NEAR(ring(0.5), whole / 2, 0.02 * whole);
  EXPECT_NEAR(ring(0), 0, 1e-9);
}

TEST(Disc, WithoutALikelihoodThereIsNoRing) {
  Scene scene{50, 50, "s", {}, {}};
  draw_disc(scene, -1, {25, 25}, 5, 12, std::nullopt);
  ASSERT_EQ(scene.shapes.size(), 2u);
  EXPECT_EQ(std::get<Text>(scene.shapes[1].what).text, "12");
}

}  // namespace
}  // namespace ohmtrail::render
