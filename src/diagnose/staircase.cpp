#include "ohmtrail/diagnose/staircase.hpp"

#include <algorithm>
#include <cmath>

#include "fault.hpp"
#include "index.hpp"
#include "route.hpp"

namespace ohmtrail::diagnose {
namespace {

using network::Element;
using network::Role;

/// Loads, sources' set points, shunts and isolators are what they are.
bool has_sound_value(const Element& element) {
  return element.sound && element.role != Role::load && element.role != Role::charger;
}

Step step_of(const solve::CaseSolution& found, const Leg& leg) {
  const auto& element = at(found.network.elements, leg.element);
  const auto& first = at(found.network.points, leg.forward ? element.from : element.to);
  const auto& second = at(found.network.points, leg.forward ? element.to : element.from);
  Step step{element.id, element.role, first, second};
  step.lost = leg.lost;
  return step;
}

std::vector<Leg> all_legs(const Route& way, const solve::LoadResult& load) {
  std::vector<Leg> legs = way.source;
  legs.insert(legs.end(), way.there.begin(), way.there.end());
  legs.push_back({load.element, true, load.volts});
  legs.insert(legs.end(), way.back.begin(), way.back.end());
  return legs;
}

/// Fills the losses as rated, and both columns of what is left after each step.
void descend(Staircase& stairs, const std::vector<Leg>& legs, const solve::CaseSolution* rated) {
  double after = stairs.open_circuit;
  double after_as_rated = after;
  for (std::size_t k = 0; k < legs.size(); ++k) {
    auto& step = stairs.steps[k];
    step.lost_as_rated = rated ? lost_in(*rated, legs[k]) : step.lost;
    step.after = after -= step.lost;
    step.after_as_rated = after_as_rated -= step.lost_as_rated;
  }
}

/// Every element of the route must carry current in the sound system too, or the columns would not be
/// comparable.
bool comparable(const solve::CaseSolution& rated, const std::vector<Leg>& legs) {
  return std::all_of(legs.begin(), legs.end(),
                     [&](const Leg& leg) { return std::isfinite(at(rated.solution.drop, leg.element)); });
}

}  // namespace

network::Network as_rated(const netlist::System& system, network::Network network) {
  for (int k = 0; k < static_cast<int>(network.elements.size()); ++k) {
    auto& element = at(network.elements, k);
    if (!has_sound_value(element)) continue;
    const auto cure = made_good(system, element, k);
    element.resistance = units::Resistance{cure.resistance};
    element.as_found_given = false;
    if (!cure.heating) continue;
    element.heating->temperature_coefficient = cure.heating->alpha;
    element.sound = element.resistance;
  }
  return network;
}

std::optional<Staircase> staircase(const solve::CaseSolution& found, const solve::CaseSolution* rated,
                                   int load_element) {
  const auto load = std::find_if(found.loads.begin(), found.loads.end(),
                                 [&](const solve::LoadResult& one) { return one.element == load_element; });
  if (load == found.loads.end()) return std::nullopt;
  const auto way = route(found, *load);
  if (!way) return std::nullopt;
  const auto& element = at(found.network.elements, load_element);
  Staircase stairs;
  stairs.in_case = found.network.case_name;
  stairs.load = element.id;
  stairs.supply = at(found.network.elements, way->supply->elements.front()).id;
  stairs.open_circuit = way->supply->open_circuit;
  stairs.terminal = way->supply->terminal;
  if (std::isfinite(load->limit_fraction) && element.nominal)
    stairs.limit = load->limit_fraction * element.nominal->si();
  const auto legs = all_legs(*way, *load);
  for (const auto& leg : legs) stairs.steps.push_back(step_of(found, leg));
  stairs.as_rated_known = rated && comparable(*rated, legs);
  descend(stairs, legs, stairs.as_rated_known ? rated : nullptr);
  return stairs;
}

}  // namespace ohmtrail::diagnose
