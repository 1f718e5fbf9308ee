#include "ohmtrail/units/print.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <initializer_list>
#include <string_view>

namespace ohmtrail::units {
namespace {

struct Scale {
  double from;  ///< smallest magnitude in SI that is shown in this unit
  double unit;  ///< the unit in SI
  std::string_view name;
};

constexpr std::string_view missing = "–";

void drop_trailing_zeros(std::string& text) {
  if (text.find('.') == std::string::npos) return;
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
}

/// Not std::stod: that throws for subnormal numbers and where rounding passes the largest double.
double rounded_to(double value, int significant) {
  const double rounded = std::strtod(fmt::format("{:.{}e}", value, significant - 1).c_str(), nullptr);
  return std::isfinite(rounded) ? rounded : value;
}

/// The value rounded to so many significant digits, as plain decimals.
std::string decimals(double value, Format format) {
  const int significant = std::clamp(format.significant, 1, 15);
  const double rounded = rounded_to(value, significant);
  if (rounded == 0) return "0";
  const int exponent = static_cast<int>(std::floor(std::log10(std::abs(rounded)) + 1e-12));
  std::string text = fmt::format("{:.{}f}", rounded, std::max(0, significant - 1 - exponent));
  if (!format.keep_zeros) drop_trailing_zeros(text);
  return text;
}

/// Scales run from the largest unit down; rounding happens first, so that 999.9 mV becomes 1 V, not 1000 mV.
std::string scaled(double si, std::initializer_list<Scale> scales, Format format) {
  if (!std::isfinite(si)) return std::string(missing);
  const int significant = std::clamp(format.significant, 1, 15);
  const double magnitude = std::abs(rounded_to(si, significant));
  const Scale* chosen = scales.end() - 1;
  for (const Scale& scale : scales)
    if (magnitude >= scale.from * (1 - 1e-12)) {
      chosen = &scale;
      break;
    }
  if (magnitude == 0)
    chosen = std::find_if(scales.begin(), scales.end(), [](const Scale& s) { return s.unit == 1; });
  if (chosen == scales.end()) chosen = scales.end() - 1;
  return fmt::format("{} {}", decimals(si / chosen->unit, format), chosen->name);
}

}  // namespace

std::string print(Voltage value, Format format) {
  return scaled(value.si(), {{1e3, 1e3, "kV"}, {1, 1, "V"}, {1e-4, 1e-3, "mV"}, {0, 1e-6, "µV"}}, format);
}

std::string print(Current value, Format format) {
  return scaled(value.si(), {{1e4, 1e3, "kA"}, {1, 1, "A"}, {1e-4, 1e-3, "mA"}, {0, 1e-6, "µA"}}, format);
}

std::string print(Resistance value, Format format) {
  return scaled(value.si(), {{1e3, 1e3, "kΩ"}, {1, 1, "Ω"}, {1e-4, 1e-3, "mΩ"}, {0, 1e-6, "µΩ"}}, format);
}

std::string print(Power value, Format format) {
  return scaled(value.si(), {{1e4, 1e3, "kW"}, {1, 1, "W"}, {0, 1e-3, "mW"}}, format);
}

std::string print(Energy value, Format format) {
  return scaled(value.si(), {{3.6e6, 3.6e6, "kWh"}, {0, 3600, "Wh"}}, format);
}

std::string print(Charge value, Format format) {
  return scaled(value.si(), {{0, 3600, "Ah"}}, format);
}

std::string print(Length value, Format format) {
  return scaled(value.si(), {{1e3, 1e3, "km"}, {1, 1, "m"}, {1e-1, 1e-2, "cm"}, {0, 1e-3, "mm"}}, format);
}

std::string print(Area value, Format format) {
  return scaled(value.si(), {{0, 1e-6, "mm²"}}, format);
}

std::string print(Time value, Format format) {
  return scaled(value.si(), {{3600, 3600, "h"}, {60, 60, "min"}, {1, 1, "s"}, {0, 1e-3, "ms"}}, format);
}

std::string print(Mass value, Format format) {
  return scaled(value.si(), {{1, 1, "kg"}, {0, 1e-3, "g"}}, format);
}

std::string print(Temperature value, Format format) {
  return scaled(value.celsius(), {{0, 1, "°C"}}, format);
}

std::string print(TemperatureDifference value, Format format) {
  return scaled(value.si(), {{0, 1, "K"}}, format);
}

std::string print(Fraction value, Format format) {
  return scaled(value.percent(), {{0, 1, "%"}}, format);
}

std::string print_feet(Length value, Format format) {
  return scaled(value.si(), {{0.3048, 0.3048, "ft"}, {0, 0.0254, "in"}}, format);
}

std::string print_fahrenheit(Temperature value, Format format) {
  return scaled(value.celsius() * 1.8 + 32, {{0, 1, "°F"}}, format);
}

std::string print_number(double value, Format format) {
  return std::isfinite(value) ? decimals(value, format) : std::string(missing);
}

std::string exact(double value) {
  return std::isfinite(value) ? fmt::format("{}", value) : "null";
}

}  // namespace ohmtrail::units
