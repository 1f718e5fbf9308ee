#include "netlist/nearest.hpp"
#include "netlist/sections.hpp"
#include "ohmtrail/trade/gauge.hpp"

/// How the system is used and what may be bought: loads, cases, points, cables.
namespace ohmtrail::netlist {

namespace {

/// What a load takes in one case: as in `loads`, or "inrush" or "stall", which are put in place once the
/// loads are known.
struct CaseTakes {
  using Type = Takes;
  static bool read(Reader& reader, Value value, Takes& takes) {
    if (value.string() != "inrush" && value.string() != "stall")
      return TakesCodec::read(reader, value, takes);
    takes = Current{};
    return true;
  }
  static Json write(const Takes& takes) { return TakesCodec::write(takes); }
  static Json schema() {
    return {
        {"anyOf", Json::array({Json{{"const", "inrush"}}, Json{{"const", "stall"}}, TakesCodec::schema()})}};
  }
};

bool read_on(Reader& reader, Value value, Case& owner) {
  if (value.is(Kind::string)) {
    if (value.string() == "all") {
      owner.all_on = true;
      return true;
    }
    return wrong_kind(reader, value, "\"all\" or a list of load ids",
                      "put it in brackets, also a single one");
  }
  return NameList::read(reader, value, owner.on);
}

void write_on(Json& object, std::string_view name, const Case& owner) {
  if (owner.all_on)
    object[std::string(name)] = "all";
  else if (!owner.on.empty())
    object[std::string(name)] = NameList::write(owner.on);
}

Json on_schema() {
  return {{"anyOf", Json::array({Json{{"const", "all"}}, NameList::schema()})}};
}

bool read_offer(Reader& reader, Value value, CableOffer& owner) {
  if (!GaugeCodec::read(reader, value, owner.gauge)) return false;
  owner.gauge_as_written = value.string();
  return true;
}

void write_offer(Json& object, std::string_view name, const CableOffer& owner) {
  object[std::string(name)] =
      owner.gauge_as_written.empty() ? trade::print(owner.gauge) : owner.gauge_as_written;
}

}  // namespace

template <>
std::span<const Key<Load>> keys() {
  using T = Load;
  static constexpr Key<T> table[] = {
      required<T, &T::id, Identifier>("id", "its name"),
      required<T, &T::plus, Identifier>("plus", "point of its positive terminal"),
      required<T, &T::minus, Identifier>("minus", "point of its negative terminal"),
      required<T, &T::takes, TakesCodec>(
          "takes", "\"1000 W\" constant power, \"8 A\" constant current, \"1.2 ohm\" resistance"),
      optional<T, &T::load_class, Word<LoadClass>>("class", "decides the drop limit; default other"),
      optional<T, &T::nominal, Positive<Voltage>>("nominal", "for percentages; default the system's"),
      optional<T, &T::stops_below, Positive<Voltage>>("stops_below", "voltage below which it switches off"),
      optional<T, &T::restarts_above, Positive<Voltage>>(
          "restarts_above", "voltage above which it runs again; default stops_below"),
      optional<T, &T::inrush, Positive<Current>>("inrush", "current as it starts"),
      optional<T, &T::stall, Positive<Current>>(
          "stall", "current at nominal voltage with the motor held fast; it then acts as a resistance"),
      optional<T, &T::on_for, Positive<Time>>("on_for", "short duty: how long it runs"),
      optional<T, &T::rest_for, Positive<Time>>("rest_for", "short duty: how long it rests"),
      optional<T, &T::efficiency, PositivePercent>("efficiency",
                                                   "inverters: takes is what comes out; default 100 %"),
      optional<T, &T::idle, NotNegative<Power>>("idle", "inverters: power taken without load"),
  };
  return table;
}

template <>
std::span<const Key<Case>> keys() {
  using T = Case;
  static constexpr Key<T> table[] = {
      required<T, &T::name, Name>("name", "its name"),
      {"on", Need::optional, "ids of the loads that run, or \"all\"; default none", &read_on, &write_on,
       &on_schema},
      optional<T, &T::set, Named<Name, CaseTakes>>(
          "set", "what single loads take in this case, \"inrush\" or \"stall\""),
      optional<T, &T::open, NameList>("open", "elements and runs that are open"),
      optional<T, &T::closed, NameList>("closed", "switches that are closed"),
      optional<T, &T::chargers, NameList>("chargers", "chargers and converters that run; default none"),
      optional<T, &T::ambient, AnySign<Temperature>>("ambient", "default the system's"),
      optional<T, &T::per_day, Hours>("hours_per_day", "how long a day it lasts"),
  };
  return table;
}

template <>
std::span<const Key<Point>> keys() {
  using T = Point;
  static constexpr Key<T> table[] = {
      optional<T, &T::place, Text>("place", "where it is, in words"),
      optional<T, &T::reach, Word<Reach>>("reach", "whether a probe gets there; default easy"),
  };
  return table;
}

template <>
std::span<const Key<CableOffer>> keys() {
  using T = CableOffer;
  static constexpr Key<T> table[] = {
      {"gauge", Need::required, "conductor size", &read_offer, &write_offer, &GaugeCodec::schema},
      optional<T, &T::price, PlainNumber>("price", "per metre"),
      optional<T, &T::insulation, Positive<Temperature>>("insulation", "temperature rating"),
      optional<T, &T::conductor, Word<trade::ConductorKind>>("conductor", "what it is made of"),
  };
  return table;
}

}  // namespace ohmtrail::netlist
