#include <fmt/format.h>

#include "netlist/sections.hpp"

namespace ohmtrail::netlist {

namespace {

constexpr int version = 1;

bool read_version(Reader& reader, Value value, System&) {
  if (value.source() == "1") return true;
  reader.problems.error(
      value,
      {"wrong-version", fmt::format("the format version is {}", shown(value)), fmt::format("{}", version),
       value.is(Kind::string) ? "without quotes" : "this program reads version 1 only"});
  return false;
}

void write_version(Json& object, std::string_view name, const System&) {
  object[std::string(name)] = version;
}

Json version_schema() {
  return {{"const", version}};
}

}  // namespace

template <>
std::span<const Key<Limits>> keys() {
  using T = Limits;
  static constexpr Key<T> table[] = {
      optional<T, &T::critical_drop, PositivePercent>("critical_drop", "for critical loads, default 3 %"),
      optional<T, &T::other_drop, PositivePercent>("other_drop", "for other loads, default 10 %"),
      optional<T, &T::swing, PositivePercent>("swing", "between cases, percent of nominal"),
  };
  return table;
}

template <>
std::span<const Key<Job>> keys() {
  using T = Job;
  static constexpr Key<T> table[] = {
      optional<T, &T::customer, Text>("customer", "whom it is for"),
      optional<T, &T::technician, Text>("technician", "who did the work"),
      optional<T, &T::date, Text>("date", "when"),
      optional<T, &T::reference, TextOrNumber>("reference", "number of the job"),
      optional<T, &T::complaint, Text>("complaint", "what the customer complained of"),
  };
  return table;
}

template <>
std::span<const Key<SystemInfo>> keys() {
  using T = SystemInfo;
  static constexpr Key<T> table[] = {
      required<T, &T::name, Text>("name", "name of the system"),
      required<T, &T::nominal, Positive<Voltage>>("nominal", "nominal voltage"),
      optional<T, &T::kind, Word<SystemKind>>("kind", "default vessel"),
      optional<T, &T::terminations, Word<Terminations>>("terminations",
                                                        "whole, or contact and crimp apart; default whole"),
      optional<T, &T::ambient, AnySign<Temperature>>("ambient", "default 25 °C"),
      optional<T, &T::engine_space, AnySign<Temperature>>("engine_space", "default 50 °C"),
      optional<T, &T::limits, Object<Limits>>("limits", "largest drops allowed"),
      optional<T, &T::job, Object<Job>>("job", "for the report"),
  };
  return table;
}

template <>
std::span<const Key<System>> keys() {
  using T = System;
  static constexpr Key<T> table[] = {
      {"ohmtrail", Need::required, "version of the format: 1", &read_version, &write_version,
       &version_schema},
      required<T, &T::info, Object<SystemInfo>>("system", "name and nominal voltage of the system"),
      optional<T, &T::batteries, List<Object<Battery>>>("batteries", "batteries"),
      optional<T, &T::chargers, List<Object<Charger>>>("chargers",
                                                       "alternators, shore chargers, solar regulators"),
      optional<T, &T::runs, List<Object<Run>>>("runs", "cables with a termination at each end"),
      optional<T, &T::joints, List<Object<Joint>>>("joints", "studs, posts, splices, plugs, bus bars"),
      optional<T, &T::switches, List<Object<Switch>>>("switches", "switches, breakers, contactors"),
      optional<T, &T::fuses, List<Object<Fuse>>>("fuses", "fuses"),
      optional<T, &T::shunts, List<Object<Shunt>>>("shunts", "measuring shunts"),
      optional<T, &T::isolators, List<Object<Isolator>>>("isolators", "isolator diodes"),
      optional<T, &T::loads, List<Object<Load>>>("loads", "what takes current"),
      optional<T, &T::converters, List<Object<Converter>>>("converters", "DC to DC converters"),
      optional<T, &T::points, Named<Name, Object<Point>>>("points", "what there is to say of single points"),
      optional<T, &T::cases, List<Object<Case>>>("cases", "operating conditions; default one, all-on"),
      optional<T, &T::meters, List<Object<Meter>>>("meters", "accuracy of the meters used"),
      optional<T, &T::readings, List<ReadingCodec>>("readings", "numbers off meters"),
      optional<T, &T::cable_list, List<Object<CableOffer>>>("cable_list", "cable that may be bought"),
      optional<T, &T::reference, Name>("reference", "the point at 0 V; default the first battery's minus"),
      optional<T, &T::stubs, NameList>("stubs", "points that only one element names, on purpose"),
  };
  return table;
}

}  // namespace ohmtrail::netlist
