#pragma once
#include <string>

#include "ohmtrail/units/quantity.hpp"

/// How far the meter of an ordinary tool bag may be off, where the netlist names no meter.
namespace ohmtrail::trade {

/// ±(percent of reading + counts × last digit): a 95 % bound.
struct MeterAccuracy {
  double percent = 0;
  double counts = 0;
  double last_digit = 0;  ///< SI unit of the quantity; of the range that the reading falls in
  std::string source;

  /// The bound for a reading, in its SI unit.
  [[nodiscard]] double bound(double reading) const;
};

/// Hand multimeter of 6000 counts that ranges itself: 600 mV, 6 V, 60 V, 600 V.
[[nodiscard]] MeterAccuracy usual_accuracy(units::Voltage reading);
/// Hall clamp with ranges of 60 A and 1000 A.
[[nodiscard]] MeterAccuracy usual_accuracy(units::Current reading);
/// Four-wire milliohm meter with ranges of 20 mΩ, 200 mΩ, 2 Ω and 20 Ω.
[[nodiscard]] MeterAccuracy usual_accuracy(units::Resistance reading);
/// Infrared thermometer: 2 °C or 2 % of the reading, whichever is more.
[[nodiscard]] MeterAccuracy usual_accuracy(units::Temperature reading);

}  // namespace ohmtrail::trade
