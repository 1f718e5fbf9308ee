#pragma once
#include <optional>

#include "ohmtrail/trade/words.hpp"
#include "ohmtrail/units/quantity.hpp"

/// State of charge from rested volts and specific gravity, and back. Volts are of one cell unless said
/// otherwise.
namespace ohmtrail::trade {

/// Where the published gravity, voltage and state-of-charge tables hold: 26.7 °C (80 °F).
inline constexpr units::Temperature reference_electrolyte_temperature{26.7};

/// A hydrometer's reading brought to 26.7 °C: 0.004 more for each 10 °F (5.56 K) that the electrolyte is
/// warmer. Source: generator-set operation manuals (public), figure specific gravity and temperature.
[[nodiscard]] double gravity_at_reference(double as_read, units::Temperature electrolyte);

/// The same for a float marked for 20 °C: 0.0007 more for each kelvin above 20 °C.
/// Source: small-engine operator manual (public), SG20 = reading + 0.0007 (t − 20 °C).
[[nodiscard]] double gravity_at_20_celsius(double as_read, units::Temperature electrolyte);

/// What rested lead-acid volts differ from those at 26.7 °C, per cell: a colder battery reads LOWER.
/// Source: public data set of 12 V lead-acid voltage against temperature, divided by six.
[[nodiscard]] units::Voltage rest_voltage_shift(units::Temperature battery);

/// Rested volts of one cell. Lithium iron phosphate: on the mean of charge and discharge, and never above the
/// top of its plateau, where a full cell comes to rest.
[[nodiscard]] units::Voltage rested_cell(Chemistry chemistry, units::Fraction charge,
                                         units::Temperature battery);

/// State of charge of a cell that rests at `volts`, 0 to 1.
[[nodiscard]] units::Fraction charge_at_rest(Chemistry chemistry, units::Voltage cell_volts,
                                             units::Temperature battery);

/// The most that a full cell of this chemistry rests at; above it there is surface charge.
[[nodiscard]] units::Voltage most_at_rest(Chemistry chemistry);

/// What a rest voltage leaves open: all states of charge whose rested volts lie within `doubt` of it.
struct ChargeRange {
  units::Fraction least, most;
};
[[nodiscard]] ChargeRange charge_range_at_rest(Chemistry chemistry, units::Voltage cell_volts,
                                               units::Temperature battery, units::Voltage doubt);

/// Flooded cells: state of charge of a gravity at 26.7 °C on the 1.265 scale, 0 to 1.
[[nodiscard]] units::Fraction charge_at_gravity(double gravity);

/// Flooded cells: gravity at 26.7 °C that belongs to a state of charge on the 1.265 scale.
[[nodiscard]] double gravity_at_charge(units::Fraction charge);

/// Flooded cells: rested volts at 26.7 °C that a gravity makes. The difference between the two drifts from
/// 0.862 V (empty) to 0.843 V (full): no single constant fits the table.
[[nodiscard]] units::Voltage cell_volts_at_gravity(double gravity);

/// Where the electrolyte of a flooded cell freezes.
[[nodiscard]] units::Temperature freezing_point(double gravity);

}  // namespace ohmtrail::trade
