#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "ohmtrail/diagnose/bank_verdict.hpp"
#include "ohmtrail/netlist/system.hpp"
#include "ohmtrail/network/network.hpp"

/// The batteries' own tests: what each check says, what they say together, and how the batteries suit each
/// other.
namespace ohmtrail::diagnose {

/// Batteries that work as one: in series, or strings side by side.
struct BatteryGroup {
  enum class Kind { series, parallel } kind = Kind::series;
  std::vector<std::vector<std::string>>
      members;          ///< ids; series: one list a step; parallel: one list a string
  std::string weakest;  ///< id; empty: none stands out
  /// Parallel: A that each string gives with nothing on, through the real cables; negative: it takes. Empty:
  /// not known.
  std::vector<double> at_rest;
  std::vector<BankFinding> findings;
};

[[nodiscard]] std::string_view word(BatteryGroup::Kind kind);

struct Bank {
  std::vector<BatteryVerdict> batteries;  ///< file order
  std::vector<BatteryGroup> groups;       ///< series first, by file order of their first battery
  std::vector<network::Assumption> assumptions;
};

/// Judges every battery from its checks and the bank from its wiring with the switches as the file has them.
[[nodiscard]] Bank judge_bank(const netlist::System& system);

/// What must be said wherever somebody is told to work on a battery.
[[nodiscard]] const std::vector<std::string_view>& battery_cautions();

}  // namespace ohmtrail::diagnose
