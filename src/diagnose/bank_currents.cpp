#include "bank_currents.hpp"

#include "ohmtrail/solve/case_solution.hpp"

namespace ohmtrail::diagnose::bank {
namespace {

std::optional<Currents> currents_in(const netlist::System& system, const netlist::Case& in_case) {
  auto without_converters = in_case;
  for (const auto& converter : system.converters) without_converters.open.push_back(converter.id);
  const auto solved = solve::solve_case(network::build(system, without_converters));
  if (!solved || solved->solution.collapse) return std::nullopt;
  Currents currents(system.batteries.size());
  for (std::size_t k = 0; k < solved->network.elements.size(); ++k) {
    const auto& element = solved->network.elements[k];
    if (element.role == network::Role::battery) currents[element.origin.index] = -solved->solution.current[k];
  }
  return currents;
}

/// The currents add up only where the loads do not care for the voltage, but nearly so everywhere.
std::optional<Currents> added_by_load(const netlist::System& system, netlist::Case in_case,
                                      const Currents& at_rest) {
  in_case.chargers.clear();
  in_case.open.clear();
  in_case.closed.clear();  // the batteries are judged as the file's switches join them
  auto currents = currents_in(system, in_case);
  if (!currents) return std::nullopt;
  for (std::size_t i = 0; i < at_rest.size(); ++i) (*currents)[i] -= at_rest[i];
  return currents;
}

}  // namespace

BankCurrents bank_currents(const netlist::System& system) {
  BankCurrents found;
  found.at_rest = currents_in(system, {});
  if (!found.at_rest) return found;
  for (const auto& one : system.cases)
    if (auto currents = added_by_load(system, one, *found.at_rest))
      found.under_load.push_back(std::move(*currents));
  return found;
}

}  // namespace ohmtrail::diagnose::bank
