#include "network/table_values.hpp"

#include <fmt/core.h>

#include "ohmtrail/network/battery_facts.hpp"
#include "ohmtrail/trade/ampacity.hpp"
#include "ohmtrail/trade/conductor.hpp"
#include "ohmtrail/trade/gauge.hpp"

namespace ohmtrail::network {

namespace {

trade::WirePlace place_of(const netlist::Run& run, const netlist::System& system) {
  trade::WirePlace place;
  place.gauge = run.gauge;
  place.insulation = run.insulation;
  place.engine_space = run.in == "engine-space";
  place.bundle = run.bundle;
  place.conductor = run.conductor;
  place.system = system.info.nominal;
  return place;
}

}  // namespace

void fill_resistances(Element& element, const netlist::Resistances& given, const TableValue& table,
                      double share, std::vector<Assumption>& assumptions) {
  element.sound_from_table = !given.sound;
  element.as_found_given = given.as_found.has_value();
  element.sound = given.sound.value_or(table.value) * share;
  element.resistance = given.as_found ? *given.as_found * share : *element.sound;
  element.seen = given.seen;
  if (!given.sound)
    assumptions.push_back(
        {element.id, "sound resistance: " + table.basis, element.sound->si(), Assumed::sound_resistance});
}

Temperature ambient_of(const netlist::Run& run, const Surroundings& around) {
  return run.in == "engine-space" ? around.system.info.engine_space : around.ambient;
}

void fill_wire(Element& element, const netlist::Run& run, const netlist::Resistances& given,
               const Surroundings& around, std::vector<Assumption>& assumptions) {
  const trade::WirePlace place = place_of(run, around.system);
  const trade::Ampacity ampacity = trade::ampacity(place);
  const Temperature ambient = ambient_of(run, around);
  const bool from_table = !given.sound && !given.as_found;
  const double warm = trade::resistance_factor(run.conductor, ambient);
  const Resistance cold = trade::wire_resistance_at_20C(run.gauge, run.length, run.conductor);
  // A given value is taken as it stands; what it is held against must stand at the same temperature.
  const TableValue table{
      from_table ? cold : cold * warm,
      fmt::format("{} of {:.4g} m by gauge, length and metal{}", trade::print(run.gauge), run.length.si(),
                  from_table ? " at 20 °C" : " at the ambient temperature")};
  fill_resistances(element, given, table, 1, assumptions);
  element.heating =
      WireHeating{from_table ? trade::temperature_coefficient(run.conductor) : 0, ambient,
                  ampacity.rise_at_rated, ampacity.amps, trade::thermal_time_constant(place, ampacity)};
}

void fill_battery(Element& element, const netlist::Battery& battery, const Surroundings& around,
                  std::vector<Assumption>& assumptions) {
  const trade::BatterySource source = trade::estimate_source(battery_facts(battery, around.ambient));
  element.voltage = source.open_circuit;
  element.resistance = source.resistance;
  element.sound = source.sound_resistance;
  element.sound_from_table = !battery.resistance;
  element.as_found_given = battery.resistance.has_value();
  element.nominal = battery.nominal;
  element.seen = battery.seen;
  if (!battery.emf) {
    assumptions.push_back({battery.id, "open-circuit voltage: " + source.open_circuit_from,
                           element.voltage.si(), Assumed::voltage});
  }
  if (!battery.resistance) {
    assumptions.push_back({battery.id, "internal resistance: " + source.resistance_from,
                           element.resistance.si(), Assumed::resistance});
  }
  for (const trade::SourceNote& note : source.notes)
    assumptions.push_back({battery.id, note.text, std::nullopt});
}

}  // namespace ohmtrail::network
