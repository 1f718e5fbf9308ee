#include "ohmtrail/trade/conductor.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "trade/tables/conductors.hpp"
#include "trade/tables/gauges.hpp"

namespace ohmtrail::trade {
namespace {

using units::Length;

constexpr double largest_7_strand_mm2 = 34;  // 2 AWG is 33.6 mm²

Length strand_diameter(const Gauge& gauge, Stranding stranding) {
  const int stranded =
      gauge.area.si() * 1e6 < largest_7_strand_mm2 ? tables::strands_up_to_2_awg : tables::strands_above;
  const int strands = stranding == Stranding::solid ? 1 : stranded;
  return Length{std::sqrt(4 / std::numbers::pi * gauge.area.si() / strands)};
}

double tin_factor_by_strand(Length diameter) {
  const auto row =
      std::find_if(tables::tin_rows.begin(), tables::tin_rows.end(),
                   [&](const tables::TinRow& r) { return diameter.si() * 1e3 >= r.diameter_from; });
  return row->resistivity / (tables::copper.resistivity.si() * 1e6);
}

double tin_factor_metric(const Gauge& gauge) {
  const double mm2 = gauge.area.si() * 1e6;
  const auto nearest = std::min_element(tables::metric_rows.begin(), tables::metric_rows.end(),
                                        [mm2](const auto& a, const auto& b) {
                                          return std::abs(std::log(a.square_millimetres / mm2)) <
                                                 std::abs(std::log(b.square_millimetres / mm2));
                                        });
  return nearest->class5_coated / nearest->class5_plain;
}

}  // namespace

const Metal& metal(ConductorKind kind) {
  switch (kind) {
    case ConductorKind::aluminium:
      return tables::aluminium;
    case ConductorKind::copper_clad_aluminium:
      return tables::copper_clad_aluminium;
    case ConductorKind::bare_copper:
    case ConductorKind::tinned_copper:
      break;
  }
  return tables::copper;
}

double lay_factor(Stranding stranding) {
  return stranding == Stranding::stranded ? tables::lay : 1;
}

double tin_factor(const Gauge& gauge, ConductorKind kind, Stranding stranding) {
  if (kind != ConductorKind::tinned_copper) return 1;
  return gauge.system == GaugeSystem::metric ? tin_factor_metric(gauge)
                                             : tin_factor_by_strand(strand_diameter(gauge, stranding));
}

units::Resistance wire_resistance_at_20C(const Gauge& gauge, Length length, ConductorKind kind,
                                         Stranding stranding) {
  const double factor = lay_factor(stranding) * tin_factor(gauge, kind, stranding);
  return factor * (metal(kind).resistivity * length / gauge.area);
}

double temperature_coefficient(ConductorKind kind) {
  return metal(kind).temperature_coefficient;
}

double resistance_factor(ConductorKind kind, units::Temperature temperature) {
  return 1 + temperature_coefficient(kind) * (temperature - units::Temperature{20}).si();
}

units::Mass conductor_mass(const Gauge& gauge, Length length, ConductorKind kind) {
  return tables::lay * (metal(kind).density * (gauge.area * length));
}

units::ThermalConductivity thermal_conductivity(ConductorKind kind) {
  return metal(kind).thermal_conductivity;
}

units::HeatCapacityPerLength wire_heat_capacity(const Gauge& gauge, ConductorKind kind) {
  return tables::lay * (metal(kind).specific_heat * (metal(kind).density * gauge.area));
}

Length jacket_diameter(const Gauge& gauge) {
  const double solid_mm = std::sqrt(4 / std::numbers::pi * gauge.area.si()) * 1e3;
  return Length{(1.67 + 1.624 * solid_mm) * 1e-3};
}

}  // namespace ohmtrail::trade
