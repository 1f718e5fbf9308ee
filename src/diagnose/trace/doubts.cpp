#include "diagnose/trace/doubts.hpp"

#include <cmath>

#include "ohmtrail/units/print.hpp"

namespace ohmtrail::diagnose {
namespace {

// Standard deviations beyond which the reading just taken is worth a second look (common practice: three).
constexpr double worth_a_look = 3;

bool in_doubt(const InferredReading& reading, bool last) {
  return reading.suspect || (last && !reading.critical && std::abs(reading.normalised) > worth_a_look);
}

std::string value_in_words(const netlist::Reading& reading, double value) {
  if (std::holds_alternative<netlist::VoltsReading>(reading.what)) return units::print(units::Voltage{value});
  if (std::holds_alternative<netlist::AmpsReading>(reading.what)) return units::print(units::Current{value});
  if (std::holds_alternative<netlist::OhmsReading>(reading.what))
    return units::print(units::Resistance{value});
  return units::print(units::Temperature{value});
}

std::string place_in_words(const netlist::Reading& reading) {
  if (const auto* volts = std::get_if<netlist::VoltsReading>(&reading.what))
    return '"' + volts->red + "\" to \"" + volts->black + '"';
  if (const auto* amps = std::get_if<netlist::AmpsReading>(&reading.what)) return "in \"" + amps->in + '"';
  if (const auto* ohms = std::get_if<netlist::OhmsReading>(&reading.what))
    return "across \"" + ohms->across + '"';
  return "at \"" + std::get<netlist::TemperatureReading>(reading.what).at + '"';
}

std::string slip_in_words(const netlist::Reading& taken, const InferredReading& reading) {
  const bool clamp = std::holds_alternative<netlist::AmpsReading>(taken.what);
  switch (reading.slip) {
    case Slip::swapped_probes:
      return clamp ? " Was the clamp the other way round?" : " Were the probes swapped?";
    case Slip::wrong_unit:
      return std::holds_alternative<netlist::VoltsReading>(taken.what) ? " Was it millivolts?"
                                                                       : " Was it in another unit?";
    case Slip::load_off:
      return " Was the load off?";
    case Slip::wrong_case:
      return " It fits \"" + reading.slip_case + "\": was that switched on?";
    case Slip::none:
      break;
  }
  return "";
}

std::string doubt(const netlist::System& system, const InferredReading& row, bool last) {
  const netlist::Reading& reading = system.readings[row.index];
  const std::string expected = value_in_words(reading, row.would_be);
  if (last) {
    return "That does not fit the other readings: " + value_in_words(reading, row.measured) +
           ", where they ask for about " + expected + '.' + slip_in_words(reading, row) +
           " If you misread it: back. If it stands, go on.";
  }
  return "Reading " + std::to_string(row.index + 1) + " (" + place_in_words(reading) + ", " +
         value_in_words(reading, row.measured) + ") does not fit the others: they ask for about " + expected +
         '.' + slip_in_words(reading, row) + " It counts for less from here on.";
}

}  // namespace

std::vector<std::string> doubts_in_words(const netlist::System& system, const InferResult& inference,
                                         std::set<std::size_t>& told) {
  std::vector<std::string> out;
  std::set<std::size_t> now;
  for (const InferredReading& row : inference.readings) {
    const bool last = row.index + 1 == system.readings.size();
    if (!in_doubt(row, last)) continue;
    now.insert(row.index);
    if (!told.contains(row.index)) out.push_back(doubt(system, row, last));
  }
  told = std::move(now);
  return out;
}

}  // namespace ohmtrail::diagnose
