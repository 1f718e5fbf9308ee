#include "ohmtrail/trade/battery_capacity.hpp"

#include <array>
#include <cmath>

#include "trade/battery_curve.hpp"

namespace ohmtrail::trade {
namespace {

using units::Charge;
using units::Current;
using units::Time;

constexpr std::array<CurvePoint, 3> traction_by_temperature{{{-17.8, 0.40}, {0, 0.75}, {25, 1}}};
constexpr std::array<CurvePoint, 9> sealed_by_temperature{{{0, 0.84},
                                                           {5, 0.88},
                                                           {10, 0.90},
                                                           {15, 0.94},
                                                           {20, 0.99},
                                                           {25, 1.00},
                                                           {30, 1.03},
                                                           {35, 1.04},
                                                           {40, 1.05}}};

}  // namespace

PeukertExponent peukert_exponent(Chemistry chemistry) {
  switch (chemistry) {
    case Chemistry::agm:
      return {1.05, 1.10, 1.15};
    case Chemistry::gel:
      return {1.10, 1.15, 1.25};
    case Chemistry::lfp:
      return {1.00, 1.03, 1.05};
    case Chemistry::flooded:
      break;
  }
  return {1.20, 1.25, 1.60};
}

Time time_to_empty(Charge capacity, Current current, double exponent, Time rate) {
  return rate * std::pow(ratio(capacity, current * rate), exponent);
}

Charge capacity_at(Charge capacity, Current current, double exponent, Time rate) {
  return current * time_to_empty(capacity, current, exponent, rate);
}

units::Fraction capacity_by_temperature(Chemistry chemistry, units::Temperature battery) {
  if (chemistry == Chemistry::lfp) return units::Fraction{1};
  if (chemistry == Chemistry::flooded)
    return units::Fraction{on_curve(traction_by_temperature, battery.celsius())};
  return units::Fraction{on_curve(sealed_by_temperature, battery.celsius())};
}

}  // namespace ohmtrail::trade
