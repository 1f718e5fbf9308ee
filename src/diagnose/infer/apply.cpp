#include "ohmtrail/diagnose/infer_apply.hpp"

#include <algorithm>

#include "ohmtrail/network/network.hpp"

namespace ohmtrail::diagnose {
namespace {

using netlist::RunEnd;
using network::Part;

// The half of an end that an element is. A crimp given its own value leaves the other to the bolted contact.
void set_end(RunEnd& end, bool is_crimp, units::Resistance value) {
  if (!is_crimp) {
    end.resistances.as_found = value;
    return;
  }
  if (!end.crimp) {
    end.crimp.emplace();
  }
  end.crimp->as_found = value;
}

void set_in_run(netlist::Run& run, Part part, units::Resistance value) {
  switch (part) {
    case Part::from:
    case Part::from_crimp:
      return set_end(run.end_from, part == Part::from_crimp, value);
    case Part::to:
    case Part::to_crimp:
      return set_end(run.end_to, part == Part::to_crimp, value);
    case Part::return_from:
    case Part::return_from_crimp:
      return set_end(run.return_conductor.value().end_from, part == Part::return_from_crimp, value);
    case Part::return_to:
    case Part::return_to_crimp:
      return set_end(run.return_conductor.value().end_to, part == Part::return_to_crimp, value);
    case Part::return_wire:
      run.return_conductor.value().wire.as_found = value;
      return;
    default:
      run.wire.as_found = value;
  }
}

void set_resistance(netlist::System& system, const network::Origin& origin, units::Resistance value) {
  switch (origin.section) {
    case network::Section::runs:
      return set_in_run(system.runs[origin.index], origin.part, value);
    case network::Section::joints:
      system.joints[origin.index].resistances.as_found = value;
      return;
    case network::Section::switches:
      system.switches[origin.index].resistances.as_found = value;
      return;
    case network::Section::fuses:
      system.fuses[origin.index].resistances.as_found = value;
      return;
    default:
      return;
  }
}

netlist::Takes scaled(const netlist::Takes& takes, double share) {
  return std::visit([&](auto quantity) -> netlist::Takes { return quantity * share; }, takes);
}

void set_load(netlist::System& system, const InferredLoad& load) {
  const auto in_case = std::find_if(system.cases.begin(), system.cases.end(),
                                    [&](const netlist::Case& one) { return one.name == load.in_case; });
  const auto rated = std::find_if(system.loads.begin(), system.loads.end(),
                                  [&](const netlist::Load& one) { return one.id == load.id; });
  if (in_case == system.cases.end() || rated == system.loads.end()) {
    return;
  }
  const auto own = in_case->set.find(load.id);
  in_case->set[load.id] = scaled(own != in_case->set.end() ? own->second : rated->takes, load.share);
}

}  // namespace

netlist::System with_inferred(const netlist::System& system, const InferResult& result) {
  netlist::System out = system;
  const network::Network network = network::build(system, system.cases.front());
  for (const InferredElement& element : result.elements) {
    if (const auto index = network.element(element.id); element.informed && index) {
      set_resistance(out, network.elements[static_cast<std::size_t>(*index)].origin,
                     units::Resistance{element.resistance});
    }
  }
  for (std::size_t k = 0; k < result.batteries.size(); ++k) {
    if (result.batteries[k].informed) {
      out.batteries[k].emf = units::Voltage{result.batteries[k].emf};
      out.batteries[k].resistance = units::Resistance{result.batteries[k].resistance};
    }
  }
  for (const InferredLoad& load : result.loads) {
    set_load(out, load);
  }
  out.readings.clear();
  return out;
}

std::map<std::string, double> fault_probabilities(const InferResult& result) {
  std::map<std::string, double> out;
  for (const InferredElement& element : result.elements) {
    out[element.id] = element.fault_probability;
  }
  for (const InferredBattery& battery : result.batteries) {
    out[battery.id] = battery.fault_probability;
  }
  return out;
}

std::map<std::string, Unparted> unparted(const InferResult& result) {
  constexpr double more_likely_than_not = 0.5, tells = 0.8, worth_a_word = 0.05;
  const std::map<std::string, double> chance = fault_probabilities(result);
  std::map<std::string, Unparted> out;
  for (const InferredConductor& conductor : result.conductors) {
    const bool told = std::any_of(conductor.parts.begin(), conductor.parts.end(), [&](const std::string& id) {
      return chance.at(id) >= tells * conductor.fault_probability;
    });
    if (told || conductor.fault_probability < more_likely_than_not) continue;
    for (const std::string& id : conductor.parts) {
      if (chance.at(id) >= worth_a_word) out[id] = {conductor.id, conductor.fault_probability};
    }
  }
  return out;
}

}  // namespace ohmtrail::diagnose
