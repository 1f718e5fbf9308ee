// From memory: ISO 10133:2000 / ISO 13297:2000 Annex A Table A.1 and its notes, ISO 8820-3 ratings and gates.
// Soft checks: they guard against slips in our own copy; the standards' text was not at hand.
#include "ohmtrail/trade/ampacity.hpp"
#include "ohmtrail/trade/fuse_ladder.hpp"
#include "ohmtrail/trade/gauge.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace ohmtrail::trade {
namespace {

using units::Current;
using units::Temperature;

const double ratings[] = {60, 70, 85, 105, 125, 200};  // °C; the third column is for 85 to 90

struct TableA1Row {
  double mm2;
  double amps[6];
};

const TableA1Row table_a1[] = {
    {0.75, {6, 10, 12, 16, 20, 25}},       {1, {8, 14, 18, 20, 25, 35}},
    {1.5, {12, 18, 21, 25, 30, 40}},       {2.5, {17, 25, 30, 35, 40, 45}},
    {4, {22, 35, 40, 45, 50, 55}},         {6, {29, 45, 50, 60, 70, 75}},
    {10, {40, 65, 70, 90, 100, 120}},      {16, {54, 90, 100, 130, 150, 170}},
    {25, {71, 120, 140, 170, 185, 200}},   {35, {87, 160, 185, 210, 225, 240}},
    {50, {105, 210, 230, 270, 300, 325}},  {70, {135, 265, 285, 330, 360, 375}},
    {95, {165, 310, 330, 390, 410, 430}},  {120, {190, 360, 400, 450, 480, 520}},
    {150, {220, 380, 430, 475, 520, 560}},
};

double amps_of(double mm2, double rating, bool engine_space = false, int bundle = 1) {
  return ampacity({metric(mm2), Temperature{rating}, engine_space, bundle}).amps.si();
}

// The default conductor is tinned copper: the table makes no difference between plain and tinned.
TEST(Iso10133, table_a1_is_met_cell_by_cell) {
  for (const auto& row : table_a1)
    for (int i = 0; i < 6; ++i) EXPECT_EQ(amps_of(row.mm2, ratings[i]), row.amps[i]) << row.mm2;
}

TEST(Iso10133, the_85_to_90_column_serves_90) {
  EXPECT_EQ(amps_of(35, 90), 185);
}

TEST(Iso10133, engine_space_factors) {
  EXPECT_NEAR(amps_of(35, 70, true), 160 * 0.75, 1e-9);
  EXPECT_NEAR(amps_of(35, 90, true), 185 * 0.82, 1e-9);
  EXPECT_NEAR(amps_of(35, 105, true), 210 * 0.86, 1e-9);
  EXPECT_NEAR(amps_of(35, 125, true), 225 * 0.89, 1e-9);
  EXPECT_NEAR(amps_of(35, 200, true), 240, 1e-9);
}

TEST(Iso13297, bundling_factors) {
  EXPECT_NEAR(amps_of(35, 105, false, 3), 210, 1e-9);
  EXPECT_NEAR(amps_of(35, 105, false, 4), 210 * 0.7, 1e-9);
  EXPECT_NEAR(amps_of(35, 105, false, 7), 210 * 0.6, 1e-9);
  EXPECT_NEAR(amps_of(35, 105, false, 25), 210 * 0.5, 1e-9);
}

// ISO 8820-3 types C and E.
TEST(Iso8820, blade_ratings) {
  const double published[] = {1, 2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30, 35, 40, 50, 60, 70, 80, 100};
  const auto& ladder = fuse_ratings(FuseForm::blade);
  ASSERT_EQ(ladder.size(), std::size(published));
  for (std::size_t i = 0; i < ladder.size(); ++i) EXPECT_EQ(ladder[i].si(), published[i]);
}

// ISO 8820-3:2015 scope: 32 V or 58 V, breaking capacity 1000 A.
TEST(Iso8820, blade_limits) {
  EXPECT_EQ(usual_fuse_limits(FuseForm::blade).breaks.si(), 1000);
  EXPECT_EQ(usual_fuse_limits(FuseForm::blade).volts.si(), 32);
}

// ISO 8820-3 / SAE J1284.
TEST(Iso8820, blade_opening_gates) {
  const struct {
    double amps, no_sooner, no_later;  // for a 10 A fuse
  } published[] = {{13.5, 0.75, 600}, {16, 0.25, 50}, {20, 0.15, 5}};
  for (const auto& gate : published) {
    const auto found = blade_opening_time(Current{10}, Current{gate.amps});
    ASSERT_TRUE(found && found->no_later);
    EXPECT_NEAR(found->no_sooner.si(), gate.no_sooner, 1e-9);
    EXPECT_NEAR(found->no_later->si(), gate.no_later, 1e-9);
  }
}

}  // namespace
}  // namespace ohmtrail::trade
