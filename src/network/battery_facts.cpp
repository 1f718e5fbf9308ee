#include "ohmtrail/network/battery_facts.hpp"

namespace ohmtrail::network {
namespace {

trade::CellLevel level_of(netlist::ElectrolyteLevel level) {
  switch (level) {
    case netlist::ElectrolyteLevel::above:
      return trade::CellLevel::above;
    case netlist::ElectrolyteLevel::below:
      return trade::CellLevel::below;
    case netlist::ElectrolyteLevel::dry:
      return trade::CellLevel::dry;
    case netlist::ElectrolyteLevel::at:
      break;
  }
  return trade::CellLevel::at;
}

trade::CellFact cell_of(const netlist::CellCheck& cell) {
  trade::CellFact fact{cell.specific_gravity, cell.volts, cell.temperature, {}};
  if (cell.level) fact.level = level_of(*cell.level);
  return fact;
}

void add_checks(trade::BatteryFacts& facts, const netlist::BatteryChecks& checks) {
  if (const auto& rest = checks.rest)
    facts.rest = {rest->volts, rest->rested, rest->temperature, rest->charging};
  if (const auto& test = checks.load_test)
    facts.load_test = {test->before,   test->amps,        test->volts,
                       test->duration, test->temperature, test->charging};
  if (const auto& tester = checks.tester)
    facts.tester = {tester->cca, tester->resistance, tester->temperature};
  for (const auto& cell : checks.cells) facts.cells.push_back(cell_of(cell));
}

}  // namespace

trade::BatteryFacts battery_facts(const netlist::Battery& battery, units::Temperature surroundings) {
  trade::BatteryFacts facts;
  facts.nominal = battery.nominal;
  facts.chemistry = battery.chemistry;
  facts.capacity = battery.capacity;
  facts.cca = battery.cca;
  facts.emf = battery.emf;
  facts.resistance = battery.resistance;
  facts.state_of_charge = battery.state_of_charge;
  facts.temperature = surroundings;
  add_checks(facts, battery.checks);
  return facts;
}

}  // namespace ohmtrail::network
