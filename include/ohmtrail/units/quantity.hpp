#pragma once
#include <compare>

/// Typed physical quantities: a voltage is not a current at compile time.
namespace ohmtrail::units {

/// Exponents of the base dimensions volt, ampere, metre, second, kilogram and kelvin (of differences).
/// Volt and ampere are base here because every quantity of the trade is spelled in them.
template <int V, int A, int M, int S, int Kg = 0, int K = 0>
struct Dimension {};

/// A value in the SI unit of its dimension. Construct it from a plain double explicitly: `Voltage{12.6}`.
template <class D>
class Quantity;

template <int V, int A, int M, int S, int Kg, int K>
class Quantity<Dimension<V, A, M, S, Kg, K>> {
 public:
  constexpr Quantity() = default;
  constexpr explicit Quantity(double in_si) : si_(in_si) {}

  /// The value in the SI unit.
  [[nodiscard]] constexpr double si() const { return si_; }

  constexpr Quantity& operator+=(Quantity other) {
    si_ += other.si_;
    return *this;
  }
  constexpr Quantity& operator-=(Quantity other) {
    si_ -= other.si_;
    return *this;
  }
  constexpr Quantity& operator*=(double factor) {
    si_ *= factor;
    return *this;
  }
  constexpr Quantity& operator/=(double factor) {
    si_ /= factor;
    return *this;
  }

  friend constexpr Quantity operator+(Quantity a, Quantity b) { return a += b; }
  friend constexpr Quantity operator-(Quantity a, Quantity b) { return a -= b; }
  friend constexpr Quantity operator-(Quantity a) { return Quantity{-a.si_}; }
  friend constexpr Quantity operator*(Quantity a, double factor) { return a *= factor; }
  friend constexpr Quantity operator*(double factor, Quantity a) { return a *= factor; }
  friend constexpr Quantity operator/(Quantity a, double factor) { return a /= factor; }
  friend constexpr auto operator<=>(Quantity a, Quantity b) = default;

 private:
  double si_ = 0;
};

template <int V1, int A1, int M1, int S1, int G1, int K1, int V2, int A2, int M2, int S2, int G2, int K2>
constexpr auto operator*(Quantity<Dimension<V1, A1, M1, S1, G1, K1>> a,
                         Quantity<Dimension<V2, A2, M2, S2, G2, K2>> b) {
  return Quantity<Dimension<V1 + V2, A1 + A2, M1 + M2, S1 + S2, G1 + G2, K1 + K2>>{a.si() * b.si()};
}

template <int V1, int A1, int M1, int S1, int G1, int K1, int V2, int A2, int M2, int S2, int G2, int K2>
constexpr auto operator/(Quantity<Dimension<V1, A1, M1, S1, G1, K1>> a,
                         Quantity<Dimension<V2, A2, M2, S2, G2, K2>> b) {
  return Quantity<Dimension<V1 - V2, A1 - A2, M1 - M2, S1 - S2, G1 - G2, K1 - K2>>{a.si() / b.si()};
}

/// A ratio of like quantities is a plain number.
template <class D>
constexpr double ratio(Quantity<D> a, Quantity<D> b) {
  return a.si() / b.si();
}

using Voltage = Quantity<Dimension<1, 0, 0, 0>>;                          ///< V
using Current = Quantity<Dimension<0, 1, 0, 0>>;                          ///< A
using Resistance = Quantity<Dimension<1, -1, 0, 0>>;                      ///< Ω
using Power = Quantity<Dimension<1, 1, 0, 0>>;                            ///< W
using Energy = Quantity<Dimension<1, 1, 0, 1>>;                           ///< J
using Charge = Quantity<Dimension<0, 1, 0, 1>>;                           ///< C; battery capacity (files: Ah)
using Length = Quantity<Dimension<0, 0, 1, 0>>;                           ///< m
using Area = Quantity<Dimension<0, 0, 2, 0>>;                             ///< m²
using Time = Quantity<Dimension<0, 0, 0, 1>>;                             ///< s
using Mass = Quantity<Dimension<0, 0, 0, 0, 1>>;                          ///< kg
using TemperatureDifference = Quantity<Dimension<0, 0, 0, 0, 0, 1>>;      ///< K
using Resistivity = Quantity<Dimension<1, -1, 1, 0>>;                     ///< Ω·m
using ResistancePerLength = Quantity<Dimension<1, -1, -1, 0>>;            ///< Ω/m
using Density = Quantity<Dimension<0, 0, -3, 0, 1>>;                      ///< kg/m³
using MassPerLength = Quantity<Dimension<0, 0, -1, 0, 1>>;                ///< kg/m
using ThermalConductivity = Quantity<Dimension<1, 1, -1, 0, 0, -1>>;      ///< W/(m·K)
using HeatTransferCoefficient = Quantity<Dimension<1, 1, -2, 0, 0, -1>>;  ///< W/(m²·K)
using ThermalConductance = Quantity<Dimension<1, 1, 0, 0, 0, -1>>;        ///< W/K
using SpecificHeat = Quantity<Dimension<1, 1, 0, 1, -1, -1>>;             ///< J/(kg·K)
using HeatCapacityPerLength = Quantity<Dimension<1, 1, -1, 1, 0, -1>>;    ///< J/(m·K)

/// A point on the Celsius scale, °C. Two of them make a difference; they cannot be added.
class Temperature {
 public:
  constexpr Temperature() = default;
  constexpr explicit Temperature(double celsius) : celsius_(celsius) {}
  [[nodiscard]] constexpr double celsius() const { return celsius_; }

  friend constexpr TemperatureDifference operator-(Temperature a, Temperature b) {
    return TemperatureDifference{a.celsius_ - b.celsius_};
  }
  friend constexpr Temperature operator+(Temperature a, TemperatureDifference d) {
    return Temperature{a.celsius_ + d.si()};
  }
  friend constexpr Temperature operator-(Temperature a, TemperatureDifference d) {
    return Temperature{a.celsius_ - d.si()};
  }
  friend constexpr auto operator<=>(Temperature a, Temperature b) = default;

 private:
  double celsius_ = 0;
};

/// A share of one: 3 % is Fraction{0.03}. A type of its own so that 3 and 3 % cannot be mixed up.
class Fraction {
 public:
  constexpr Fraction() = default;
  constexpr explicit Fraction(double of_one) : of_one_(of_one) {}
  [[nodiscard]] constexpr double of_one() const { return of_one_; }
  [[nodiscard]] constexpr double percent() const { return of_one_ * 100; }
  friend constexpr auto operator<=>(Fraction a, Fraction b) = default;

 private:
  double of_one_ = 0;
};

}  // namespace ohmtrail::units
