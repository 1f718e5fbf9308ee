#pragma once
#include <optional>
#include <vector>

#include "ohmtrail/netlist/system.hpp"

/// What batteries that stand side by side really carry: the network is solved, so the cables, lugs and
/// switches between them count.
namespace ohmtrail::diagnose::bank {

/// A per battery, file order: what it gives; negative: what it takes.
using Currents = std::vector<double>;

struct BankCurrents {
  std::optional<Currents> at_rest;   ///< nothing on, no charger; empty: no solution
  std::vector<Currents> under_load;  ///< what the loads of each case of the file add to that, no charger
};

[[nodiscard]] BankCurrents bank_currents(const netlist::System& system);

}  // namespace ohmtrail::diagnose::bank
