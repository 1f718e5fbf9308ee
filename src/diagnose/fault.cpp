#include "fault.hpp"

#include <cmath>

#include "index.hpp"
#include "ohmtrail/network/battery_facts.hpp"
#include "ohmtrail/trade/battery_charge.hpp"
#include "ohmtrail/trade/battery_source.hpp"
#include "ohmtrail/trade/conductor.hpp"

namespace ohmtrail::diagnose {
namespace {

using network::Element;
using network::Role;

/// A wire measured as it was, beside a table value: the one knows its temperature, the other does not.
bool measured_against_table(const Element& element) {
  return element.role == Role::wire && element.as_found_given && element.sound_from_table && element.heating;
}

trade::ConductorKind metal_of(const netlist::System& system, const Element& wire) {
  return system.runs[wire.origin.index].conductor;
}

/// The table value of such a wire stands at the ambient temperature; this is the one at 20 °C.
double sound_at_20(const netlist::System& system, const Element& wire) {
  return wire.sound->si() / trade::resistance_factor(metal_of(system, wire), wire.heating->ambient);
}

/// Both sides of the comparison at one temperature, so that a warm wire is no fault.
bool above_sound(const Element& element, double used, double sound) {
  return measured_against_table(element) ? used > sound : element.resistance > *element.sound;
}

Cause cause_above_sound(Role role) {
  switch (role) {
    case Role::wire:
      return Cause::corroded_conductor;
    case Role::termination:
      return Cause::bad_termination;
    case Role::joint:
      return Cause::bad_joint;
    case Role::battery:
      return Cause::weak_battery;
    default:
      return Cause::worn_contact;
  }
}

bool can_be_faulty(Role role) {
  return role == Role::wire || role == Role::termination || role == Role::joint || role == Role::switchgear ||
         role == Role::fuse;
}

/// Below this a battery is charged before anything else is said of it: 12.4 V or 1.225, three quarters.
/// Sources: US Army TM 5-3805-281-24-2 (1.225: 75 percent); passenger-car service manuals 2003 (12.4 V).
constexpr double low_charge = 0.75;
/// Lithium keeps its volts and is not harmed by standing half charged (common practice: recharged from 20 %).
constexpr double low_charge_of_lithium = 0.2;

double low_charge_of(const netlist::Battery& battery) {
  return battery.chemistry == trade::Chemistry::lfp ? low_charge_of_lithium : low_charge;
}

struct Charge {
  double share = 1;  ///< of full
  double full = 0;   ///< V, open circuit when full
};

/// By what was told or measured of it: a voltage given outright says what it has, not what it should have.
Charge charge_of(const netlist::System& system, const Element& element) {
  auto facts = network::battery_facts(system.batteries[element.origin.index], system.info.ambient);
  facts.emf.reset();
  const auto cell = trade::rested_cell(facts.chemistry, units::Fraction{1}, trade::temperature_of(facts));
  return {trade::estimate_source(facts).charge.of_one(),
          cell.si() * trade::cells_in(facts.chemistry, facts.nominal)};
}

std::optional<Fault> passive_fault(const netlist::System& system, const solve::CaseSolution& solved,
                                   int index) {
  const auto& element = at(solved.network.elements, index);
  const auto sound = sound_now(system, solved, index);
  const double used = at(solved.solution.resistance, index);
  if (!sound || !above_sound(element, used, *sound)) return std::nullopt;
  Fault fault;
  fault.cause = cause_above_sound(element.role);
  fault.sound_resistance = sound;
  fault.excess = used - *sound;
  fault.cure = made_good(system, element, index);
  return fault;
}

std::optional<Fault> battery_fault(const netlist::System& system, const solve::CaseSolution& solved,
                                   int index) {
  const auto& element = at(solved.network.elements, index);
  const auto charge = charge_of(system, element);
  const bool weak = element.sound && element.resistance > *element.sound;
  const bool low = charge.share < low_charge_of(system.batteries[element.origin.index]) &&
                   charge.full > element.voltage.si();
  if (!weak && !low) return std::nullopt;
  Fault fault;
  fault.cause = low ? Cause::discharged_battery : Cause::weak_battery;
  fault.sound_resistance = sound_now(system, solved, index);
  if (element.sound) fault.excess = (element.resistance - *element.sound).si();
  fault.cure = Cure{index, weak ? element.sound->si() : element.resistance.si(), std::nullopt, std::nullopt};
  if (low) fault.cure.open_circuit = charge.full;
  return fault;
}

}  // namespace

Cure made_good(const netlist::System& system, const Element& element, int index) {
  if (!measured_against_table(element)) return {index, element.sound->si(), std::nullopt, std::nullopt};
  solve::Heating warm = solve::heating_of(*element.heating);
  warm.alpha = trade::temperature_coefficient(metal_of(system, element));
  return {index, sound_at_20(system, element), std::nullopt, warm};
}

std::optional<double> sound_now(const netlist::System& system, const solve::CaseSolution& solved, int index) {
  const auto& element = at(solved.network.elements, index);
  if (!element.sound) return std::nullopt;
  const double sound = element.sound->si();
  const double warm = at(solved.solution.temperature, index);
  if (measured_against_table(element) && std::isfinite(warm))
    return sound_at_20(system, element) *
           trade::resistance_factor(metal_of(system, element), units::Temperature{warm});
  const bool warms = element.heating && element.heating->temperature_coefficient > 0;
  if (!warms || element.resistance.si() <= 0) return sound;
  return sound * (at(solved.solution.resistance, index) / element.resistance.si());
}

std::optional<Fault> fault_of(const netlist::System& system, const solve::CaseSolution& solved, int index) {
  const auto& element = at(solved.network.elements, index);
  if (!element.active || !std::isfinite(at(solved.solution.resistance, index))) return std::nullopt;
  if (can_be_faulty(element.role)) return passive_fault(system, solved, index);
  if (element.role == Role::battery) return battery_fault(system, solved, index);
  return std::nullopt;
}

}  // namespace ohmtrail::diagnose
