// 33 CFR 183 subpart I (2015 annual edition): allowable current (183.425 Table 5 with notes 1 and 2), where
// the bundling note binds (183.435(b)), overcurrent protection (183.455, 183.460). And ABYC E-11 Table V-A.
#include "ohmtrail/trade/ampacity.hpp"
#include "ohmtrail/trade/fuse_ladder.hpp"
#include "ohmtrail/trade/gauge.hpp"
#include "ohmtrail/trade/protection.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace ohmtrail::trade {
namespace {

using units::Current;
using units::Temperature;
using units::Voltage;

const double ratings[] = {60, 75, 80, 90, 105, 125, 200};  // °C, columns of Table 5

struct Table5Row {
  int awg;
  double amps[7];
};

const Table5Row table_5[] = {
    {18, {10, 10, 15, 20, 20, 25, 25}},        {16, {15, 15, 20, 25, 25, 30, 35}},
    {14, {20, 20, 25, 30, 35, 40, 45}},        {12, {25, 25, 35, 40, 45, 50, 55}},
    {10, {40, 40, 50, 55, 60, 70, 70}},        {8, {55, 65, 70, 70, 80, 90, 100}},
    {6, {80, 95, 100, 100, 120, 125, 135}},    {4, {105, 125, 130, 135, 160, 170, 180}},
    {3, {120, 145, 150, 155, 180, 195, 210}},  {2, {140, 170, 175, 180, 210, 225, 240}},
    {1, {165, 195, 210, 210, 245, 265, 280}},  {0, {195, 230, 245, 245, 285, 305, 325}},
    {-1, {225, 265, 285, 285, 330, 355, 370}}, {-2, {260, 310, 330, 330, 385, 410, 430}},
    {-3, {300, 360, 385, 385, 445, 475, 510}},
};

Ampacity amps_of(int number, double rating, bool engine_space = false, int bundle = 1,
                 std::optional<Voltage> system = {}) {
  return ampacity(
      {awg(number), Temperature{rating}, engine_space, bundle, ConductorKind::bare_copper, system});
}

TEST(Cfr183_425, table_5_is_met_cell_by_cell) {
  for (const auto& row : table_5)
    for (int i = 0; i < 7; ++i) EXPECT_EQ(amps_of(row.awg, ratings[i]).amps.si(), row.amps[i]) << row.awg;
}

// Note 1.
TEST(Cfr183_425, engine_space_factors) {
  const double factors[] = {0.58, 0.75, 0.78, 0.82, 0.85, 0.89, 1.00};
  for (const auto& row : table_5)
    for (int i = 0; i < 7; ++i)
      EXPECT_NEAR(amps_of(row.awg, ratings[i], true).amps.si(), row.amps[i] * factors[i], 1e-9) << row.awg;
}

// Note 2: 3, 4 to 6, 7 to 24, 25 and more current-carrying conductors.
TEST(Cfr183_425, bundling_factors) {
  const struct {
    int conductors;
    double factor;
  } cases[] = {{1, 1},    {2, 1},     {3, 0.70},  {4, 0.60}, {6, 0.60},
               {7, 0.50}, {24, 0.50}, {25, 0.40}, {90, 0.40}};
  for (const auto& c : cases)
    EXPECT_NEAR(amps_of(10, 105, false, c.conductors).amps.si(), 60 * c.factor, 1e-9) << c.conductors;
}

// 183.435(b): note 2 is applied to circuits of 50 V and more.
TEST(Cfr183_435, bundling_binds_from_50_V_up) {
  EXPECT_TRUE(amps_of(10, 105, false, 5, Voltage{50}).bundling_binds);
  EXPECT_FALSE(amps_of(10, 105, false, 5, Voltage{48}).bundling_binds);
  EXPECT_FALSE(amps_of(10, 105, false, 5).bundling_binds);
}

// 183.455(c).
TEST(Cfr183_455, largest_fuse) {
  EXPECT_DOUBLE_EQ(largest_fuse(Current{330}, Voltage{12}).limit.si(), 495);  // 150 % below 50 V
  EXPECT_DOUBLE_EQ(largest_fuse(Current{120}, Voltage{49.9}).limit.si(), 180);
  EXPECT_DOUBLE_EQ(largest_fuse(Current{60}, Voltage{120}).limit.si(), 60);    // a standard rating
  EXPECT_DOUBLE_EQ(largest_fuse(Current{330}, Voltage{120}).limit.si(), 350);  // the next larger one
}

// 183.455(b) and 183.460(a): 7, 40 and 72 inches. NEC 552.10(E)(4): 18 inches. ISO 10133:2000 8.1, from
// memory: 200 mm.
TEST(Cfr183_455, distances) {
  const FuseDistances& rules = fuse_distances();
  EXPECT_NEAR(rules.plain.limit.si(), 0.1778, 1e-12);
  EXPECT_NEAR(rules.sheathed.limit.si(), 1.016, 1e-12);
  EXPECT_NEAR(rules.from_battery.limit.si(), 1.8288, 1e-12);
  EXPECT_NEAR(rules.park_trailer.limit.si(), 0.4572, 1e-12);
  EXPECT_NEAR(rules.european.limit.si(), 0.2, 1e-12);
}

// ABYC E-11 Table V-A: 12 and 24 V from a reprint, 32 V from memory.
TEST(AbycE11, interrupting_capacity) {
  const struct {
    double volts, cold_cranking, main, branch;
  } cases[] = {{12, 650, 1500, 750},   {12, 651, 3000, 1500},  {24, 1100, 3000, 1500}, {24, 1101, 5000, 2500},
               {32, 1250, 3000, 1500}, {32, 1251, 5000, 2500}, {12, 0, 1500, 750}};
  for (const auto& c : cases) {
    const auto found = interrupting_capacity(Voltage{c.volts}, Current{c.cold_cranking});
    EXPECT_EQ(found.main.si(), c.main) << c.volts << " V " << c.cold_cranking << " A";
    EXPECT_EQ(found.branch.si(), c.branch) << c.volts << " V " << c.cold_cranking << " A";
  }
}

// From memory: NEC tables 551.10(E)(1) and 552.10(E)(1).
TEST(Nec551_10, largest_fuse_by_gauge) {
  const struct {
    int awg;
    double amps;
  } published[] = {{18, 6}, {16, 8}, {14, 15}, {12, 20}, {10, 30}};
  for (const auto& row : published) EXPECT_EQ(vehicle_fuse_limit(awg(row.awg))->limit.si(), row.amps);
  EXPECT_FALSE(vehicle_fuse_limit(awg(8)));
}

}  // namespace
}  // namespace ohmtrail::trade
