#include "ohmtrail/trade/battery_charge.hpp"

#include <algorithm>
#include <array>

#include "trade/battery_curve.hpp"

namespace ohmtrail::trade {
namespace {

using units::Fraction;
using units::Temperature;
using units::Voltage;

// US Army TM 5-4210-230-14&P-1, battery Table 2, 26.7 °C; volts of the matching open-circuit table divided by
// six.
constexpr std::array<CurvePoint, 5> flooded_volts_by_charge{
    {{0, 11.89 / 6}, {0.25, 12.06 / 6}, {0.5, 12.24 / 6}, {0.75, 12.45 / 6}, {1, 12.65 / 6}}};
constexpr std::array<CurvePoint, 5> gravity_by_charge{
    {{0, 1.120}, {0.25, 1.155}, {0.5, 1.190}, {0.75, 1.225}, {1, 1.265}}};
constexpr std::array<CurvePoint, 5> volts_by_gravity{
    {{1.120, 11.89 / 6}, {1.155, 12.06 / 6}, {1.190, 12.24 / 6}, {1.225, 12.45 / 6}, {1.265, 12.65 / 6}}};
constexpr std::array<CurvePoint, 5> freezing_by_gravity{
    {{1.120, -9.4}, {1.155, -15.0}, {1.190, -26.1}, {1.225, -37.2}, {1.265, -59.5}}};

// From memory: sealed-battery maker technical manual, 24 h after charge. US Army TM 9-6115-730-24 accepts
// 12.8 to 13.0 V when full.
constexpr std::array<CurvePoint, 5> agm_volts_by_charge{
    {{0, 11.80 / 6}, {0.25, 12.00 / 6}, {0.5, 12.30 / 6}, {0.75, 12.60 / 6}, {1, 12.80 / 6}}};

// Public data set of 12 V lead-acid voltage against temperature and charge, gel column at 26.7 °C.
constexpr std::array<CurvePoint, 5> gel_volts_by_charge{
    {{0, 11.80 / 6}, {0.25, 12.00 / 6}, {0.5, 12.40 / 6}, {0.75, 12.60 / 6}, {1, 12.80 / 6}}};

// Public pseudo open-circuit voltage of a lithium iron phosphate cell at C/32, mean of charge and discharge,
// piecewise-linear breakpoints.
constexpr std::array<CurvePoint, 10> lfp_volts_by_charge{{{0, 2.0102},
                                                          {0.0033, 2.4177},
                                                          {0.0117, 2.7405},
                                                          {0.0267, 2.9299},
                                                          {0.0534, 3.0872},
                                                          {0.0885, 3.1942},
                                                          {0.2972, 3.2772},
                                                          {0.9833, 3.3511},
                                                          {0.995, 3.4180},
                                                          {1, 3.5981}}};
constexpr double lfp_plateau_top = 3.3511;

// The same data set, 12 V flooded column at full less its 12.650 V at 26.7 °C; every state of charge shifts
// alike.
constexpr std::array<CurvePoint, 13> shift_of_12_volts{{{-17.8, -0.134},
                                                        {-12.2, -0.108},
                                                        {-6.7, -0.084},
                                                        {-1.1, -0.062},
                                                        {4.4, -0.044},
                                                        {10.0, -0.028},
                                                        {15.6, -0.016},
                                                        {21.1, -0.007},
                                                        {26.7, 0},
                                                        {32.2, 0.005},
                                                        {37.8, 0.008},
                                                        {43.3, 0.011},
                                                        {48.9, 0.013}}};

std::span<const CurvePoint> volts_by_charge(Chemistry chemistry) {
  switch (chemistry) {
    case Chemistry::agm:
      return agm_volts_by_charge;
    case Chemistry::gel:
      return gel_volts_by_charge;
    case Chemistry::lfp:
      return lfp_volts_by_charge;
    case Chemistry::flooded:
      break;
  }
  return flooded_volts_by_charge;
}

Voltage shift(Chemistry chemistry, Temperature battery) {
  return chemistry == Chemistry::lfp ? Voltage{0} : rest_voltage_shift(battery);
}

}  // namespace

double gravity_at_reference(double as_read, Temperature electrolyte) {
  constexpr double per_kelvin = 0.004 * 9 / 50;  // 0.004 per 10 °F
  return as_read + per_kelvin * (electrolyte - reference_electrolyte_temperature).si();
}

double gravity_at_20_celsius(double as_read, Temperature electrolyte) {
  return as_read + 0.0007 * (electrolyte.celsius() - 20);
}

Voltage rest_voltage_shift(Temperature battery) {
  return Voltage{on_curve(shift_of_12_volts, battery.celsius()) / 6};
}

Voltage rested_cell(Chemistry chemistry, Fraction charge, Temperature battery) {
  const double volts = on_curve(volts_by_charge(chemistry), charge.of_one());
  if (chemistry == Chemistry::lfp) return Voltage{std::min(volts, lfp_plateau_top)};
  return Voltage{volts} + shift(chemistry, battery);
}

Fraction charge_at_rest(Chemistry chemistry, Voltage cell_volts, Temperature battery) {
  const auto at_reference = cell_volts - shift(chemistry, battery);
  return Fraction{back_on_curve(volts_by_charge(chemistry), at_reference.si())};
}

Voltage most_at_rest(Chemistry chemistry) {
  switch (chemistry) {
    case Chemistry::agm:
    case Chemistry::gel:
      return Voltage{13.0 / 6};  // US Army TM 9-6115-730-24: 12.8 to 13.0 V
    case Chemistry::lfp:
      return Voltage{3.4};  // from memory: widely printed rested chart
    case Chemistry::flooded:
      break;
  }
  return Voltage{12.73 / 6};  // from memory: deep-cycle guide, 1.277 when full
}

ChargeRange charge_range_at_rest(Chemistry chemistry, Voltage cell_volts, Temperature battery,
                                 Voltage doubt) {
  return {charge_at_rest(chemistry, cell_volts - doubt, battery),
          charge_at_rest(chemistry, cell_volts + doubt, battery)};
}

Fraction charge_at_gravity(double gravity) {
  return Fraction{back_on_curve(gravity_by_charge, gravity)};
}

double gravity_at_charge(Fraction charge) {
  return on_curve(gravity_by_charge, charge.of_one());
}

Voltage cell_volts_at_gravity(double gravity) {
  // Beyond the table the difference stays what it is at the table's end.
  if (gravity > volts_by_gravity.back().x)
    return Voltage{gravity + volts_by_gravity.back().y - volts_by_gravity.back().x};
  if (gravity < volts_by_gravity.front().x)
    return Voltage{gravity + volts_by_gravity.front().y - volts_by_gravity.front().x};
  return Voltage{on_curve(volts_by_gravity, gravity)};
}

Temperature freezing_point(double gravity) {
  return Temperature{on_curve(freezing_by_gravity, gravity)};
}

}  // namespace ohmtrail::trade
