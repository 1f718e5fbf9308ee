#include "ohmtrail/solve/case_solution.hpp"

namespace ohmtrail::solve {

namespace {

using network::Element;
using network::Role;

void set_taken(Branch& branch, const netlist::Takes& takes) {
  if (const auto* power = std::get_if<units::Power>(&takes)) {
    branch.law = Law::power;
    branch.size = power->si();
  } else if (const auto* current = std::get_if<units::Current>(&takes)) {
    branch.law = Law::current;
    branch.size = current->si();
  } else if (const auto* resistance = std::get_if<units::Resistance>(&takes)) {
    branch.law = Law::resistor;
    branch.resistance = resistance->si();
  }
}

void set_load(Branch& branch, const Element& element) {
  if (element.takes) set_taken(branch, *element.takes);
  if (element.nominal) branch.nominal = element.nominal->si();
  if (element.stops_below) branch.stops_below = element.stops_below->si();
  if (element.partner >= 0) branch.size = element.idle.si();
}

void set_charger(Branch& branch, const Element& element) {
  branch.law = Law::regulator;
  branch.size = element.voltage.si();
  branch.limit = element.limit.si();
  branch.input = element.partner;
  branch.efficiency = element.efficiency;
  branch.idle = element.idle.si();
}

void set_passive(Branch& branch, const Element& element) {
  branch.law = Law::resistor;
  branch.resistance = element.resistance.si();
  if (element.heating) branch.heating = heating_of(*element.heating);
}

Branch branch_of(const Element& element) {
  Branch branch;
  branch.from = element.from;
  branch.to = element.to;
  if (!element.active) return branch;
  switch (element.role) {
    case Role::battery:
      branch.law = Law::source;
      branch.size = element.voltage.si();
      branch.resistance = element.resistance.si();
      break;
    case Role::charger:
      set_charger(branch, element);
      break;
    case Role::isolator:
      branch.law = Law::diode;
      branch.size = element.voltage.si();
      break;
    case Role::load:
      set_load(branch, element);
      break;
    default:
      set_passive(branch, element);
  }
  return branch;
}

}  // namespace

Heating heating_of(const network::WireHeating& wire) {
  const double alpha = wire.temperature_coefficient, ambient = wire.ambient.celsius(),
               rated = wire.rated.si();
  if (rated <= 0) return {alpha, ambient};
  return heating_at(alpha, ambient, wire.rise().si(), rated);
}

Circuit circuit_of(const network::Network& network) {
  Circuit circuit;
  circuit.points = static_cast<int>(network.points.size());
  circuit.reference = network.reference.value_or(-1);
  circuit.branches.reserve(network.elements.size());
  for (const Element& element : network.elements) circuit.branches.push_back(branch_of(element));
  return circuit;
}

}  // namespace ohmtrail::solve
