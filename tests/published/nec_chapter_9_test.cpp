// National Electrical Code (2011 and later) chapter 9 table 8: direct-current resistance at 75 °C, ohm per
// 1000 ft. NEC 240.6(A): standard ratings.
#include "ohmtrail/trade/conductor.hpp"
#include "ohmtrail/trade/fuse_ladder.hpp"
#include "ohmtrail/trade/gauge.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace ohmtrail::trade {
namespace {

struct NecRow {
  int awg;
  double circular_mils;
  int strands;
  double uncoated, coated, aluminium;  ///< ohm per 1000 ft at 75 °C
};

const NecRow wires[] = {
    {18, 1620, 1, 7.77, 8.08, 12.8},         {18, 1620, 7, 7.95, 8.45, 13.1},
    {16, 2580, 1, 4.89, 5.08, 8.05},         {16, 2580, 7, 4.99, 5.29, 8.21},
    {14, 4110, 1, 3.07, 3.19, 5.06},         {14, 4110, 7, 3.14, 3.26, 5.17},
    {12, 6530, 1, 1.93, 2.01, 3.18},         {12, 6530, 7, 1.98, 2.05, 3.25},
    {10, 10380, 1, 1.21, 1.26, 2.00},        {10, 10380, 7, 1.24, 1.29, 2.04},
    {8, 16510, 1, 0.764, 0.786, 1.26},       {8, 16510, 7, 0.778, 0.809, 1.28},
    {6, 26240, 7, 0.491, 0.510, 0.808},      {4, 41740, 7, 0.308, 0.321, 0.508},
    {3, 52620, 7, 0.245, 0.254, 0.403},      {2, 66360, 7, 0.194, 0.201, 0.319},
    {1, 83690, 19, 0.154, 0.160, 0.253},     {0, 105600, 19, 0.122, 0.127, 0.201},
    {-1, 133100, 19, 0.0967, 0.101, 0.159},  {-2, 167800, 19, 0.0766, 0.0797, 0.126},
    {-3, 211600, 19, 0.0608, 0.0626, 0.100},
};

double ohm_per_1000_ft_at_75C(const NecRow& row, ConductorKind kind) {
  const Stranding stranding = row.strands == 1 ? Stranding::solid : Stranding::stranded;
  const auto cold = wire_resistance_at_20C(awg(row.awg), units::Length{304.8}, kind, stranding);
  return cold.si() * resistance_factor(kind, units::Temperature{75});
}

TEST(NecTable8, solid_copper_is_equal) {
  for (const auto& row : wires) {
    if (row.strands != 1) continue;
    const double ours = ohm_per_1000_ft_at_75C(row, ConductorKind::bare_copper);
    EXPECT_NEAR(ours / row.uncoated, 1, 0.0045) << row.awg;  // 1.21 at 10 AWG is its own rounding of 1.215
  }
}

TEST(NecTable8, stranded_copper_is_within_1_percent) {
  int checked = 0;
  for (const auto& row : wires) {
    if (row.strands == 1) continue;
    EXPECT_NEAR(ohm_per_1000_ft_at_75C(row, ConductorKind::bare_copper) / row.uncoated, 1, 0.01) << row.awg;
    ++checked;
  }
  EXPECT_EQ(checked, 15);
}

TEST(NecTable8, coated_copper_is_within_1_percent) {
  for (const auto& row : wires)
    EXPECT_NEAR(ohm_per_1000_ft_at_75C(row, ConductorKind::tinned_copper) / row.coated, 1, 0.01) << row.awg;
}

TEST(NecTable8, aluminium_is_within_1_percent) {
  for (const auto& row : wires)
    EXPECT_NEAR(ohm_per_1000_ft_at_75C(row, ConductorKind::aluminium) / row.aluminium, 1, 0.01) << row.awg;
}

TEST(NecTable8, circular_mils_agree) {
  for (const auto& row : wires)
    EXPECT_NEAR(circular_mils(awg_area(row.awg)) / row.circular_mils, 1, 0.003) << row.awg;
}

// NEC 240.6(A), up to 600 A.
TEST(Nec240_6, standard_ratings) {
  const double published[] = {15,  20,  25,  30,  35,  40,  45,  50,  60,  70,  80,  90,  100,
                              110, 125, 150, 175, 200, 225, 250, 300, 350, 400, 450, 500, 600};
  const auto& ladder = fuse_ratings(FuseForm::cartridge);
  ASSERT_EQ(ladder.size(), std::size(published));
  for (std::size_t i = 0; i < ladder.size(); ++i) EXPECT_EQ(ladder[i].si(), published[i]);
}

}  // namespace
}  // namespace ohmtrail::trade
