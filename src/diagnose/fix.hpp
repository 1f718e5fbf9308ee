#pragma once
#include <optional>
#include <string>

#include "ohmtrail/diagnose/bank_verdict.hpp"
#include "ohmtrail/diagnose/cause.hpp"
#include "ohmtrail/netlist/system.hpp"
#include "ohmtrail/network/network.hpp"

namespace ohmtrail::diagnose {

/// What decides the wording of a fix beside the cause.
struct FixContext {
  const netlist::System& system;
  const network::Element& element;
  std::string better_gauge;          ///< undersized: what to fit
  bool burns = false;                ///< too hot to touch
  double resistance_over_sound = 1;  ///< batteries: decides between a test and a replacement
  /// Batteries: what their own checks say, which goes before all else; empty: they have none.
  std::optional<BatteryState> own_tests = {};
};

/// A short imperative sentence or two in trade words, with the caution first where the work can burn or gas.
/// What eye and hand found decides between tightening, cleaning and replacing.
[[nodiscard]] std::string fix(Cause cause, const FixContext& context);

}  // namespace ohmtrail::diagnose
