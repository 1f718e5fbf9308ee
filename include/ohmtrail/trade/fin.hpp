#pragma once
#include <span>

#include "ohmtrail/trade/words.hpp"
#include "ohmtrail/units/quantity.hpp"

/// How warm a joint becomes whose heat must leave along the cables on its sides, each an infinite fin. An
/// estimate: give it to 5 K.
namespace ohmtrail::trade {

/// Dry air at atmospheric pressure.
struct Air {
  double thermal_conductivity;  ///< W/(m·K)
  double kinematic_viscosity;   ///< m²/s
  double thermal_diffusivity;   ///< m²/s
  double expansion;             ///< 1/K
};
/// Ideal gas at 101.325 kPa; viscosity and conductivity by the formulas of the U.S. Standard Atmosphere,
/// 1976.
[[nodiscard]] Air air_at(units::Temperature film);

/// Nusselt number of a long horizontal cylinder in still fluid: Churchill and Chu, 1975; Rayleigh below 1e12.
[[nodiscard]] double churchill_chu(double rayleigh, double prandtl);

/// Rayleigh number g β ΔT D³ / (ν α).
[[nodiscard]] double rayleigh(const Air& air, units::Length diameter, units::TemperatureDifference rise);

/// Natural convection from a horizontal cylinder at `rise` over still air.
[[nodiscard]] units::HeatTransferCoefficient convection(units::Length diameter, units::Temperature ambient,
                                                        units::TemperatureDifference rise);

/// Radiation to walls at ambient temperature, σ ε (T⁴ − T₀⁴) / ΔT.
[[nodiscard]] units::HeatTransferCoefficient radiation(double emissivity, units::Temperature ambient,
                                                       units::TemperatureDifference rise);

/// Emissivity of a cable's jacket (from memory: 0.90 to 0.95 for PVC and rubber).
inline constexpr double jacket_emissivity = 0.92;

/// One cable that carries heat off.
struct Fin {
  units::Area area;                         ///< metal
  units::ThermalConductivity conductivity;  ///< of the metal
  units::Length diameter;                   ///< outer, over the jacket
  units::HeatCapacityPerLength stored{};    ///< of the metal; 0: it warms at once
};

[[nodiscard]] Fin fin_of(const Gauge& gauge, ConductorKind conductor);

/// √(h p k A): watts that an infinite fin takes for one kelvin at its root.
[[nodiscard]] units::ThermalConductance fin_conductance(const Fin& fin, units::HeatTransferCoefficient h);

/// Length from which a fin counts as infinite, 2.65 / m with m = √(h p / (k A)): 99 % of the heat has left.
[[nodiscard]] units::Length infinite_length(const Fin& fin, units::HeatTransferCoefficient h);

/// Rise of a joint that gives off `heat` along all `fins`, over the cables' own temperature: ΔT = P / Σ √(h p
/// k A), with h at that ΔT. No fins, no rise that could be known: NaN.
[[nodiscard]] units::TemperatureDifference joint_rise(units::Power heat, std::span<const Fin> fins,
                                                      units::Temperature ambient);

}  // namespace ohmtrail::trade
