#include "ohmtrail/diagnose/joint_temperature.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "index.hpp"
#include "joint_heat.hpp"
#include "ohmtrail/trade/fin.hpp"

namespace ohmtrail::diagnose {
namespace {

using network::Element;
using network::Part;
using network::Role;

bool is_contact(Role role) {
  return role == Role::termination || role == Role::joint || role == Role::switchgear || role == Role::fuse ||
         role == Role::shunt;
}

WireEnd end_of(const Element& termination) {
  const auto run = termination.origin.index;
  switch (termination.origin.part) {
    case Part::from:
    case Part::from_crimp:
      return {run, Part::wire, true};
    case Part::to:
    case Part::to_crimp:
      return {run, Part::wire, false};
    case Part::return_from:
    case Part::return_from_crimp:
      return {run, Part::return_wire, true};
    default:
      return {run, Part::return_wire, false};
  }
}

/// The cables as fins, and the temperature that they have by themselves where they meet.
struct Cables {
  std::vector<trade::Fin> fins;
  double own_temperature = 0;  ///< °C, mean weighted by what each can carry off
  double ambient = -std::numeric_limits<double>::infinity();
  double insulation_rating = std::numeric_limits<double>::infinity();
};

void add(Cables& cables, double& weights, const netlist::Run& run, const Element& wire, double temperature) {
  const auto fin = trade::fin_of(run.gauge, run.conductor);
  const double ambient = wire.heating->ambient.celsius();
  const double weight = trade::fin_conductance(fin, units::HeatTransferCoefficient{1}).si();
  cables.own_temperature += weight * (std::isfinite(temperature) ? temperature : ambient);
  weights += weight;
  cables.ambient = std::max(cables.ambient, ambient);
  cables.insulation_rating = std::min(cables.insulation_rating, run.insulation.celsius());
  cables.fins.push_back(fin);
}

Cables cables_of(const netlist::System& system, const solve::CaseSolution& solved,
                 const std::map<WireEnd, int>& wires, const std::set<WireEnd>& ends) {
  Cables cables;
  double weights = 0;
  for (const auto& end : ends) {
    const auto wire = wires.find({end.run, end.wire, true});
    if (wire == wires.end() || !at(solved.network.elements, wire->second).heating) continue;
    add(cables, weights, system.runs[end.run], at(solved.network.elements, wire->second),
        at(solved.solution.temperature, wire->second));
  }
  if (weights > 0) cables.own_temperature /= weights;
  return cables;
}

double to_5_kelvin(double celsius) {
  return 5 * std::round(celsius / 5);
}

}  // namespace

JointHeat::JointHeat(const netlist::System& system, const solve::CaseSolution& solved)
    : system_(system), solved_(solved), terminations_(solved.network.points.size()) {
  const auto& elements = solved.network.elements;
  for (int k = 0; k < static_cast<int>(elements.size()); ++k) {
    const auto& element = at(elements, k);
    if (element.role == Role::wire)
      wires_.emplace(WireEnd{element.origin.index, element.origin.part, true}, k);
    if (element.role != Role::termination) continue;
    at(terminations_, element.from).push_back(k);
    at(terminations_, element.to).push_back(k);
  }
}

JointHeat::Surround JointHeat::surround_of(int index) const {
  const auto& self = at(solved_.network.elements, index);
  std::set<int> contacts{index};
  for (const int point : {self.from, self.to})
    contacts.insert(at(terminations_, point).begin(), at(terminations_, point).end());
  Surround around;
  for (const int contact : contacts) {
    if (const double heat = at(solved_.solution.heat, contact); std::isfinite(heat)) around.heat += heat;
    const auto& element = at(solved_.network.elements, contact);
    if (element.role == Role::termination) around.cables.insert(end_of(element));
  }
  return around;
}

std::optional<JointTemperature> JointHeat::of(int index) const {
  const auto& element = at(solved_.network.elements, index);
  const double current = at(solved_.solution.current, index);
  if (!is_contact(element.role) || !element.active || !std::isfinite(current) || current == 0)
    return std::nullopt;
  const auto around = surround_of(index);
  const auto cables = cables_of(system_, solved_, wires_, around.cables);
  if (cables.fins.empty()) return std::nullopt;
  JointTemperature joint;
  joint.rise =
      trade::joint_rise(units::Power{around.heat}, cables.fins, units::Temperature{cables.ambient}).si();
  joint.celsius = to_5_kelvin(cables.own_temperature + joint.rise);
  joint.cables = static_cast<int>(cables.fins.size());
  joint.insulation_rating = cables.insulation_rating;
  joint.too_hot_to_touch = joint.celsius >= touch_limit_celsius;
  joint.above_insulation = joint.celsius > joint.insulation_rating;
  return joint;
}

std::optional<JointTemperature> joint_temperature(const netlist::System& system,
                                                  const solve::CaseSolution& solved, int element) {
  return JointHeat(system, solved).of(element);
}

std::optional<std::string> heat_warning(const JointTemperature& joint) {
  if (joint.above_insulation)
    return fmt::format(
        "about {:.0f} °C if it stays on: above the {:.0f} °C that the cable's insulation is rated for, and "
        "too hot to touch",
        joint.celsius, joint.insulation_rating);
  if (joint.too_hot_to_touch)
    return fmt::format(
        "about {:.0f} °C if it stays on: too hot to touch (bare metal burns at {:.0f} °C within a second; "
        "from memory: ISO "
        "13732-1)",
        joint.celsius, touch_limit_celsius);
  return std::nullopt;
}

}  // namespace ohmtrail::diagnose
