#include "charging_end.hpp"

namespace ohmtrail::diagnose {
namespace {

using network::Role;

// Common practice: absorption ends when a battery takes 1 to 2 % of its Ah in amperes.
constexpr double tail_current_per_ah = 0.01;
constexpr double tail_current_of_unknown = 1;
// Common practice: set points stand about 15 % above nominal, 13.8 V of 12 V.
constexpr double charging_over_nominal = 1.15;

double tail_current(const netlist::Battery& battery) {
  constexpr double seconds_an_hour = 3600;
  return battery.capacity ? tail_current_per_ah * battery.capacity->si() / seconds_an_hour
                          : tail_current_of_unknown;
}

/// As a resistance, so that a battery which no charger reaches takes nothing.
void make_nearly_full(network::Element& element, const netlist::Battery& battery) {
  element.role = Role::load;
  element.takes = units::Resistance{element.nominal->si() * charging_over_nominal / tail_current(battery)};
}

}  // namespace

std::optional<solve::CaseSolution> end_of_charging(const netlist::System& system,
                                                   const solve::CaseSolution& solved) {
  auto network = solved.network;
  for (auto& element : network.elements)
    if (element.role == Role::battery && element.nominal)
      make_nearly_full(element, system.batteries[element.origin.index]);
  auto end = solve::solve_case(std::move(network));
  if (!end) return std::nullopt;
  return std::move(*end);
}

}  // namespace ohmtrail::diagnose
