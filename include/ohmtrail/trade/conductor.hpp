#pragma once
#include <string_view>

#include "ohmtrail/trade/words.hpp"
#include "ohmtrail/units/quantity.hpp"

/// What a length of wire is made of, and from it its resistance, mass and heat capacity.
namespace ohmtrail::trade {

enum class Stranding { stranded, solid };

/// Physical constants of one conductor metal at 20 °C.
struct Metal {
  units::Resistivity resistivity;
  double temperature_coefficient;  ///< 1/K at 20 °C
  units::Density density;
  units::ThermalConductivity thermal_conductivity;
  units::SpecificHeat specific_heat;
  std::string_view source;
};

[[nodiscard]] const Metal& metal(ConductorKind kind);

/// Length of strand over length of cable, times the like: how much more a stranded conductor resists than a
/// solid one of the same area. NEC chapter 9 table 8: 1.018 to 1.025, middle 1.02.
[[nodiscard]] double lay_factor(Stranding stranding);

/// How much more a tinned conductor resists than a plain one of the same size. AWG and SAE: the ASTM B33
/// maximum for the diameter of one strand of class B stranding (which reproduces the coated column of NEC
/// chapter 9 table 8); mm²: metal-coated over plain of IEC 60228 class 5. 1 for conductors that are not
/// tinned.
[[nodiscard]] double tin_factor(const Gauge& gauge, ConductorKind kind,
                                Stranding stranding = Stranding::stranded);

/// R = ρ20 · k_lay · k_tin · L / A. Wire on boats is stranded (33 CFR 183.425(a)); solid is for comparison.
[[nodiscard]] units::Resistance wire_resistance_at_20C(const Gauge& gauge, units::Length length,
                                                       ConductorKind kind,
                                                       Stranding stranding = Stranding::stranded);

/// α20 in 1/K.
[[nodiscard]] double temperature_coefficient(ConductorKind kind);

/// R(T) / R(20 °C) = 1 + α20 (T − 20 °C).
[[nodiscard]] double resistance_factor(ConductorKind kind, units::Temperature temperature);

/// Mass of the metal alone, lay included.
[[nodiscard]] units::Mass conductor_mass(const Gauge& gauge, units::Length length, ConductorKind kind);

[[nodiscard]] units::ThermalConductivity thermal_conductivity(ConductorKind kind);

/// Heat that a metre of the metal takes up for one kelvin.
[[nodiscard]] units::HeatCapacityPerLength wire_heat_capacity(const Gauge& gauge, ConductorKind kind);

/// Outer diameter of the jacket of a single-core cable: 1.67 mm + 1.624 · √(4A/π), common practice: fitted to
/// 9.0, 12.5, 14.5 and 17.0 mm at 16, 35, 50 and 70 mm².
[[nodiscard]] units::Length jacket_diameter(const Gauge& gauge);

}  // namespace ohmtrail::trade
