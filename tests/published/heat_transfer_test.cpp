// Incropera and others, Fundamentals of Heat and Mass Transfer: example 3.9 (very long fins), equation 9.34
// and example 9.4 (pipe in a room). Churchill and Chu, 1975: values tabulated in the documentation of a
// general open heat-transfer library. And the trade's rule of thumb on warming.
#include "ohmtrail/trade/conductor.hpp"
#include "ohmtrail/trade/fin.hpp"
#include "ohmtrail/trade/gauge.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include <numbers>

namespace ohmtrail::trade {
namespace {

using units::HeatTransferCoefficient;
using units::Length;
using units::Temperature;
using units::TemperatureDifference;

// Example 3.9: rod of 5 mm, h = 100 W/(m² K), root at 100 °C, air at 25 °C.
TEST(Incropera3_9, three_very_long_fins) {
  const struct {
    double conductivity;  // W/(m K) at 335 K
    double watts, watts_within, metres, metres_within;
  } rods[] = {{398, 8.3, 0.05, 0.19, 0.005},   // copper, printed 8.3 W and 0.19 m
              {180, 5.6, 0.05, 0.13, 0.005},   // aluminium alloy 2024, printed 5.6 W and 0.13 m
              {14, 1.6, 0.05, 0.04, 0.0055}};  // stainless steel AISI 316, printed 1.6 W and 0.04 m
  for (const auto& rod : rods) {
    const Fin fin{units::Area{std::numbers::pi / 4 * 25e-6}, units::ThermalConductivity{rod.conductivity},
                  Length{0.005}};
    const HeatTransferCoefficient h{100};
    EXPECT_NEAR((fin_conductance(fin, h) * TemperatureDifference{75}).si(), rod.watts, rod.watts_within);
    EXPECT_NEAR(infinite_length(fin, h).si(), rod.metres, rod.metres_within);
  }
}

TEST(ChurchillChu, tabulated_values) {
  const struct {
    double prandtl, grashof, nusselt;
  } values[] = {
      {0.69, 2.63e9, 139.13493970073597}, {0.7, 1e5, 7.07684}, {1.2, 5e6, 25.9779}, {0.9, 1e9, 115.819}};
  for (const auto& v : values)
    EXPECT_NEAR(churchill_chu(v.prandtl * v.grashof, v.prandtl) / v.nusselt, 1, 5e-6) << v.grashof;
}

// Example 9.4: pipe of 100 mm at 165 °C, room and walls at 23 °C, emissivity 0.85, with its own air.
TEST(Incropera9_4, pipe_in_a_room) {
  const Air air{0.0313, 22.8e-6, 32.8e-6, 0.002725};
  const TemperatureDifference rise{142};
  const double ra = rayleigh(air, Length{0.1}, rise);
  EXPECT_NEAR(ra / 5.073e6, 1, 0.002);
  const double h = churchill_chu(ra, 0.697) * air.thermal_conductivity / 0.1;
  const double radiated = radiation(0.85, Temperature{23}, rise).si();
  const double watts_per_metre = (h + radiated) * std::numbers::pi * 0.1 * rise.si();
  EXPECT_NEAR(watts_per_metre, 763,
              3.5);  // printed by the textbook's companion; the book, from memory: about 766
}

// The same example's air at the film temperature, 367 K. The book's table is for 100 kPa (its densities give
// 287 J/(kg K) there), ours for 101.325: diffusivities scale with the inverse of the pressure.
TEST(Incropera9_4, air_at_the_film_temperature) {
  const Air air = air_at(Temperature{94});
  EXPECT_NEAR(air.thermal_conductivity / 0.0313, 1, 0.01);
  EXPECT_NEAR(air.kinematic_viscosity * 1.01325 / 22.8e-6, 1, 0.01);
  EXPECT_NEAR(air.thermal_diffusivity * 1.01325 / 32.8e-6, 1, 0.01);
  EXPECT_NEAR(air.expansion / 0.002725, 1, 0.001);
}

// Common practice: a 4/0 wire at 500 A gains about 7 K a minute.
TEST(CommonPractice, a_4_0_wire_at_500_A_gains_7_K_a_minute) {
  const auto per_metre = wire_resistance_at_20C(awg(-3), Length{1}, ConductorKind::bare_copper);
  const double watts = 500.0 * 500.0 * per_metre.si();
  const double joules_per_kelvin = wire_heat_capacity(awg(-3), ConductorKind::bare_copper).si();
  EXPECT_NEAR(watts / joules_per_kelvin * 60, 7, 0.5);
}

}  // namespace
}  // namespace ohmtrail::trade
