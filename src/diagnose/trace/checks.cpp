#include "diagnose/trace/checks.hpp"

#include <algorithm>

#include "ohmtrail/diagnose/point_in_words.hpp"

namespace ohmtrail::diagnose {
namespace {

constexpr std::size_t checks = 2;

bool across_a_battery(const netlist::System& system, const netlist::VoltsReading& volts) {
  return std::any_of(system.batteries.begin(), system.batteries.end(),
                     [&](const auto& b) { return volts.red == b.plus && volts.black == b.minus; });
}

NextOption again(const netlist::System& system, const netlist::Reading& reading) {
  NextOption out;
  out.purpose = Purpose::opening;
  out.in_case = reading.in_case;
  out.why = "The battery sinks and the load changes while you work: this keeps the later readings honest.";
  if (const auto* amps = std::get_if<netlist::AmpsReading>(&reading.what)) {
    out.in = amps->in;
    out.where = clamp_in_words(system, amps->in, amps->value.si());
  } else {
    const auto& volts = std::get<netlist::VoltsReading>(reading.what);
    out.red = volts.red;
    out.black = volts.black;
    out.where =
        "red on " + point_in_words(system, out.red) + ", black on " + point_in_words(system, out.black);
  }
  return out;
}

}  // namespace

std::optional<NextOption> check_due(const netlist::System& system, const std::string& in_case) {
  if (system.readings.size() <= opening_readings) return std::nullopt;
  const std::size_t place = (system.readings.size() - opening_readings) % (between_checks + checks);
  if (place < between_checks) return std::nullopt;
  const bool clamp = place == between_checks;
  for (const netlist::Reading& reading : system.readings) {
    const auto* volts = std::get_if<netlist::VoltsReading>(&reading.what);
    const bool fits = clamp ? std::holds_alternative<netlist::AmpsReading>(reading.what)
                            : volts != nullptr && across_a_battery(system, *volts);
    if (fits && reading.in_case == in_case) return again(system, reading);
  }
  return std::nullopt;
}

}  // namespace ohmtrail::diagnose
