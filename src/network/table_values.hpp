#pragma once
#include <string>

#include "ohmtrail/network/network.hpp"
#include "ohmtrail/trade/battery_source.hpp"

/// Fills in what the netlist left to the tables, and notes every default it used.
namespace ohmtrail::network {

/// What holds for every element of one case.
struct Surroundings {
  const netlist::System& system;
  Temperature ambient;  ///< of the case, else of the system
};

/// A value that is used where the netlist gives none, and the words that say where it comes from.
struct TableValue {
  Resistance value;
  std::string basis;
};

/// Sets resistance, sound and their origin of a passive element from what was given, else from the table.
/// `share` is the part of a whole termination that this element is.
void fill_resistances(Element& element, const netlist::Resistances& given, const TableValue& table,
                      double share, std::vector<Assumption>& assumptions);

/// The wire of a run or of its return.
void fill_wire(Element& element, const netlist::Run& run, const netlist::Resistances& given,
               const Surroundings& around, std::vector<Assumption>& assumptions);

/// Open-circuit voltage and internal resistance.
void fill_battery(Element& element, const netlist::Battery& battery, const Surroundings& around,
                  std::vector<Assumption>& assumptions);

/// Where a wire lies decides the temperature around it.
[[nodiscard]] Temperature ambient_of(const netlist::Run& run, const Surroundings& around);

}  // namespace ohmtrail::network
