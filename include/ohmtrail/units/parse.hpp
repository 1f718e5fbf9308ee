#pragma once
#include <string>
#include <string_view>
#include <tl/expected.hpp>

#include "ohmtrail/units/quantity.hpp"

/// Quantities as people write them: a number and a unit word, "6 ft", "0.35 mohm", "77 F".
/// Every error text says what was met and what was expected, with the units that would do.
namespace ohmtrail::units {

/// What a field holds; decides which unit words are taken.
enum class Kind {
  voltage,
  current,
  resistance,
  power,
  energy,
  charge,
  length,
  area,
  time,
  mass,
  temperature,
  temperature_difference,
  fraction
};

/// The kind that a quantity type stands for.
template <class Q>
struct KindOf;
template <>
struct KindOf<Voltage> {
  static constexpr Kind value = Kind::voltage;
};
template <>
struct KindOf<Current> {
  static constexpr Kind value = Kind::current;
};
template <>
struct KindOf<Resistance> {
  static constexpr Kind value = Kind::resistance;
};
template <>
struct KindOf<Power> {
  static constexpr Kind value = Kind::power;
};
template <>
struct KindOf<Energy> {
  static constexpr Kind value = Kind::energy;
};
template <>
struct KindOf<Charge> {
  static constexpr Kind value = Kind::charge;
};
template <>
struct KindOf<Length> {
  static constexpr Kind value = Kind::length;
};
template <>
struct KindOf<Area> {
  static constexpr Kind value = Kind::area;
};
template <>
struct KindOf<Time> {
  static constexpr Kind value = Kind::time;
};
template <>
struct KindOf<Mass> {
  static constexpr Kind value = Kind::mass;
};
template <>
struct KindOf<Temperature> {
  static constexpr Kind value = Kind::temperature;
};
template <>
struct KindOf<TemperatureDifference> {
  static constexpr Kind value = Kind::temperature_difference;
};
template <>
struct KindOf<Fraction> {
  static constexpr Kind value = Kind::fraction;
};

/// A quantity, or what is wrong with the text and what would have been right.
template <class Q>
using Parsed = tl::expected<Q, std::string>;

/// A number in the kind's SI unit (°C for temperatures, of one for fractions) out of "12.6 V".
/// The unit word is required; a space before it is not. Not-a-number and infinities are refused.
[[nodiscard]] Parsed<double> parse_si(std::string_view text, Kind kind);

/// A bare number of a file, in the field's unit: SI, but Ah for charge and percent for fractions.
[[nodiscard]] Parsed<double> number_to_si(double number, Kind kind);

/// A reading as typed beside the meter: "0.142", "142 mV", "142m", "1.2k"; a bare number is in the SI unit
/// (°C for temperatures). Only voltage, current, resistance and temperature are read off meters.
[[nodiscard]] Parsed<double> parse_reading_si(std::string_view text, Kind kind);

/// "volts (V, mV, µV, kV)": what a field of this kind takes, for error texts and help.
[[nodiscard]] std::string accepted_units(Kind kind);

template <class Q>
[[nodiscard]] Parsed<Q> parse(std::string_view text) {
  return parse_si(text, KindOf<Q>::value).map([](double si) { return Q{si}; });
}

template <class Q>
[[nodiscard]] Parsed<Q> from_number(double number) {
  return number_to_si(number, KindOf<Q>::value).map([](double si) { return Q{si}; });
}

template <class Q>
[[nodiscard]] Parsed<Q> parse_reading(std::string_view text) {
  return parse_reading_si(text, KindOf<Q>::value).map([](double si) { return Q{si}; });
}

/// A bare number of a field whose unit is the hour (`hours`, `hours_per_day`).
[[nodiscard]] Parsed<Time> time_from_hours(double hours);

}  // namespace ohmtrail::units
