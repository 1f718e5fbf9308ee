#include "ohmtrail/trade/fin.hpp"

#include <cmath>
#include <limits>
#include <numbers>

#include "ohmtrail/trade/conductor.hpp"

namespace ohmtrail::trade {
namespace {

using units::HeatTransferCoefficient;
using units::Length;
using units::Power;
using units::Temperature;
using units::TemperatureDifference;
using units::ThermalConductance;

constexpr double gravity = 9.80665;                  // m/s², standard
constexpr double stefan_boltzmann = 5.670374419e-8;  // W/(m²·K⁴), CODATA 2018
constexpr double zero_celsius = 273.15;              // K
constexpr double air_gas_constant = 287.05;          // J/(kg·K)
constexpr double air_specific_heat = 1006;           // J/(kg·K), near 300 K
constexpr double atmosphere = 101325;                // Pa

ThermalConductance sum_of(std::span<const Fin> fins, Temperature ambient, TemperatureDifference rise) {
  ThermalConductance sum{0};
  for (const Fin& fin : fins) {
    const auto h = convection(fin.diameter, ambient, rise) + radiation(jacket_emissivity, ambient, rise);
    sum += fin_conductance(fin, h);
  }
  return sum;
}

}  // namespace

Air air_at(Temperature film) {
  const double t = film.celsius() + zero_celsius;
  const double density = atmosphere / (air_gas_constant * t);
  // U.S. Standard Atmosphere, 1976, eq. 51 (viscosity) and eq. 53 (conductivity), from memory.
  const double viscosity = 1.458e-6 * std::pow(t, 1.5) / (t + 110.4);
  const double conductivity = 2.64638e-3 * std::pow(t, 1.5) / (t + 245.4 * std::pow(10.0, -12 / t));
  return {conductivity, viscosity / density, conductivity / (density * air_specific_heat), 1 / t};
}

double churchill_chu(double rayleigh_number, double prandtl) {
  const double film = std::pow(1 + std::pow(0.559 / prandtl, 9.0 / 16), 8.0 / 27);
  const double root = 0.60 + 0.387 * std::pow(rayleigh_number, 1.0 / 6) / film;
  return root * root;
}

double rayleigh(const Air& air, Length diameter, TemperatureDifference rise) {
  return gravity * air.expansion * std::abs(rise.si()) * std::pow(diameter.si(), 3) /
         (air.kinematic_viscosity * air.thermal_diffusivity);
}

HeatTransferCoefficient convection(Length diameter, Temperature ambient, TemperatureDifference rise) {
  const Air air = air_at(ambient + rise / 2);
  const double nusselt =
      churchill_chu(rayleigh(air, diameter, rise), air.kinematic_viscosity / air.thermal_diffusivity);
  return HeatTransferCoefficient{nusselt * air.thermal_conductivity / diameter.si()};
}

HeatTransferCoefficient radiation(double emissivity, Temperature ambient, TemperatureDifference rise) {
  const double cold = ambient.celsius() + zero_celsius, hot = cold + rise.si();
  // (T⁴ − T₀⁴) / (T − T₀), written so that it holds at no rise as well.
  return HeatTransferCoefficient{stefan_boltzmann * emissivity * (hot * hot + cold * cold) * (hot + cold)};
}

Fin fin_of(const Gauge& gauge, ConductorKind conductor) {
  return {gauge.area, thermal_conductivity(conductor), jacket_diameter(gauge),
          wire_heat_capacity(gauge, conductor)};
}

ThermalConductance fin_conductance(const Fin& fin, HeatTransferCoefficient h) {
  const double perimeter = std::numbers::pi * fin.diameter.si();
  return ThermalConductance{std::sqrt(h.si() * perimeter * fin.conductivity.si() * fin.area.si())};
}

Length infinite_length(const Fin& fin, HeatTransferCoefficient h) {
  // m = √(h p k A) / (k A)
  const double m = fin_conductance(fin, h).si() / (fin.conductivity.si() * fin.area.si());
  return Length{2.65 / m};
}

TemperatureDifference joint_rise(Power heat, std::span<const Fin> fins, Temperature ambient) {
  if (fins.empty()) return TemperatureDifference{std::numeric_limits<double>::quiet_NaN()};
  if (!(heat > Power{0}))
    return TemperatureDifference{heat.si() == 0 ? 0 : std::numeric_limits<double>::quiet_NaN()};
  // The heat carried off grows with the rise faster than in proportion (h grows too), so rise · Σ(rise) = P
  // has one root, and the conductance at no rise bounds it from above.
  double low = 0, high = (heat / sum_of(fins, ambient, TemperatureDifference{0})).si();
  while (high - low > 1e-9 * high) {
    const double middle = (low + high) / 2;
    const TemperatureDifference rise{middle};
    (sum_of(fins, ambient, rise) * rise < heat ? low : high) = middle;
  }
  return TemperatureDifference{(low + high) / 2};
}

}  // namespace ohmtrail::trade
