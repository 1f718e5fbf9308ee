#pragma once
#include "netlist/key.hpp"
#include "netlist/words.hpp"
#include "ohmtrail/netlist/system.hpp"
#include "ohmtrail/units/parse.hpp"

/// Codecs for single values: quantities, words, names, numbers.
namespace ohmtrail::netlist {

enum class Range { any, not_negative, positive };

/// What a number field is called in messages, and the unit of a bare number.
struct FieldKind {
  units::Kind kind;
  double si_per_number;         ///< of a bare number in a file
  std::string_view definition;  ///< its name in the schema's $defs
};

/// A bare number or a string with its unit, as SI (°C for temperatures).
bool read_quantity(Reader& reader, Value value, const FieldKind& field, Range range, double& si);
/// The number that reads back to exactly `si`.
[[nodiscard]] Json write_quantity(double si, const FieldKind& field);
[[nodiscard]] Json quantity_schema(const FieldKind& field, Range range);

/// What a parser of the layers below said, "what, expected what", in two.
[[nodiscard]] Remark parser_remark(std::string_view name, std::string_view message);

/// Tells that `value` is of the wrong kind; false.
bool wrong_kind(Reader& reader, Value value, std::string expected, std::string hint = {});

inline double si_of(Temperature t) {
  return t.celsius();
}
inline double si_of(Fraction f) {
  return f.of_one();
}
template <class D>
double si_of(units::Quantity<D> q) {
  return q.si();
}

template <class Q>
[[nodiscard]] constexpr FieldKind field_of();
template <>
constexpr FieldKind field_of<Voltage>() {
  return {units::Kind::voltage, 1, "voltage"};
}
template <>
constexpr FieldKind field_of<Current>() {
  return {units::Kind::current, 1, "current"};
}
template <>
constexpr FieldKind field_of<Resistance>() {
  return {units::Kind::resistance, 1, "resistance"};
}
template <>
constexpr FieldKind field_of<Power>() {
  return {units::Kind::power, 1, "power"};
}
template <>
constexpr FieldKind field_of<Charge>() {
  return {units::Kind::charge, 3600, "charge"};
}
template <>
constexpr FieldKind field_of<Length>() {
  return {units::Kind::length, 1, "length"};
}
template <>
constexpr FieldKind field_of<Time>() {
  return {units::Kind::time, 1, "time"};
}
template <>
constexpr FieldKind field_of<Temperature>() {
  return {units::Kind::temperature, 1, "temperature"};
}
template <>
constexpr FieldKind field_of<TemperatureDifference>() {
  return {units::Kind::temperature_difference, 1, "temperature_difference"};
}
template <>
constexpr FieldKind field_of<Fraction>() {
  return {units::Kind::fraction, 0.01, "percent"};
}
/// A time whose bare numbers are hours, or minutes.
inline constexpr FieldKind hours_field{units::Kind::time, 3600, "hours"};
inline constexpr FieldKind minutes_field{units::Kind::time, 60, "minutes"};

template <class Q, Range range>
struct QuantityCodec {
  using Type = Q;
  static bool read(Reader& reader, Value value, Q& q) {
    double si = 0;
    if (!read_quantity(reader, value, field_of<Q>(), range, si)) return false;
    q = Q{si};
    return true;
  }
  static Json write(const Q& q) { return write_quantity(si_of(q), field_of<Q>()); }
  static Json schema() { return quantity_schema(field_of<Q>(), range); }
};

template <class Q>
using AnySign = QuantityCodec<Q, Range::any>;
template <class Q>
using NotNegative = QuantityCodec<Q, Range::not_negative>;
template <class Q>
using Positive = QuantityCodec<Q, Range::positive>;

/// A time above zero whose bare numbers are hours.
struct Hours {
  using Type = Time;
  static bool read(Reader& reader, Value value, Time& time);
  static Json write(const Time& time);
  static Json schema();
};

/// A share of one between 0 and 100 %; bare numbers are percent. A bare number below one is doubted.
struct Percent {
  using Type = Fraction;
  static bool read(Reader& reader, Value value, Fraction& fraction);
  static Json write(const Fraction& fraction);
  static Json schema();
};

/// The same, above zero.
struct PositivePercent : Percent {
  static bool read(Reader& reader, Value value, Fraction& fraction);
};

/// A plain number that is not negative.
struct PlainNumber {
  using Type = double;
  static bool read(Reader& reader, Value value, double& number);
  static Json write(double number) { return number; }
  static Json schema();
};

/// A whole number from 1.
struct WholeNumber {
  using Type = int;
  static bool read(Reader& reader, Value value, int& number);
  static Json write(int number) { return number; }
  static Json schema();
};

struct Flag {
  using Type = bool;
  static bool read(Reader& reader, Value value, bool& flag);
  static Json write(bool flag) { return flag; }
  static Json schema();
};

/// Free text.
struct Text {
  using Type = std::string;
  static bool read(Reader& reader, Value value, std::string& text);
  static Json write(const std::string& text) { return text; }
  static Json schema();
};

/// Free text; a number is taken as it is spelled (`"made": 2019`).
struct TextOrNumber : Text {
  static bool read(Reader& reader, Value value, std::string& text);
  static Json schema();
};

/// The id of an element or the name of a point, as it is first given: not empty, at most 80 characters, none
/// of them a control character, `/` or `@`.
struct Identifier : Text {
  static bool read(Reader& reader, Value value, std::string& text);
  static Json schema();
};

/// A name without reserved characters: cases and meters. Also what a reference to any name looks like.
struct Name : Text {
  static bool read(Reader& reader, Value value, std::string& text);
  static Json schema();
};

struct GaugeCodec {
  using Type = trade::Gauge;
  static bool read(Reader& reader, Value value, trade::Gauge& gauge);
  static Json write(const trade::Gauge& gauge);
  static Json schema();
};

/// "1000 W", "8 A" or "1.2 ohm".
struct TakesCodec {
  using Type = Takes;
  static bool read(Reader& reader, Value value, Takes& takes);
  static Json write(const Takes& takes);
  static Json schema();
};

/// One word of a fixed choice: the index into `known`, or a mistake with the nearest one.
[[nodiscard]] std::optional<std::size_t> read_word(Reader& reader, Value value,
                                                   const std::vector<std::string_view>& known);

template <class E>
struct Word {
  using Type = E;
  static const std::vector<std::string_view>& known() {
    static const std::vector<std::string_view> texts = [] {
      std::vector<std::string_view> all;
      for (const auto& [text, meaning] : words<E>()) all.push_back(text);
      return all;
    }();
    return texts;
  }
  static bool read(Reader& reader, Value value, E& chosen) {
    const auto index = read_word(reader, value, known());
    if (index) chosen = words<E>()[*index].second;
    return index.has_value();
  }
  static Json write(const E& chosen) { return word(chosen); }
  static Json schema() { return {{"enum", known()}}; }
};

}  // namespace ohmtrail::netlist
