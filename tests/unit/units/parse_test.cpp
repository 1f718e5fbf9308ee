#include "ohmtrail/units/parse.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace ohmtrail::units {
namespace {

using ::testing::AllOf;
using ::testing::HasSubstr;

struct Good {
  const char* text;
  Kind kind;
  double si;
};

/// The number that the compiler reads from the same decimals: no last bit may be lost on the way.
const Good good[] = {
    {"12.6 V", Kind::voltage, 12.6},
    {"50 mV", Kind::voltage, 0.05},
    {"142mV", Kind::voltage, 0.142},
    {"  -3.5e-1 V ", Kind::voltage, -0.35},
    {"+5 V", Kind::voltage, 5},
    {"7 µV", Kind::voltage, 7e-6},
    {"7 \u03bcV", Kind::voltage, 7e-6},
    {"8 A", Kind::current, 8},
    {"12 mA", Kind::current, 0.012},
    {"500 amps", Kind::current, 500},
    {"0.35 mohm", Kind::resistance, 0.35e-3},
    {"0.35 mΩ", Kind::resistance, 0.35e-3},
    {"0.35 m\u2126", Kind::resistance, 0.35e-3},
    {"35 uohm", Kind::resistance, 35e-6},
    {"35 µΩ", Kind::resistance, 35e-6},
    {"1.2 ohm", Kind::resistance, 1.2},
    {"1.2 Ω", Kind::resistance, 1.2},
    {"4.7 kohm", Kind::resistance, 4700},
    {"4.7 kΩ", Kind::resistance, 4700},
    {"1.2 kW", Kind::power, 1200},
    {"1000 W", Kind::power, 1000},
    {"225 Ah", Kind::charge, 225 * 3600.0},
    {"6 ft", Kind::length, 6 * 0.3048},
    {"6ft", Kind::length, 6 * 0.3048},
    {"6 feet", Kind::length, 6 * 0.3048},
    {"4 in", Kind::length, 4 * 0.0254},
    {"18 cm", Kind::length, 0.18},
    {"35 mm2", Kind::area, 35e-6},
    {"35 mm²", Kind::area, 35e-6},
    {"10 min", Kind::time, 600},
    {"6 h", Kind::time, 21600},
    {"15 s", Kind::time, 15},
    {"250 ms", Kind::time, 0.25},
    {"2.5 kg", Kind::mass, 2.5},
    {"250 g", Kind::mass, 0.25},
    {"77 F", Kind::temperature, 25},
    {"77 °F", Kind::temperature, 25},
    {"32 F", Kind::temperature, 0},
    {"-40 F", Kind::temperature, -40},
    {"25 C", Kind::temperature, 25},
    {"25 °C", Kind::temperature, 25},
    {"273.15 K", Kind::temperature, 0},
    {"40 K", Kind::temperature_difference, 40},
    {"3 %", Kind::fraction, 0.03},
    {"3%", Kind::fraction, 0.03},
    {"90 percent", Kind::fraction, 0.9},
};

TEST(Parse, reads_what_people_write) {
  for (const Good& example : good) {
    const auto read = parse_si(example.text, example.kind);
    ASSERT_TRUE(read) << example.text << ": " << read.error();
    EXPECT_DOUBLE_EQ(*read, example.si) << example.text;
  }
}

TEST(Parse, decimal_prefixes_lose_no_bit) {
  EXPECT_EQ(parse_si("50 mV", Kind::voltage), 0.05);
  EXPECT_EQ(parse_si("0.35 mohm", Kind::resistance), 0.35e-3);
  EXPECT_EQ(parse_si("18 cm", Kind::length), 0.18);
  EXPECT_EQ(parse_si("3 %", Kind::fraction), 0.03);
  EXPECT_EQ(parse_si("142 uohm", Kind::resistance), 142e-6);
}

struct Bad {
  const char* text;
  Kind kind;
  const char* why;
};

const Bad bad[] = {
    {"6 ft", Kind::voltage, "is a length"},
    {"12 V", Kind::current, "is volts"},
    {"5 A", Kind::resistance, "is amperes"},
    {"35 mm2", Kind::length, "is an area"},
    {"12.6", Kind::voltage, "has no unit"},
    {"12.6 ", Kind::voltage, "has no unit"},
    {"", Kind::voltage, "is empty"},
    {"   ", Kind::voltage, "is empty"},
    {"V", Kind::voltage, "does not start with a number"},
    {"- V", Kind::voltage, "does not start with a number"},
    {"twelve V", Kind::voltage, "does not start with a number"},
    {"nan V", Kind::voltage, "is not a finite number"},
    {"-NaN V", Kind::voltage, "is not a finite number"},
    {"inf V", Kind::voltage, "is not a finite number"},
    {"-infinity A", Kind::current, "is not a finite number"},
    {"1e999 V", Kind::voltage, "is out of range"},
    {"1e308 kW", Kind::power, "is out of range"},
    {"12,6 V", Kind::voltage, "comma"},
    {"1,000 W", Kind::power, "comma"},
    {"12.6 Volt", Kind::voltage, "did you mean volt"},
    {"50 MV", Kind::voltage, "did you mean mV"},
    {"5 a", Kind::current, "did you mean A"},
    {"6 furlongs", Kind::length, "unknown unit \"furlongs\""},
    {"6 ft 3 in", Kind::length, "unknown unit"},
    {"0x10 V", Kind::voltage, "unknown unit"},
    {"-300 C", Kind::temperature, "below absolute zero"},
    {"-1 K", Kind::temperature, "below absolute zero"},
    {"3", Kind::fraction, "has no unit"},
};

TEST(Parse, says_what_was_met_and_what_was_expected) {
  for (const Bad& example : bad) {
    const auto read = parse_si(example.text, example.kind);
    ASSERT_FALSE(read) << example.text;
    EXPECT_THAT(read.error(), AllOf(HasSubstr(example.text), HasSubstr(example.why), HasSubstr("expected"),
                                    HasSubstr(accepted_units(example.kind))))
        << example.text;
  }
}

TEST(Parse, refuses_a_plus_before_a_minus) {
  EXPECT_FALSE(parse_si("+-5 V", Kind::voltage));
}

TEST(Parse, types_choose_the_kind) {
  EXPECT_EQ(parse<Voltage>("12.6 V").value().si(), 12.6);
  EXPECT_EQ(parse<Temperature>("77 F").value().celsius(), 25);
  EXPECT_EQ(parse<Fraction>("3 %").value().of_one(), 0.03);
  EXPECT_FALSE(parse<Voltage>("6 ft"));
}

TEST(Number, stands_in_the_unit_of_its_field) {
  EXPECT_EQ(from_number<Voltage>(12.6).value().si(), 12.6);
  EXPECT_EQ(from_number<Charge>(225).value().si(), 225 * 3600.0);
  EXPECT_EQ(from_number<Fraction>(3).value().of_one(), 0.03);
  EXPECT_EQ(from_number<Temperature>(25).value().celsius(), 25);
  EXPECT_EQ(from_number<Time>(15).value().si(), 15);
  EXPECT_EQ(time_from_hours(6).value().si(), 21600);
}

TEST(Number, must_be_finite) {
  for (const double number : {std::nan(""), std::numeric_limits<double>::infinity()}) {
    EXPECT_FALSE(from_number<Voltage>(number));
    EXPECT_FALSE(time_from_hours(number));
  }
  EXPECT_FALSE(from_number<Charge>(1e306));
  EXPECT_FALSE(from_number<Temperature>(-274));
}

TEST(Reading, is_typed_with_or_without_its_unit) {
  EXPECT_EQ(parse_reading<Voltage>("0.142").value().si(), 0.142);
  EXPECT_EQ(parse_reading<Voltage>("142 mV").value().si(), 0.142);
  EXPECT_EQ(parse_reading<Voltage>("142m").value().si(), 0.142);
  EXPECT_EQ(parse_reading<Voltage>("-142 m").value().si(), -0.142);
  EXPECT_EQ(parse_reading<Resistance>("350u").value().si(), 350e-6);
  EXPECT_EQ(parse_reading<Resistance>("350µ").value().si(), 350e-6);
  EXPECT_EQ(parse_reading<Resistance>("1.2k").value().si(), 1200);
  EXPECT_EQ(parse_reading<Current>("12.3A").value().si(), 12.3);
  EXPECT_EQ(parse_reading<Temperature>("41").value().celsius(), 41);
  EXPECT_EQ(parse_reading<Temperature>("77F").value().celsius(), 25);
}

TEST(Reading, refuses_another_quantity_and_what_a_meter_shows_when_lost) {
  EXPECT_FALSE(parse_reading<Voltage>("142 mA"));
  EXPECT_FALSE(parse_reading<Voltage>("OL"));
  EXPECT_FALSE(parse_reading<Voltage>("0,142"));
  EXPECT_FALSE(parse_reading<Voltage>(""));
  EXPECT_FALSE(parse_reading<Temperature>("41 m"));
}

}  // namespace
}  // namespace ohmtrail::units
