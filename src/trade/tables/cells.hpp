#pragma once
#include <cmath>
#include <string>
#include <string_view>

#include "ohmtrail/trade/gauge.hpp"
#include "ohmtrail/trade/table.hpp"

/// Small hands for filling tables.
namespace ohmtrail::trade::tables {

inline Cell words(std::string_view text) {
  return text.empty() ? Cell{} : Cell{std::string(text)};
}
inline Cell number_or_none(double value) {
  return value == 0 ? Cell{} : Cell{value};
}

/// Computed values carry so many figures that they can be checked, not the noise behind them.
inline double figures(double value, int significant = 6) {
  if (value == 0 || !std::isfinite(value)) return value;
  const double scale = std::pow(10.0, significant - 1 - std::floor(std::log10(std::abs(value))));
  return std::round(value * scale) / scale;
}

/// "2/0", "12": a gauge number without its system.
inline Cell gauge_cell(int number) {
  const std::string text = print(Gauge{GaugeSystem::awg, number, {}});
  return text.substr(0, text.find(' '));
}

}  // namespace ohmtrail::trade::tables
