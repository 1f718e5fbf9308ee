#include "ohmtrail/diagnose/split.hpp"

#include "index.hpp"
#include "route.hpp"

namespace ohmtrail::diagnose {

void add(Parts& parts, network::Role role, double volts) {
  using network::Role;
  switch (role) {
    case Role::battery:
    case Role::charger:
      parts.battery += volts;
      return;
    case Role::wire:
      parts.wires += volts;
      return;
    case Role::termination:
      parts.terminations += volts;
      return;
    case Role::joint:
      parts.joints += volts;
      return;
    case Role::switchgear:
    case Role::fuse:
    case Role::shunt:
      parts.switchgear += volts;
      return;
    case Role::isolator:
      parts.isolators += volts;
      return;
    case Role::load:
      return;  // a load is where the route turns, never a part of the sag
  }
}

std::vector<SagSplit> split(const solve::CaseSolution& solved) {
  std::vector<SagSplit> rows;
  for (const auto& load : solved.loads) {
    const auto path = route(solved, load);
    if (!path) continue;
    SagSplit row{solved.network.case_name,
                 at(solved.network.elements, load.element).id,
                 load.sag,
                 {},
                 at(solved.network.elements, load.supply).role};
    for (const auto& leg : path->legs())
      add(row.parts, at(solved.network.elements, leg.element).role, leg.lost);
    rows.push_back(row);
  }
  return rows;
}

}  // namespace ohmtrail::diagnose
