#include "render/staircase.hpp"

#include <gtest/gtest.h>

#include "render/split_bar.hpp"
#include "render/text.hpp"
#include "support/render_shipped.hpp"
#include "support/report_input.hpp"

namespace ohmtrail::render {
namespace {

/// The bars of the losses as found, in the order of their steps.
std::vector<Box> bars(const Scene& scene) {
  std::vector<Box> found;
  for (const Shape& shape : scene.shapes)
    if (shape.kind == Kind::symbol)
      if (const Box box = bounds(shape); box.height > 4) found.push_back(box);
  return found;
}

TEST(Staircase, StepsAreToScaleAndAddUp) {
  for (const char* name : test::shipped_netlists) {
    const ReportInput input = test::shipped_report(name);
    ASSERT_TRUE(input.staircase) << name;
    const std::vector<Box> all = bars(staircase_picture(input.system, *input.staircase));
    ASSERT_GE(all.size(), 3u);
    double lost = 0;
    double first = 0;  // a charger at its set point loses nothing and has no stair
    for (const diagnose::Step& step : input.staircase->steps) {
      if (step.role == network::Role::load) continue;
      lost += std::abs(step.lost);
      if (first == 0) first = std::abs(step.lost);
    }
    // The whole loss gives the scale; the first step, mostly the battery's own, must follow it.
    ASSERT_GT(lost, 0);
    const double scale = (all.back().right() - all.front().x) / lost;
    EXPECT_NEAR(all.front().width, first * scale, 0.7) << name;
    double widths = 0;
    for (const Box& bar : all) widths += bar.width;
    EXPECT_NEAR(widths, lost * scale, 0.7 * static_cast<double>(all.size())) << name;
    for (std::size_t k = 1; k < all.size(); ++k) {
      EXPECT_NEAR(all[k].x, all[k - 1].right(), 0.65) << name << " step " << k;
      EXPECT_GT(all[k].y, all[k - 1].y);
    }
  }
}

TEST(Staircase, StaysOnItsPageAndKeepsLettersApart) {
  for (const char* name : test::shipped_netlists) {
    const ReportInput input = test::shipped_report(name);
    const Scene scene = staircase_picture(input.system, *input.staircase);
    std::vector<Box> labels;
    for (const Shape& shape : scene.shapes) {
      EXPECT_TRUE((Box{0, 0, scene.width, scene.height}.holds(bounds(shape)))) << name;
      if (shape.kind == Kind::label) labels.push_back(bounds(shape).grown(-0.2));
    }
    for (std::size_t i = 0; i < labels.size(); ++i)
      for (std::size_t k = i + 1; k < labels.size(); ++k) EXPECT_FALSE(labels[i].overlaps(labels[k])) << name;
  }
}

TEST(SplitBar, SharesAreToScaleLargestFirst) {
  diagnose::Parts parts;
  parts.battery = 0.2;
  parts.wires = 0.6;
  parts.joints = 0.2;
  const Scene scene = split_bar(parts, 400);
  std::vector<double> widths;
  for (const Shape& shape : scene.shapes)
    if (const Line* line = std::get_if<Line>(&shape.what); line && bounds(shape).height > 15)
      widths.push_back(line->points[1].x - line->points[0].x);
  ASSERT_EQ(widths.size(), 3u);
  EXPECT_DOUBLE_EQ(widths[0], 240);
  EXPECT_DOUBLE_EQ(widths[1], 80);
  EXPECT_EQ(named_parts(parts).front().name, text::part_wires);
}

TEST(SplitBar, NothingLostDrawsNothing) {
  EXPECT_TRUE(split_bar({}, 400).shapes.empty());
}

}  // namespace
}  // namespace ohmtrail::render
