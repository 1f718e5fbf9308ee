#pragma once
#include <string>

#include "ohmtrail/units/quantity.hpp"

/// Quantities for people ("12.6 V", "0.35 mΩ") and numbers for machines.
namespace ohmtrail::units {

/// How a number is shown to people.
struct Format {
  int significant = 3;      ///< digits, 1 to 15
  bool keep_zeros = false;  ///< "12.0 V" rather than "12 V", for columns of like numbers
};

/// A number and its unit with the prefix the trade would choose: mΩ down to 0.1 mΩ, µΩ below it.
/// Not-a-number prints as "–".
[[nodiscard]] std::string print(Voltage value, Format format = {});
[[nodiscard]] std::string print(Current value, Format format = {});
[[nodiscard]] std::string print(Resistance value, Format format = {});
[[nodiscard]] std::string print(Power value, Format format = {});
[[nodiscard]] std::string print(Energy value, Format format = {});                 ///< Wh, kWh
[[nodiscard]] std::string print(Charge value, Format format = {});                 ///< Ah
[[nodiscard]] std::string print(Length value, Format format = {});                 ///< m, mm
[[nodiscard]] std::string print(Area value, Format format = {});                   ///< mm²
[[nodiscard]] std::string print(Time value, Format format = {});                   ///< s, min, h
[[nodiscard]] std::string print(Mass value, Format format = {});                   ///< kg, g
[[nodiscard]] std::string print(Temperature value, Format format = {});            ///< °C
[[nodiscard]] std::string print(TemperatureDifference value, Format format = {});  ///< K
[[nodiscard]] std::string print(Fraction value, Format format = {});               ///< %

/// "6 ft", below one foot "4 in".
[[nodiscard]] std::string print_feet(Length value, Format format = {});
/// "77 °F".
[[nodiscard]] std::string print_fahrenheit(Temperature value, Format format = {});

/// A plain number with so many significant digits, never in exponent form.
[[nodiscard]] std::string print_number(double value, Format format = {});

/// The shortest text that reads back to the same double; "null" where there is no finite value.
[[nodiscard]] std::string exact(double value);

}  // namespace ohmtrail::units
