#include "ohmtrail/trade/conductor.hpp"

#include <gtest/gtest.h>

#include "ohmtrail/trade/gauge.hpp"

namespace ohmtrail::trade {
namespace {

using units::Length;
using units::Temperature;

const ConductorKind kinds[] = {ConductorKind::bare_copper, ConductorKind::tinned_copper,
                               ConductorKind::aluminium, ConductorKind::copper_clad_aluminium};

std::vector<Gauge> every_gauge() {
  std::vector<Gauge> all;
  for (const auto system : {GaugeSystem::awg, GaugeSystem::sae, GaugeSystem::metric})
    all.insert(all.end(), known_gauges(system).begin(), known_gauges(system).end());
  return all;
}

TEST(WireResistance, is_rho_lay_length_over_area) {
  const double ohm = wire_resistance_at_20C(metric(35), Length{2}, ConductorKind::bare_copper).si();
  EXPECT_NEAR(ohm, 0.017241e-6 * 1.02 * 2 / 35e-6, 1e-12);
}

TEST(WireResistance, grows_with_length_and_falls_with_gauge) {
  for (const ConductorKind kind : kinds)
    for (const auto system : {GaugeSystem::awg, GaugeSystem::sae, GaugeSystem::metric}) {
      const auto& all = known_gauges(system);
      for (std::size_t i = 1; i < all.size(); ++i)
        EXPECT_GT(wire_resistance_at_20C(all[i - 1], Length{1}, kind),
                  wire_resistance_at_20C(all[i], Length{1}, kind))
            << print(all[i]);
    }
  EXPECT_DOUBLE_EQ(wire_resistance_at_20C(awg(2), Length{3}, kinds[1]).si(),
                   3 * wire_resistance_at_20C(awg(2), Length{1}, kinds[1]).si());
}

TEST(WireResistance, metals_rank_as_they_should) {
  for (const Gauge& gauge : every_gauge()) {
    const auto ohm = [&](ConductorKind kind) { return wire_resistance_at_20C(gauge, Length{1}, kind).si(); };
    EXPECT_LT(ohm(kinds[0]), ohm(kinds[1]));
    EXPECT_LT(ohm(kinds[1]), ohm(kinds[3]));
    EXPECT_LT(ohm(kinds[3]), ohm(kinds[2]));
    EXPECT_NEAR(ohm(kinds[2]) / ohm(kinds[0]), 1 / 0.61, 0.001);  // aluminium 1350 is 61 % IACS
  }
}

TEST(WireResistance, solid_wire_has_no_lay) {
  const auto solid = wire_resistance_at_20C(awg(10), Length{1}, kinds[0], Stranding::solid);
  const auto stranded = wire_resistance_at_20C(awg(10), Length{1}, kinds[0]);
  EXPECT_DOUBLE_EQ(ratio(stranded, solid), 1.02);
}

TEST(TinFactor, is_one_but_for_tinned_wire_and_small_always) {
  for (const Gauge& gauge : every_gauge())
    for (const ConductorKind kind : kinds) {
      const double factor = tin_factor(gauge, kind);
      if (kind == ConductorKind::tinned_copper) {
        EXPECT_GT(factor, 1.015) << print(gauge);
        EXPECT_LT(factor, 1.075) << print(gauge);
      } else {
        EXPECT_EQ(factor, 1) << print(gauge);
      }
    }
}

TEST(ResistanceFactor, is_one_at_20_C_and_linear) {
  for (const ConductorKind kind : kinds) {
    EXPECT_EQ(resistance_factor(kind, Temperature{20}), 1);
    EXPECT_NEAR(resistance_factor(kind, Temperature{120}), 1 + 100 * temperature_coefficient(kind), 1e-12);
  }
  EXPECT_NEAR(resistance_factor(ConductorKind::tinned_copper, Temperature{75}), 1.21615, 1e-9);
}

TEST(ConductorMass, of_a_metre_of_35_mm2_copper) {
  EXPECT_NEAR(conductor_mass(metric(35), Length{1}, ConductorKind::bare_copper).si(), 35e-6 * 8890 * 1.02,
              1e-12);
  EXPECT_LT(conductor_mass(metric(35), Length{1}, ConductorKind::aluminium).si(), 0.1);
}

TEST(HeatCapacity, of_copper_is_3_4_joules_per_cubic_centimetre) {
  // 8890 kg/m³ · 385 J/(kg K), and the lay.
  EXPECT_NEAR(wire_heat_capacity(metric(10), ConductorKind::bare_copper).si(), 10e-6 * 3.42265e6 * 1.02,
              1e-6);
}

TEST(ThermalConductivity, ranks_the_metals) {
  EXPECT_GT(thermal_conductivity(ConductorKind::bare_copper), thermal_conductivity(ConductorKind::aluminium));
  EXPECT_GT(thermal_conductivity(ConductorKind::copper_clad_aluminium),
            thermal_conductivity(ConductorKind::aluminium));
}

TEST(Metal, names_its_source) {
  for (const ConductorKind kind : kinds) EXPECT_GT(metal(kind).source.size(), 20u);
}

// Outer diameters that the fit is made to: 9.0, 12.5, 14.5 and 17.0 mm at 16, 35, 50 and 70 mm².
TEST(JacketDiameter, meets_the_cables_it_is_fitted_to) {
  const struct { double mm2, mm; } cables[] = {{16, 9.0}, {35, 12.5}, {50, 14.5}, {70, 17.0}};
  for (const auto& cable : cables) EXPECT_NEAR(jacket_diameter(metric(cable.mm2)).si() * 1e3, cable.mm, 0.15);
}

}  // namespace
}  // namespace ohmtrail::trade
