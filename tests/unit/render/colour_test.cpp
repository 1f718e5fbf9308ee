#include "render/colour.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace ohmtrail::render {
namespace {

// Known values: sRGB white is L = 1, black 0; sRGB red is (0.628, 0.225, 0.126) in OKLab (Ottosson 2020,
// table of the article's colours, rounded to three digits).
TEST(Colour, LightnessMatchesThePublishedSpace) {
  EXPECT_NEAR(lightness({1, 1, 1}), 1.0, 1e-4);
  EXPECT_NEAR(lightness({0, 0, 0}), 0.0, 1e-6);
  EXPECT_NEAR(lightness({1, 0, 0}), 0.628, 1e-3);
  EXPECT_NEAR(distance({1, 0, 0}, {0, 0, 0}), std::sqrt(0.628 * 0.628 + 0.225 * 0.225 + 0.126 * 0.126), 2e-3);
}

TEST(Colour, LossScaleOnlyDarkens) {
  for (int k = 1; k <= 100; ++k)
    EXPECT_LT(lightness(loss_colour(k / 100.0)), lightness(loss_colour((k - 1) / 100.0)));
}

TEST(Colour, EqualSharesAreEqualSteps) {
  const double first = distance(loss_colour(0), loss_colour(0.02));
  for (int k = 1; k < 50; ++k) {
    const double step = distance(loss_colour(k * 0.02), loss_colour((k + 1) * 0.02));
    EXPECT_NEAR(step, first, first * 0.25) << "at " << k * 0.02;
  }
}

TEST(Colour, LossScaleEndsAtOneAndBeginsAtZero) {
  EXPECT_EQ(loss_colour(1), loss_colour(7));
  EXPECT_EQ(loss_colour(0), loss_colour(-1));
  EXPECT_EQ(loss_colour(0), loss_colour(std::nan("")));
}

TEST(Colour, NoLossIsTakenForAnIdleConductor) {
  for (int k = 0; k <= 20; ++k) EXPECT_GT(distance(loss_colour(k / 20.0), palette::idle), 0.06) << k;
}

// WCAG 2.1, success criterion 1.4.3: 4.5 : 1 for text.
double contrast_on_white(Colour c) {
  const auto linear = [](double p) { return p <= 0.04045 ? p / 12.92 : std::pow((p + 0.055) / 1.055, 2.4); };
  return 1.05 / (0.2126 * linear(c.red) + 0.7152 * linear(c.green) + 0.0722 * linear(c.blue) + 0.05);
}

TEST(Colour, TextColoursCanBeRead) {
  for (const Colour c : {palette::ink, palette::quiet, palette::alarm, palette::sound, palette::accent})
    EXPECT_GE(contrast_on_white(c), 4.5);
}

// Seen without the red cones (Viénot, Brettel and Mollon 1999, eq. for protanopia in linear RGB), the ends
// and the middle of the scale are still told apart.
struct Missing {
  double red_in_rg, red_in_blue;
};
constexpr Missing red_cones{0.11238, 0.00401}, green_cones{0.29275, -0.02234};  // the latter from memory

Colour seen_without(const Missing& cones, Colour c) {
  const auto linear = [](double p) { return p <= 0.04045 ? p / 12.92 : std::pow((p + 0.055) / 1.055, 2.4); };
  const auto curved = [](double p) {
    return p <= 0.0031308 ? p * 12.92 : 1.055 * std::pow(p, 1 / 2.4) - 0.055;
  };
  const double r = linear(c.red), g = linear(c.green), b = linear(c.blue);
  const double rg = cones.red_in_rg * r + (1 - cones.red_in_rg) * g;
  return {curved(rg), curved(rg), curved(std::max(0.0, cones.red_in_blue * (r - g) + b))};
}

TEST(Colour, StepsOfAQuarterDifferWithoutRedOrGreenCones) {
  for (const Missing& cones : {red_cones, green_cones})
    for (int k = 0; k < 4; ++k)
      EXPECT_GT(distance(seen_without(cones, loss_colour(k * 0.25)),
                         seen_without(cones, loss_colour((k + 1) * 0.25))),
                0.05)
          << k;
}

// A grey print keeps the luminance alone (ITU-R BT.709: 0.2126, 0.7152, 0.0722 of linear RGB).
double grey(Colour c) {
  const auto linear = [](double p) { return p <= 0.04045 ? p / 12.92 : std::pow((p + 0.055) / 1.055, 2.4); };
  return 0.2126 * linear(c.red) + 0.7152 * linear(c.green) + 0.0722 * linear(c.blue);
}

TEST(Colour, AGreyPrintKeepsTheOrder) {
  for (int k = 0; k < 20; ++k) EXPECT_GT(grey(loss_colour(k / 20.0)), grey(loss_colour((k + 1) / 20.0))) << k;
  EXPECT_GT(grey(loss_colour(0)) / grey(loss_colour(1)), 5) << "from pale to dark";
}

TEST(Colour, NothingThatMattersIsPalerThanItsPaper) {
  // WCAG 2.1, 1.4.11: 3 : 1 for what must be seen; the pale end of the scale is a line beside its name.
  for (const double share : {0.5, 0.75, 1.0}) EXPECT_GE(contrast_on_white(loss_colour(share)), 3) << share;
}

}  // namespace
}  // namespace ohmtrail::render
