#include "ohmtrail/trade/fin.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

#include "ohmtrail/trade/conductor.hpp"
#include "ohmtrail/trade/gauge.hpp"

namespace ohmtrail::trade {
namespace {

using units::HeatTransferCoefficient;
using units::Length;
using units::Power;
using units::Temperature;
using units::TemperatureDifference;

struct ComputedRow {
  double millimetres, rise, convection, radiation, total;
};

// Derived, not published: computed independently with Churchill–Chu, linearised radiation at emissivity 0.92
// and ideal-gas air at film temperature over still air of 25 °C, W/(m² K).
const ComputedRow computed[] = {
    {5, 10, 8.9, 5.8, 14.7},  {5, 20, 10.1, 6.1, 16.3}, {5, 40, 11.6, 6.7, 18.3}, {5, 60, 12.5, 7.4, 19.9},
    {8, 10, 7.3, 5.8, 13.1},  {8, 20, 8.4, 6.1, 14.5},  {8, 40, 9.7, 6.7, 16.4},  {8, 60, 10.5, 7.4, 17.9},
    {11, 10, 6.5, 5.8, 12.3}, {11, 20, 7.5, 6.1, 13.6}, {11, 40, 8.7, 6.7, 15.4}, {11, 60, 9.4, 7.4, 16.9},
    {15, 10, 5.8, 5.8, 11.6}, {15, 20, 6.8, 6.1, 12.9}, {15, 40, 7.9, 6.7, 14.6}, {15, 60, 8.6, 7.4, 16.1},
    {20, 10, 5.3, 5.8, 11.1}, {20, 20, 6.2, 6.1, 12.3}, {20, 40, 7.3, 6.7, 14.0}, {20, 60, 8.0, 7.4, 15.4},
    {25, 10, 5.0, 5.8, 10.8}, {25, 20, 5.9, 6.1, 12.0}, {25, 40, 6.9, 6.7, 13.6}, {25, 60, 7.6, 7.4, 15.0},
};

TEST(Convection, agrees_with_an_independent_computation) {
  for (const auto& row : computed) {
    const TemperatureDifference rise{row.rise};
    EXPECT_NEAR(convection(Length{row.millimetres * 1e-3}, Temperature{25}, rise).si(), row.convection,
                0.05 + 0.015 * row.convection)
        << row.millimetres << " mm, " << row.rise << " K";
    EXPECT_NEAR(radiation(0.92, Temperature{25}, rise).si(), row.radiation, 0.06) << row.rise;
  }
}

// Derived, not published: with h = 12 W/(m² K) one long cable of 16, 35, 50 and 70 mm² takes this many W/K.
TEST(FinConductance, agrees_with_an_independent_computation) {
  const struct {
    double mm2, jacket_mm, watts_per_kelvin;
  } cables[] = {{16, 9.0, 0.0465}, {35, 12.5, 0.0810}, {50, 14.5, 0.1043}, {70, 17.0, 0.1336}};
  for (const auto& cable : cables) {
    const Fin fin{units::Area{cable.mm2 * 1e-6}, units::ThermalConductivity{398},
                  Length{cable.jacket_mm * 1e-3}};
    EXPECT_NEAR(fin_conductance(fin, HeatTransferCoefficient{12}).si() / cable.watts_per_kelvin, 1, 0.006);
  }
}

std::vector<Fin> pair_of(const Gauge& left, const Gauge& right) {
  return {fin_of(left, ConductorKind::tinned_copper), fin_of(right, ConductorKind::tinned_copper)};
}

double heat_at(const std::vector<Fin>& fins, Temperature ambient, TemperatureDifference rise) {
  double watts = 0;
  for (const Fin& fin : fins) {
    const auto h = convection(fin.diameter, ambient, rise) + radiation(jacket_emissivity, ambient, rise);
    watts += (fin_conductance(fin, h) * rise).si();
  }
  return watts;
}

TEST(JointRise, gives_off_just_the_heat_that_is_made) {
  const auto fins = pair_of(awg(2), awg(-1));
  for (const double watts : {1e-6, 0.01, 1.0, 10.0, 100.0}) {
    const auto rise = joint_rise(Power{watts}, fins, Temperature{25});
    EXPECT_NEAR(heat_at(fins, Temperature{25}, rise) / watts, 1, 1e-6);
  }
}

// Common sense of the bench: 1 mΩ at 100 A, 10 W, between two 35 mm² cables is too hot to touch.
TEST(JointRise, of_ten_watts_between_35_mm2_cables) {
  const double rise = joint_rise(Power{10}, pair_of(metric(35), metric(35)), Temperature{25}).si();
  EXPECT_GT(rise, 40);
  EXPECT_LT(rise, 65);
}

TEST(JointRise, grows_more_slowly_than_the_heat) {
  const auto fins = pair_of(metric(35), metric(35));
  const double one = joint_rise(Power{5}, fins, Temperature{25}).si();
  const double two = joint_rise(Power{10}, fins, Temperature{25}).si();
  EXPECT_GT(two, one);
  EXPECT_LT(two, 2 * one);
}

TEST(JointRise, a_thicker_or_second_cable_cools) {
  const double single =
      joint_rise(Power{5}, std::vector{fin_of(awg(2), ConductorKind::bare_copper)}, Temperature{25}).si();
  const double even = joint_rise(Power{5}, pair_of(awg(2), awg(2)), Temperature{25}).si();
  const double uneven = joint_rise(Power{5}, pair_of(awg(2), awg(-3)), Temperature{25}).si();
  EXPECT_LT(even, single);
  EXPECT_GT(even, single / 2);  // less heat a cable, less rise, weaker convection
  EXPECT_LT(uneven, even);
}

TEST(JointRise, aluminium_cools_less_than_copper) {
  const auto of = [](ConductorKind kind) {
    return joint_rise(Power{5}, std::vector{fin_of(awg(2), kind)}, Temperature{25}).si();
  };
  EXPECT_GT(of(ConductorKind::aluminium), of(ConductorKind::bare_copper));
}

TEST(JointRise, edges) {
  const auto fins = pair_of(awg(2), awg(2));
  EXPECT_EQ(joint_rise(Power{0}, fins, Temperature{25}).si(), 0);
  EXPECT_TRUE(std::isnan(joint_rise(Power{5}, {}, Temperature{25}).si()));
  EXPECT_TRUE(std::isnan(joint_rise(Power{-1}, fins, Temperature{25}).si()));
  EXPECT_TRUE(std::isnan(joint_rise(Power{std::nan("")}, fins, Temperature{25}).si()));
}

TEST(Air, at_27_C_is_near_the_usual_values) {
  // From memory: Incropera and others, Table A.4 at 300 K: 0.0263 W/(m K), 15.89e-6 and 22.5e-6 m²/s (at 100
  // kPa).
  const Air air = air_at(Temperature{26.85});
  EXPECT_NEAR(air.thermal_conductivity, 0.0263, 0.0003);
  EXPECT_NEAR(air.kinematic_viscosity * 1.01325, 15.89e-6, 0.15e-6);
  EXPECT_NEAR(air.thermal_diffusivity * 1.01325, 22.5e-6, 0.3e-6);
}

TEST(Radiation, holds_at_no_rise) {
  EXPECT_NEAR(radiation(1, Temperature{25}, TemperatureDifference{0}).si(),
              4 * 5.670374419e-8 * std::pow(298.15, 3), 1e-9);
}

}  // namespace
}  // namespace ohmtrail::trade
