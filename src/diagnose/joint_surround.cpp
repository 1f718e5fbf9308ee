#include "joint_surround.hpp"

#include "index.hpp"

namespace ohmtrail::diagnose {

using network::Element;
using network::Part;
using network::Role;

bool is_contact(Role role) {
  return role == Role::termination || role == Role::joint || role == Role::switchgear || role == Role::fuse ||
         role == Role::shunt;
}

Surroundings::WireEnd Surroundings::end_of(const Element& termination) {
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

Surroundings::Surroundings(const netlist::System& system, const network::Network& network)
    : system_(system), network_(network), terminations_(network.points.size()) {
  for (int k = 0; k < static_cast<int>(network.elements.size()); ++k) {
    const Element& element = at(network.elements, k);
    if (element.role == Role::wire)
      wires_.emplace(WireEnd{element.origin.index, element.origin.part, true}, k);
    if (element.role != Role::termination) continue;
    at(terminations_, element.from).push_back(k);
    at(terminations_, element.to).push_back(k);
  }
}

Surround Surroundings::of(int element) const {
  const Element& self = at(network_.elements, element);
  std::set<int> contacts{element};
  for (const int point : {self.from, self.to})
    contacts.insert(at(terminations_, point).begin(), at(terminations_, point).end());
  std::set<WireEnd> ends;
  for (const int contact : contacts) {
    const Element& other = at(network_.elements, contact);
    if (other.role == Role::termination) ends.insert(end_of(other));
  }
  Surround out;
  out.contacts.assign(contacts.begin(), contacts.end());
  for (const WireEnd& end : ends) {
    const auto wire = wires_.find({end.run, end.wire, true});
    if (wire == wires_.end() || !at(network_.elements, wire->second).heating) continue;
    const netlist::Run& run = system_.runs[end.run];
    const trade::Fin fin = trade::fin_of(run.gauge, run.conductor);
    const double weight = trade::fin_conductance(fin, units::HeatTransferCoefficient{1}).si();
    out.cables.push_back({end.run, wire->second, fin, weight});
  }
  return out;
}

}  // namespace ohmtrail::diagnose
