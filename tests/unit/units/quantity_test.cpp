#include "ohmtrail/units/quantity.hpp"

#include <gtest/gtest.h>

#include <concepts>
#include <type_traits>

namespace ohmtrail::units {
namespace {

template <class A, class B>
concept Addable = requires(A a, B b) {
  a + b;
};
template <class A, class B>
concept Subtractable = requires(A a, B b) {
  a - b;
};
template <class A, class B>
concept Comparable = requires(A a, B b) {
  a < b;
};

static_assert(Addable<Voltage, Voltage>);
static_assert(!Addable<Voltage, Current>);
static_assert(!Addable<Length, Resistance>);
static_assert(!Addable<Power, Energy>);
static_assert(!Addable<Voltage, double>);
static_assert(!Addable<double, Voltage>);
static_assert(!Subtractable<Charge, Current>);
static_assert(!Comparable<Voltage, Power>);
static_assert(!Comparable<Resistance, double>);
static_assert(!std::convertible_to<double, Voltage> && std::constructible_from<Voltage, double>);
static_assert(!std::constructible_from<Voltage, Current>);
static_assert(!std::assignable_from<Voltage&, Current>);
static_assert(!std::convertible_to<Voltage, double>);

// Points on the Celsius scale make differences, and only those can be added to them.
static_assert(!Addable<Temperature, Temperature>);
static_assert(Addable<Temperature, TemperatureDifference>);
static_assert(std::same_as<decltype(Temperature{} - Temperature{}), TemperatureDifference>);
static_assert(!Addable<Fraction, double> && !std::convertible_to<double, Fraction>);

// Ohm's and Joule's laws as types.
static_assert(std::same_as<decltype(Voltage{} / Current{}), Resistance>);
static_assert(std::same_as<decltype(Current{} * Resistance{}), Voltage>);
static_assert(std::same_as<decltype(Voltage{} * Current{}), Power>);
static_assert(std::same_as<decltype(Power{} * Time{}), Energy>);
static_assert(std::same_as<decltype(Current{} * Time{}), Charge>);
static_assert(std::same_as<decltype(Resistivity{} * Length{} / Area{}), Resistance>);
static_assert(std::same_as<decltype(Resistance{} / Length{}), ResistancePerLength>);
static_assert(std::same_as<decltype(Density{} * Area{} * Length{}), Mass>);
static_assert(std::same_as<decltype(ThermalConductance{} * TemperatureDifference{}), Power>);
static_assert(std::same_as<decltype(HeatTransferCoefficient{} * Area{}), ThermalConductance>);
static_assert(std::same_as<decltype(SpecificHeat{} * Density{} * Area{}), HeatCapacityPerLength>);

TEST(Quantity, follows_ohms_law) {
  EXPECT_DOUBLE_EQ((Voltage{12} / Current{8}).si(), 1.5);
  EXPECT_DOUBLE_EQ((Current{8} * Resistance{1.5}).si(), 12);
  EXPECT_DOUBLE_EQ((Current{100} * Current{100} * Resistance{1e-3}).si(), 10);
}

TEST(Quantity, ratio_of_like_quantities_is_a_number) {
  EXPECT_DOUBLE_EQ(ratio(Length{3}, Length{1.5}), 2);
}

TEST(Quantity, temperatures_differ_in_kelvin) {
  EXPECT_DOUBLE_EQ((Temperature{105} - Temperature{30}).si(), 75);
  EXPECT_DOUBLE_EQ((Temperature{30} + TemperatureDifference{75}).celsius(), 105);
  EXPECT_DOUBLE_EQ((Temperature{30} - TemperatureDifference{75}).celsius(), -45);
}

TEST(Quantity, fraction_is_of_one) {
  EXPECT_DOUBLE_EQ(Fraction{0.03}.percent(), 3);
}

}  // namespace
}  // namespace ohmtrail::units
