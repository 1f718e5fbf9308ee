#include "ohmtrail/trade/battery_charge.hpp"

#include <algorithm>
#include <array>

#include "trade/battery_curve.hpp"
#include "trade/battery_rows.hpp"

namespace ohmtrail::trade {
namespace {

using units::Fraction;
using units::Temperature;
using units::Voltage;

/// A curve from two columns of a table.
template <class Row, std::size_t N, class X, class Y>
constexpr std::array<CurvePoint, N> curve_of(const std::array<Row, N>& rows, X x, Y y) {
  std::array<CurvePoint, N> curve{};
  for (std::size_t i = 0; i < N; ++i) curve[i] = {x(rows[i]), y(rows[i])};
  return curve;
}

constexpr auto charge_of = [](const auto& row) { return row.charge; };
constexpr auto gravity_of = [](const ChargeRow& row) { return row.gravity; };
constexpr auto cell_volts_of = [](const auto& row) { return row.volts_of_12 / 6; };

constexpr auto flooded_volts_by_charge = curve_of(flooded_rows, charge_of, cell_volts_of);
constexpr auto agm_volts_by_charge = curve_of(agm_rows, charge_of, cell_volts_of);
constexpr auto gel_volts_by_charge = curve_of(gel_rows, charge_of, cell_volts_of);
constexpr auto lfp_volts_by_charge =
    curve_of(lfp_rows, charge_of, [](const CellRow& row) { return row.volts; });
constexpr auto gravity_by_charge = curve_of(flooded_rows, charge_of, gravity_of);
constexpr auto volts_by_gravity = curve_of(flooded_rows, gravity_of, cell_volts_of);
constexpr auto freezing_by_gravity =
    curve_of(flooded_rows, gravity_of, [](const ChargeRow& row) { return row.freezes_celsius; });
constexpr auto shift_by_temperature = curve_of(
    rest_temperature_rows, [](const RestTemperatureRow& row) { return row.celsius; },
    [](const RestTemperatureRow& row) { return (row.full_volts_of_12 - full_volts_at_reference) / 6; });

// The last breakpoint before the steep end, which only a charging cell stands on.
constexpr double lfp_plateau_top = lfp_rows[7].volts;

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
  return Voltage{on_curve(shift_by_temperature, battery.celsius())};
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
