#include <fmt/format.h>

#include <algorithm>

#include "netlist/object.hpp"
#include "netlist/validate.hpp"
#include "ohmtrail/units/print.hpp"

namespace ohmtrail::netlist {

namespace {

std::vector<std::string_view> case_names(const System& system) {
  std::vector<std::string_view> names;
  for (const Case& one : system.cases) names.push_back(one.name);
  return names;
}

std::vector<std::string_view> meter_ids(const System& system) {
  std::vector<std::string_view> ids;
  for (const Meter& meter : system.meters) ids.push_back(meter.id);
  return ids;
}

bool contains(const std::vector<std::string_view>& names, std::string_view name) {
  return std::find(names.begin(), names.end(), name) != names.end();
}

struct Known {
  std::vector<std::string_view> cases, meters;
  bool complete;  ///< whether both sections are there and could be read
};

/// Where one of the names could not be read, an unknown one may be that.
bool is_unknown(const Known& known, const std::vector<std::string_view>& names, std::string_view name) {
  return known.complete && !contains(names, "") && !contains(names, name);
}

void check_case(const Checked& checked, const Known& known, Value value, Reading& reading) {
  const Value at = value.member("case");
  if (value.member("ohms").exists()) {
    if (at.exists()) {
      checked.reader.problems.warning(
          at, {"case-of-ohms", "ohms are read de-energised: the case does not matter", "", "leave it out"});
      reading.in_case.clear();
    }
    return;
  }
  if (!at.exists()) {
    tell_missing_key(checked.reader, value, "case", "the name of the case in which it was read");
  } else if (!reading.in_case.empty() && is_unknown(known, known.cases, reading.in_case)) {
    tell_unknown_name(checked.reader, at, "unknown-case", "case", reading.in_case, known.cases);
  }
}

void check_meter(const Checked& checked, const Known& known, Value value, const Reading& reading) {
  const Value at = value.member("meter");
  if (!at.exists() || reading.meter.empty()) return;
  const auto found = std::find(known.meters.begin(), known.meters.end(), reading.meter);
  if (is_unknown(known, known.meters, reading.meter))
    tell_unknown_name(checked.reader, at, "unknown-meter", "meter", reading.meter, known.meters);
  if (found == known.meters.end()) return;
  const Meter& meter = checked.system.meters[static_cast<std::size_t>(found - known.meters.begin())];
  const bool has[] = {meter.volts.has_value(), meter.amps.has_value(), meter.ohms.has_value(),
                      meter.temperature.has_value()};
  constexpr std::string_view names[] = {"volts", "amps", "ohms", "temperature"};
  if (has[reading.what.index()]) return;
  const std::string_view quantity = names[reading.what.index()];
  checked.reader.problems.warning(
      at, {"meter-without-accuracy",
           fmt::format("the meter \"{}\" has no accuracy for {}", shown(reading.meter), quantity), "",
           "the built-in accuracy is taken"});
}

void check_probes(const Checked& checked, Value value, const VoltsReading& volts) {
  for (const auto& [key, point] : {std::pair{"red", &volts.red}, std::pair{"black", &volts.black}}) {
    const Value at = value.member(key);
    if (!point->empty() && at.exists() && !checked.names.has_point(*point))
      tell_unknown_point(checked, at, *point);
  }
  if (!volts.red.empty() && volts.red == volts.black && value.member("black").exists()) {
    checked.reader.problems.error(value.member("black"),
                                  {"same-point", fmt::format("both probes are on \"{}\"", shown(volts.red)),
                                   "two different points", ""});
  }
  constexpr double beyond =
      3;  // a series string is a few times the nominal at most, and chargers add a quarter
  const Value number = value.member("volts");
  const double nominal = checked.system.info.nominal.si();
  if (number.exists() && nominal > 0 && std::abs(volts.value.si()) > beyond * nominal) {
    checked.reader.problems.warning(
        number,
        {"unusual-reading",
         fmt::format("{} is far above the system's {}", units::print(volts.value),
                     units::print(checked.system.info.nominal)),
         "",
         number.is(Kind::number) ? fmt::format("if millivolts are meant, write \"{} mV\"", number.source())
                                 : ""});
  }
}

void check_element(const Checked& checked, Value at, std::string_view name) {
  if (!name.empty() && at.exists() && !checked.names.has_element(name))
    tell_unknown_element(checked, at, name);
}

void check_ohms(const Checked& checked, Value value, const OhmsReading& ohms) {
  check_element(checked, value.member("across"), ohms.across);
  const Value number = value.member("ohms");
  if (!number.exists() || !number.is(Kind::number) || ohms.value.si() < 1) return;
  checked.reader.problems.warning(
      number,
      {"unusual-resistance", fmt::format("{} is a great deal for a connection", units::print(ohms.value)), "",
       fmt::format("if milliohms are meant, write \"{} mohm\"", number.source())});
}

}  // namespace

void validate_readings(const Checked& checked) {
  const Known known{case_names(checked.system), meter_ids(checked.system), checked.sections_complete};
  std::unordered_map<std::string_view, Value> taken;
  for_each_item(checked.root, "meters", checked.system.meters, [&](Value value, const Meter& meter) {
    const auto [first, fresh] = taken.try_emplace(meter.id, value);
    if (fresh || meter.id.empty()) return;
    checked.reader.problems.error(
        value.member("id"), {"duplicate-id", fmt::format("the meter \"{}\" stands twice", shown(meter.id)),
                             "an id that no other meter has", "first given at " + first->second.pointer()});
  });
  for_each_item(checked.root, "readings", checked.system.readings, [&](Value value, Reading& reading) {
    if (!value.is(Kind::object)) return;
    check_case(checked, known, value, reading);
    check_meter(checked, known, value, reading);
    if (const auto* volts = std::get_if<VoltsReading>(&reading.what)) check_probes(checked, value, *volts);
    if (const auto* amps = std::get_if<AmpsReading>(&reading.what))
      check_element(checked, value.member("in"), amps->in);
    if (const auto* ohms = std::get_if<OhmsReading>(&reading.what)) check_ohms(checked, value, *ohms);
    if (const auto* heat = std::get_if<TemperatureReading>(&reading.what))
      check_element(checked, value.member("at"), heat->at);
  });
}

}  // namespace ohmtrail::netlist
