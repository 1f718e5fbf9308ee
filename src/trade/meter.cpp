#include "ohmtrail/trade/meter.hpp"

#include <algorithm>
#include <cmath>
#include <span>

#include "trade/tables/meters.hpp"

namespace ohmtrail::trade {
namespace {

/// The narrowest range that holds the reading; the widest for what is over all of them.
MeterAccuracy in_range(std::span<const tables::RangeRow> ranges, double reading) {
  const auto fits = [reading](const tables::RangeRow& row) { return std::abs(reading) <= row.up_to; };
  auto row = std::find_if(ranges.begin(), ranges.end(), fits);
  if (row == ranges.end()) --row;
  return {row->percent, row->counts, row->last_digit, std::string(tables::meter_source)};
}

}  // namespace

double MeterAccuracy::bound(double reading) const {
  return percent / 100 * std::abs(reading) + counts * last_digit;
}

MeterAccuracy usual_accuracy(units::Voltage reading) {
  return in_range(tables::volt_ranges, reading.si());
}

MeterAccuracy usual_accuracy(units::Current reading) {
  return in_range(tables::amp_ranges, reading.si());
}

MeterAccuracy usual_accuracy(units::Resistance reading) {
  return in_range(tables::ohm_ranges, reading.si());
}

MeterAccuracy usual_accuracy(units::Temperature reading) {
  const bool by_share =
      std::abs(reading.celsius()) * tables::infrared_percent / 100 > tables::infrared_kelvin;
  MeterAccuracy accuracy{by_share ? tables::infrared_percent : 0, 0, tables::infrared_digit,
                         std::string(tables::meter_source)};
  if (!by_share) accuracy.counts = tables::infrared_kelvin / tables::infrared_digit;
  return accuracy;
}

}  // namespace ohmtrail::trade
