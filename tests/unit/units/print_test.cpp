#include "ohmtrail/units/print.hpp"

#include <gtest/gtest.h>

#include <charconv>
#include <cmath>
#include <limits>

#include "ohmtrail/units/parse.hpp"
#include "support/property.hpp"

namespace ohmtrail::units {
namespace {

TEST(Print, takes_the_prefix_of_the_trade) {
  EXPECT_EQ(print(Voltage{12.6}), "12.6 V");
  EXPECT_EQ(print(Voltage{12.65}, {4}), "12.65 V");
  EXPECT_EQ(print(Voltage{0.142}), "142 mV");
  EXPECT_EQ(print(Voltage{-0.0035}), "-3.5 mV");
  EXPECT_EQ(print(Voltage{0.00002}), "20 µV");
  EXPECT_EQ(print(Current{245}), "245 A");
  EXPECT_EQ(print(Current{0.05}), "50 mA");
  EXPECT_EQ(print(Resistance{0.35e-3}), "0.35 mΩ");
  EXPECT_EQ(print(Resistance{0.1e-3}), "0.1 mΩ");
  EXPECT_EQ(print(Resistance{21.6e-6}), "21.6 µΩ");
  EXPECT_EQ(print(Resistance{1.2}), "1.2 Ω");
  EXPECT_EQ(print(Resistance{4700}), "4.7 kΩ");
  EXPECT_EQ(print(Power{1200}), "1200 W");
  EXPECT_EQ(print(Power{41.6}), "41.6 W");
  EXPECT_EQ(print(Charge{225 * 3600.0}), "225 Ah");
  EXPECT_EQ(print(Energy{2.7 * 3.6e6}), "2.7 kWh");
  EXPECT_EQ(print(Area{35e-6}), "35 mm²");
  EXPECT_EQ(print(Length{1.83}), "1.83 m");
  EXPECT_EQ(print(Length{0.0127}), "12.7 mm");
  EXPECT_EQ(print(Time{90}), "1.5 min");
  EXPECT_EQ(print(Mass{0.95}), "950 g");
  EXPECT_EQ(print(Temperature{-40}), "-40 °C");
  EXPECT_EQ(print(TemperatureDifference{62}), "62 K");
  EXPECT_EQ(print(Fraction{0.03}), "3 %");
}

TEST(Print, rounds_before_it_chooses_the_unit) {
  EXPECT_EQ(print(Voltage{0.9999}), "1 V");
  EXPECT_EQ(print(Voltage{0.9994}), "999 mV");
  EXPECT_EQ(print(Resistance{99.96e-6}), "0.1 mΩ");
}

TEST(Print, keeps_zeros_for_columns) {
  EXPECT_EQ(print(Voltage{12}, {3, true}), "12.0 V");
  EXPECT_EQ(print(Voltage{9.999}, {3, true}), "10.0 V");
  EXPECT_EQ(print(Voltage{0}, {3, true}), "0 V");
}

TEST(Print, shows_zero_and_nothing) {
  EXPECT_EQ(print(Voltage{0}), "0 V");
  EXPECT_EQ(print(Resistance{0}), "0 Ω");
  EXPECT_EQ(print(Charge{0}), "0 Ah");
  EXPECT_EQ(print(Voltage{std::nan("")}), "–");
  EXPECT_EQ(print(Power{std::numeric_limits<double>::infinity()}), "–");
}

TEST(Print, takes_the_smallest_and_the_largest_doubles) {
  EXPECT_EQ(print(Voltage{1e-320}).substr(0, 2), "0.");
  // Three digits of the largest double would be 1.80e308, which no double holds: the nearest below is shown.
  EXPECT_EQ(print(Voltage{std::numeric_limits<double>::max()}).substr(0, 3), "179");
}

TEST(Print, speaks_feet_and_fahrenheit) {
  EXPECT_EQ(print_feet(Length{6 * 0.3048}), "6 ft");
  EXPECT_EQ(print_feet(Length{4 * 0.0254}), "4 in");
  EXPECT_EQ(print_fahrenheit(Temperature{25}), "77 °F");
}

TEST(Print, plain_numbers_have_no_exponent) {
  EXPECT_EQ(print_number(123456), "123000");
  EXPECT_EQ(print_number(0.000012345), "0.0000123");
  EXPECT_EQ(print_number(-0.5), "-0.5");
}

TEST(Exact, is_short_and_null_where_nothing_is) {
  EXPECT_EQ(exact(0.1), "0.1");
  EXPECT_EQ(exact(12.0), "12");
  EXPECT_EQ(exact(std::nan("")), "null");
  EXPECT_EQ(exact(-std::numeric_limits<double>::infinity()), "null");
}

rc::Gen<double> any_finite() {
  return rc::gen::map(rc::gen::tuple(rc::gen::inRange<long long>(-999999999999999, 999999999999999),
                                     rc::gen::inRange(-30, 15)),
                      [](const std::tuple<long long, int>& parts) {
                        return static_cast<double>(std::get<0>(parts)) * std::pow(10.0, std::get<1>(parts));
                      });
}

TEST(RoundTrip, exact_reads_back_to_the_same_double) {
  test::holds([] {
    const double value = *any_finite();
    const std::string text = exact(value);
    double back = 0;
    std::from_chars(text.data(), text.data() + text.size(), back);
    RC_ASSERT(back == value);
  });
}

/// What is printed reads back within its rounding: half a unit of the last of the significant digits.
template <class Q>
void prints_and_parses() {
  test::holds([] {
    const double si = *any_finite();
    RC_PRE(std::abs(si) > 1e-12 && std::abs(si) < 1e12);
    const int digits = *rc::gen::inRange(3, 13);
    const auto back = parse<Q>(print(Q{si}, {digits}));
    RC_ASSERT(back.has_value());
    RC_ASSERT(std::abs(back->si() - si) <= 0.5001 * std::pow(10.0, 1 - digits) * std::abs(si));
  });
}

TEST(RoundTrip, volts) {
  prints_and_parses<Voltage>();
}
TEST(RoundTrip, amperes) {
  prints_and_parses<Current>();
}
TEST(RoundTrip, ohms) {
  prints_and_parses<Resistance>();
}
TEST(RoundTrip, watts) {
  prints_and_parses<Power>();
}
TEST(RoundTrip, ampere_hours) {
  prints_and_parses<Charge>();
}
TEST(RoundTrip, metres) {
  prints_and_parses<Length>();
}
TEST(RoundTrip, seconds) {
  prints_and_parses<Time>();
}
TEST(RoundTrip, kilograms) {
  prints_and_parses<Mass>();
}
TEST(RoundTrip, square_metres) {
  prints_and_parses<Area>();
}

TEST(Parse, survives_any_text) {
  test::holds([] {
    const auto text = *rc::gen::container<std::string>(
        rc::gen::elementOf(std::string("0123456789.-+e, VAmkuohft\xc2\xb5\xce\xa9%")));
    for (const Kind kind :
         {Kind::voltage, Kind::resistance, Kind::length, Kind::temperature, Kind::fraction}) {
      const auto read = parse_si(text, kind);
      if (read) RC_ASSERT(std::isfinite(*read));
      if (!read) RC_ASSERT(read.error().find("expected") != std::string::npos);
      const auto reading = parse_reading_si(text, kind);
      if (reading) RC_ASSERT(std::isfinite(*reading));
    }
  });
}

}  // namespace
}  // namespace ohmtrail::units
