#include "render/shade.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "support/render_shipped.hpp"
#include "support/report_input.hpp"

namespace ohmtrail::render {
namespace {

TEST(Shade, AllowedIsTheStrictestLimitOnTheSameSupply) {
  const ReportInput input = test::shipped_report("yacht-12v");
  const solve::CaseSolution& solved = input.solved.front();
  const Shade shade(input.system, solved);
  // 3 % of 12 V: the plotter and the navigation lamps are critical.
  for (int k = 0; k < static_cast<int>(solved.network.elements.size()); ++k)
    EXPECT_NEAR(shade.allowed(k), 0.36, 1e-9);
  EXPECT_EQ(shade.least_allowed(), shade.most_allowed());
}

TEST(Shade, AConverterParts) {
  const ReportInput input = test::shipped_report("cart-48v");
  const Shade shade(input.system, input.solved.front());
  EXPECT_LT(shade.least_allowed(), shade.most_allowed()) << "12 V lamps behind it, 48 V before";
}

TEST(Shade, WhatCarriesNothingIsIdle) {
  const ReportInput input = test::shipped_report("yacht-12v");
  int seen[2] = {0, 0};
  for (const solve::CaseSolution& solved : input.solved) {
    const Shade shade(input.system, solved);
    for (std::size_t k = 0; k < solved.network.elements.size(); ++k) {
      const int i = static_cast<int>(k);
      const double amps = solved.solution.current[k];
      const bool carries = solved.network.elements[k].active && std::isfinite(amps) && std::fabs(amps) > 1e-9;
      ++seen[carries ? 1 : 0];
      EXPECT_EQ(shade.idle(i), !carries);
      if (!carries) {
        EXPECT_EQ(shade.colour(i), palette::idle);
      }
    }
  }
  EXPECT_GT(seen[0], 0);
  EXPECT_GT(seen[1], 0);
}

TEST(Shade, MoreLostIsDarker) {
  const ReportInput input = test::shipped_report("launch-24v");
  const solve::CaseSolution& solved = input.solved.front();
  const Shade shade(input.system, solved);
  int most = -1, least = -1;
  for (int k = 0; k < static_cast<int>(solved.network.elements.size()); ++k) {
    if (shade.idle(k) || solved.network.elements[static_cast<std::size_t>(k)].role != network::Role::wire)
      continue;
    const auto drop = [&](int e) { return std::fabs(solved.solution.drop[static_cast<std::size_t>(e)]); };
    if (most < 0 || drop(k) > drop(most)) most = k;
    if (least < 0 || drop(k) < drop(least)) least = k;
  }
  EXPECT_LT(lightness(shade.colour(most)), lightness(shade.colour(least)));
}

TEST(LineWidth, GrowsWithTheCopper) {
  EXPECT_GT(line_width(0), 0.5) << "still a line";
  double before = 0;
  for (const double area : {0.5e-6, 2.5e-6, 16e-6, 35e-6, 70e-6, 107e-6}) {
    EXPECT_GT(line_width(area), before);
    before = line_width(area);
  }
  EXPECT_LT(before, 8) << "no wider than the room between two lanes";
}

}  // namespace
}  // namespace ohmtrail::render
