#include "render/split_bar.hpp"

#include <gmock/gmock.h>

#include <numeric>

#include "support/page_checks.hpp"

// A sag as one bar with its key.
namespace ohmtrail::render {
namespace {

diagnose::Parts parts(double battery, double wires, double terminations, double joints, double switchgear,
                      double isolators) {
  diagnose::Parts made;
  made.battery = battery;
  made.wires = wires;
  made.terminations = terminations;
  made.joints = joints;
  made.switchgear = switchgear;
  made.isolators = isolators;
  return made;
}

const diagnose::Parts everything = parts(0.0876, 0.444, 0.00851, 0.389, 0.322, 0.7);

/// The stretches of the bar itself, left to right.
std::vector<Box> stretches(const Scene& scene) {
  std::vector<Box> boxes;
  for (const Shape& shape : scene.shapes) {
    const Box box = bounds(shape);
    if (shape.kind == Kind::symbol && box.y < 1) boxes.push_back(box);
  }
  return boxes;
}

std::vector<std::string> words(const Scene& scene) {
  std::vector<std::string> all;
  for (const Shape& shape : scene.shapes)
    if (const auto* text = std::get_if<Text>(&shape.what)) all.push_back(text->text);
  return all;
}

TEST(SplitBar, StretchesAreToScaleAndFillTheWidthLargestFirst) {
  const Scene scene = split_bar(everything, 500);
  const auto boxes = stretches(scene);
  ASSERT_EQ(boxes.size(), 6U);
  const double all = 0.0876 + 0.444 + 0.00851 + 0.389 + 0.322 + 0.7;
  const double wanted[] = {0.7, 0.444, 0.389, 0.322, 0.0876, 0.00851};
  for (std::size_t k = 0; k < 6; ++k) {
    EXPECT_NEAR(boxes[k].middle().x, 500 * (std::accumulate(wanted, wanted + k, 0.0) + wanted[k] / 2) / all,
                0.01);
  }
  EXPECT_NEAR(boxes.back().right(), 500, 1) << "but for the white line around each";
}

TEST(SplitBar, NamesWhatTakesSomethingAndNothingElse) {
  const Scene scene = split_bar(parts(0, 0.2, 0, 0.1, 0, 0), 500);
  EXPECT_EQ(stretches(scene).size(), 2U);
  EXPECT_EQ(words(scene).size(), 4U) << "two values, two names";
  EXPECT_EQ(scene.groups.size(), 2U);
}

/// A part that lifts the voltage (a charger beside the way) has no stretch; the rest still fills the bar.
TEST(SplitBar, APartThatGivesIsLeftOut) {
  const auto boxes = stretches(split_bar(parts(-0.1, 0.3, 0.1, 0, 0, 0), 400));
  ASSERT_EQ(boxes.size(), 2U);
  EXPECT_NEAR(boxes[0].right(), 300, 1);
}

TEST(SplitBar, OfNothingIsEmpty) {
  EXPECT_TRUE(split_bar(parts(0, 0, 0, 0, 0, 0), 400).shapes.empty());
  EXPECT_TRUE(split_bar(parts(-0.1, 0, 0, 0, 0, 0), 400).shapes.empty());
}

TEST(SplitBar, KeepsToItsRoomWithItsLettersApart) {
  for (const Source source : {Source::battery, Source::charger, Source::converter})
    for (const double width : {180.0, 250.0, 299.0, 300.0, 399.0, 400.0, 503.0, 600.0}) {
      SCOPED_TRACE(width);
      const Scene scene = split_bar(everything, width, source);
      // The white line around a stretch may lie on the edge.
      const Box room = Box{0, 0, scene.width, scene.height}.grown(0.51);
      for (const Shape& shape : scene.shapes) EXPECT_TRUE(room.holds(bounds(shape)));
      test::expect_letters_apart({scene});
    }
}

TEST(NamedParts, EqualOnesKeepTheirOrder) {
  const auto named = named_parts(parts(0.1, 0.1, 0.2, 0.1, 0, 0));
  std::vector<double> volts;
  for (const NamedPart& part : named) volts.push_back(part.volts);
  EXPECT_THAT(volts, testing::ElementsAre(0.2, 0.1, 0.1, 0.1, 0, 0));
  EXPECT_EQ(named[1].name, words_of(Source::battery).part);
}

}  // namespace
}  // namespace ohmtrail::render
