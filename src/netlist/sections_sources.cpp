#include "netlist/sections.hpp"

/// What feeds the system: batteries with their checks, chargers, converters.
namespace ohmtrail::netlist {

namespace {

struct Gravity : PlainNumber {
  static Json schema() { return {{"type", "number"}, {"minimum", 1.0}, {"maximum", 1.4}}; }
};

}  // namespace

template <>
std::span<const Key<RestCheck>> keys() {
  using T = RestCheck;
  static constexpr Key<T> table[] = {
      required<T, &T::volts, Positive<Voltage>>("volts", "voltage at the posts at rest"),
      optional<T, &T::rested, Hours>("hours", "how long it has rested, loads and chargers off"),
      optional<T, &T::temperature, AnySign<Temperature>>("temperature", "of the battery"),
      optional<T, &T::charging, Flag>("charging", "whether a charger was on; default false"),
  };
  return table;
}

template <>
std::span<const Key<LoadTest>> keys() {
  using T = LoadTest;
  static constexpr Key<T> table[] = {
      optional<T, &T::before, Positive<Voltage>>("before", "voltage at the posts just before the test"),
      required<T, &T::amps, Positive<Current>>("amps", "current of the test"),
      required<T, &T::volts, NotNegative<Voltage>>("volts",
                                                   "voltage at the posts under load, at the end of the test"),
      optional<T, &T::duration, Positive<Time>>("seconds", "how long it was held"),
      optional<T, &T::temperature, AnySign<Temperature>>("temperature", "of the battery"),
      optional<T, &T::charging, Flag>("charging", "whether a charger was on; default false"),
  };
  return table;
}

template <>
std::span<const Key<TesterCheck>> keys() {
  using T = TesterCheck;
  static constexpr Key<T> table[] = {
      optional<T, &T::cca, Positive<Current>>("cca",
                                              "cold-cranking current that the conductance tester shows"),
      optional<T, &T::resistance, Positive<Resistance>>("ohms",
                                                        "resistance that the conductance tester shows"),
      optional<T, &T::temperature, AnySign<Temperature>>("temperature", "of the battery"),
  };
  return table;
}

template <>
std::span<const Key<CellCheck>> keys() {
  using T = CellCheck;
  static constexpr Key<T> table[] = {
      optional<T, &T::specific_gravity, Gravity>("sg", "specific gravity as read, 1.0 to 1.4"),
      optional<T, &T::volts, Positive<Voltage>>("volts", "voltage of the cell"),
      optional<T, &T::temperature, AnySign<Temperature>>("temperature", "of the electrolyte"),
      optional<T, &T::level, Word<ElectrolyteLevel>>("level", "of the electrolyte over the plates"),
  };
  return table;
}

template <>
std::span<const Key<BatteryChecks>> keys() {
  using T = BatteryChecks;
  static constexpr Key<T> table[] = {
      optional<T, &T::rest, Object<RestCheck>>("rest", "rest voltage"),
      optional<T, &T::load_test, Object<LoadTest>>("load_test", "load test at the posts"),
      optional<T, &T::tester, Object<TesterCheck>>("tester", "a conductance tester's reading"),
      optional<T, &T::cells, List<Object<CellCheck>>>("cells", "each cell in order"),
      optional<T, &T::top_leak, NotNegative<Voltage>>("top_leak", "volts from a post to the top of the case"),
  };
  return table;
}

template <>
std::span<const Key<Battery>> keys() {
  using T = Battery;
  static constexpr Key<T> table[] = {
      required<T, &T::id, Identifier>("id", "its name"),
      required<T, &T::plus, Identifier>("plus", "point of its positive post"),
      required<T, &T::minus, Identifier>("minus", "point of its negative post"),
      required<T, &T::nominal, Positive<Voltage>>("nominal", "nominal voltage"),
      optional<T, &T::chemistry, Word<trade::Chemistry>>("chemistry", "default flooded"),
      optional<T, &T::capacity, Positive<Charge>>("capacity", "rated capacity; a bare number is Ah"),
      optional<T, &T::cca, Positive<Current>>("cca", "rated cold-cranking current"),
      optional<T, &T::state_of_charge, Percent>("soc", "state of charge, default 100 %"),
      optional<T, &T::emf, Positive<Voltage>>("emf", "open-circuit voltage, used as it stands"),
      optional<T, &T::resistance, Positive<Resistance>>("resistance",
                                                        "internal resistance, used as it stands"),
      optional<T, &T::made, TextOrNumber>("made", "when it was made"),
      optional<T, &T::checks, Object<BatteryChecks>>("checks", "its own tests"),
      optional<T, &T::seen, SeenCodec>("seen", "what the eye and hand found"),
  };
  return table;
}

template <>
std::span<const Key<Charger>> keys() {
  using T = Charger;
  static constexpr Key<T> table[] = {
      required<T, &T::id, Identifier>("id", "its name"),
      required<T, &T::plus, Identifier>("plus", "point of its positive terminal"),
      required<T, &T::minus, Identifier>("minus", "point of its negative terminal"),
      required<T, &T::setpoint, Positive<Voltage>>("setpoint", "voltage that it holds"),
      required<T, &T::limit, Positive<Current>>("limit", "the most it delivers"),
  };
  return table;
}

template <>
std::span<const Key<Converter>> keys() {
  using T = Converter;
  static constexpr Key<T> table[] = {
      required<T, &T::id, Identifier>("id", "its name"),
      required<T, &T::plus_in, Identifier>("plus_in", "positive point of its input"),
      required<T, &T::minus_in, Identifier>("minus_in", "negative point of its input"),
      required<T, &T::plus_out, Identifier>("plus_out", "positive point of its output"),
      required<T, &T::minus_out, Identifier>("minus_out", "negative point of its output"),
      required<T, &T::setpoint, Positive<Voltage>>("setpoint", "output voltage that it holds"),
      required<T, &T::limit, Positive<Current>>("limit", "the most its output delivers"),
      optional<T, &T::efficiency, PositivePercent>("efficiency", "default 90 %"),
      optional<T, &T::idle, NotNegative<Power>>("idle", "power it takes without load"),
      optional<T, &T::stops_below, Positive<Voltage>>("stops_below",
                                                      "input voltage below which it switches off"),
  };
  return table;
}

}  // namespace ohmtrail::netlist
