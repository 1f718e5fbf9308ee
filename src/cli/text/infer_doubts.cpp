#include "cli/text/infer_doubts.hpp"

#include <fmt/format.h>

#include "cli/text/infer_words.hpp"
#include "ohmtrail/units/print.hpp"

namespace ohmtrail::cli {
namespace {

using namespace diagnose;
namespace u = units;

std::string unit_value(const netlist::Reading& reading, double value) {
  if (std::holds_alternative<netlist::AmpsReading>(reading.what)) return u::print(u::Current{value});
  if (std::holds_alternative<netlist::OhmsReading>(reading.what)) return print_ohms(value);
  if (std::holds_alternative<netlist::TemperatureReading>(reading.what))
    return u::print(u::Temperature{value});
  return print_volts(value);
}

std::string what_was_read(const netlist::Reading& reading) {
  if (const auto* v = std::get_if<netlist::VoltsReading>(&reading.what))
    return fmt::format("\"{}\" to \"{}\"", v->red, v->black);
  if (const auto* a = std::get_if<netlist::AmpsReading>(&reading.what))
    return fmt::format("in \"{}\"", a->in);
  if (const auto* o = std::get_if<netlist::OhmsReading>(&reading.what))
    return fmt::format("across \"{}\"", o->across);
  return fmt::format("at \"{}\"", std::get<netlist::TemperatureReading>(reading.what).at);
}

std::string slip_in_words(const netlist::Reading& taken, const InferredReading& reading) {
  const bool clamp = std::holds_alternative<netlist::AmpsReading>(taken.what);
  switch (reading.slip) {
    case Slip::swapped_probes:
      return clamp ? " The clamp looks the other way round." : " The probes look swapped.";
    case Slip::wrong_unit:
      return std::holds_alternative<netlist::VoltsReading>(taken.what)
                 ? " It looks like millivolts entered as volts, or the like."
                 : " It looks like one in another unit.";
    case Slip::load_off:
      return " It looks like a reading taken with the load off.";
    case Slip::wrong_case:
      return fmt::format(" It fits the case \"{}\".", reading.slip_case);
    case Slip::none:
      break;
  }
  return "";
}

}  // namespace

void show_doubts(Sheet& sheet, const netlist::System& system, const InferResult& result) {
  bool titled = false;
  std::size_t critical = 0;
  for (const InferredReading& r : result.readings) {
    critical += r.critical ? 1 : 0;
    if (!r.suspect) continue;
    if (!titled) {
      sheet.line();
      sheet.line("Readings in doubt", Ink::strong);
      titled = true;
    }
    const netlist::Reading& reading = system.readings[r.index];
    sheet.item("  - ",
               fmt::format("Reading {} ({}): {} does not fit; going by the others it would be about {}.{}",
                           r.index + 1, what_was_read(reading), unit_value(reading, r.measured),
                           unit_value(reading, r.would_be), slip_in_words(reading, r)),
               Ink::warning);
  }
  if (critical > 0) {
    sheet.line();
    sheet.paragraph(
        fmt::format(
            "{} of {} readings {}, and an error in {} could not be found.", critical, result.readings.size(),
            critical == 1 ? "stands alone: nothing else checks it" : "stand alone: nothing else checks them",
            critical == 1 ? "it" : "one"),
        Ink::faint);
  }
}

}  // namespace ohmtrail::cli
