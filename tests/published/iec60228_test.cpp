// IEC 60228 (2004) Tables 2 and 3: greatest resistance at 20 °C, ohm per km, and Table B.1: factors from the
// measured temperature to 20 °C. The standard's resistances are limits: ours must stay at or below every one.
#include "ohmtrail/trade/conductor.hpp"
#include "ohmtrail/trade/gauge.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace ohmtrail::trade {
namespace {

struct IecRow {
  double mm2, class_2_plain, class_2_coated, class_5_plain, class_5_coated;
};
struct FactorRow {
  double celsius, to_20;
};

const IecRow greatest[] = {
    {0.5, 36.0, 36.7, 39.0, 40.1},         {0.75, 24.5, 24.8, 26.0, 26.7},
    {1, 18.1, 18.2, 19.5, 20.0},           {1.5, 12.1, 12.2, 13.3, 13.7},
    {2.5, 7.41, 7.56, 7.98, 8.21},         {4, 4.61, 4.70, 4.95, 5.09},
    {6, 3.08, 3.11, 3.30, 3.39},           {10, 1.83, 1.84, 1.91, 1.95},
    {16, 1.15, 1.16, 1.21, 1.24},          {25, 0.727, 0.734, 0.780, 0.795},
    {35, 0.524, 0.529, 0.554, 0.565},      {50, 0.387, 0.391, 0.386, 0.393},
    {70, 0.268, 0.270, 0.272, 0.277},      {95, 0.193, 0.195, 0.206, 0.210},
    {120, 0.153, 0.154, 0.161, 0.164},     {150, 0.124, 0.126, 0.129, 0.132},
    {185, 0.0991, 0.100, 0.106, 0.108},    {240, 0.0754, 0.0762, 0.0801, 0.0817},
    {300, 0.0601, 0.0607, 0.0641, 0.0654},
};

const FactorRow factors[] = {
    {5, 1.064},  {10, 1.042}, {15, 1.02},  {20, 1.0},   {25, 0.98},  {30, 0.962},  {35, 0.943},
    {40, 0.926}, {45, 0.909}, {50, 0.893}, {55, 0.877}, {60, 0.862}, {65, 0.847},  {70, 0.833},
    {75, 0.82},  {80, 0.806}, {85, 0.794}, {90, 0.781}, {95, 0.769}, {100, 0.758},
};

double ohm_per_km(double mm2, ConductorKind kind) {
  return wire_resistance_at_20C(metric(mm2), units::Length{1000}, kind).si();
}

TEST(Iec60228, plain_copper_is_at_or_below_the_limits) {
  for (const auto& row : greatest) {
    EXPECT_LE(ohm_per_km(row.mm2, ConductorKind::bare_copper), row.class_2_plain) << row.mm2;
    EXPECT_LE(ohm_per_km(row.mm2, ConductorKind::bare_copper), row.class_5_plain) << row.mm2;
  }
}

TEST(Iec60228, tinned_copper_is_at_or_below_the_limits) {
  for (const auto& row : greatest) {
    EXPECT_LE(ohm_per_km(row.mm2, ConductorKind::tinned_copper), row.class_2_coated) << row.mm2;
    EXPECT_LE(ohm_per_km(row.mm2, ConductorKind::tinned_copper), row.class_5_coated) << row.mm2;
  }
}

// A limit that leaves no room would show that we under-rate real cable: class 2 is met with 2 to 11 % to
// spare.
TEST(Iec60228, the_limits_are_not_far_off) {
  for (const auto& row : greatest)
    EXPECT_GE(ohm_per_km(row.mm2, ConductorKind::bare_copper), 0.89 * row.class_2_plain) << row.mm2;
}

TEST(Iec60228, every_size_is_known) {
  EXPECT_EQ(known_gauges(GaugeSystem::metric).size(), std::size(greatest));
}

// The standard's factors use 0.004 per kelvin; ours is 0.00393 (IEC 60028), which parts by 0.5 % at 100 °C.
TEST(Iec60228, temperature_factors_agree) {
  for (const auto& row : factors) {
    const double ours = 1 / resistance_factor(ConductorKind::bare_copper, units::Temperature{row.celsius});
    EXPECT_NEAR(ours / row.to_20, 1, 0.0055) << row.celsius;
  }
}

}  // namespace
}  // namespace ohmtrail::trade
