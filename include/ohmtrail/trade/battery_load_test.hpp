#pragma once
#include <optional>
#include <string>

#include "ohmtrail/trade/battery_facts.hpp"

/// The half-CCA load test of a lead-acid battery: 15 s at half its cold-cranking amperes, and the least volts
/// that a good one keeps at its temperature. It proves engine starting, not stored energy.
namespace ohmtrail::trade {

inline constexpr units::Time load_test_hold{15};

/// Least volts at the end of the hold, straight lines between the rows of the manual's 12 V or 6 V column;
/// other nominals in proportion to the 12 V column. Above 21 °C as at 21 °C, below −18 °C as at −18 °C.
/// Source: US Army TM 5-4210-230-14&P-1, battery Table 5. Its 6 V column is not half the other below 10 °C.
[[nodiscard]] units::Voltage load_test_minimum(units::Voltage nominal, units::Temperature battery);

/// Whether the manual has a row as cold as this.
[[nodiscard]] bool load_test_table_reaches(units::Temperature battery);

struct ProperLoad {
  units::Current amps;
  std::string from;
};

/// Half the rated CCA; without one, half of 4 A of CCA for each Ah (deep cycle, common practice); empty:
/// neither is known, or the battery is lithium, which is never load-tested this way.
[[nodiscard]] std::optional<ProperLoad> proper_load(const BatteryFacts& facts);

/// How much a sag grows from `held` to 15 s: 5 % for every halving of the time, 1 for 15 s and longer.
/// Derived: the seconds' resistance is 1.5 to 2 times that at 1 kHz, spread over the 14 halvings between.
[[nodiscard]] double sag_growth_to_full_hold(units::Time held);

struct LoadTestResult {
  units::Voltage before;  ///< what the sag is counted from
  ProperLoad proper;
  units::Voltage projected;  ///< at the proper load after 15 s
  units::Voltage minimum;
  units::Temperature battery;
  bool passed = false;
  bool load_scaled = false;   ///< the test's load was more than 5 % from the proper one
  bool hold_scaled = false;   ///< it was held for less than 15 s
  bool hold_assumed = false;  ///< the seconds were not given: taken as 15
  /// Less than half the proper load or than 5 s: the projection reaches too far to condemn or to acquit
  /// alone.
  bool weak_evidence = false;
};

/// Judges the load test of `facts` from `open_circuit` where it does not say what stood before; empty: there
/// is none that can be judged (no proper load, a charger on, or volts that do not fall under load).
[[nodiscard]] std::optional<LoadTestResult> judge_load_test(const BatteryFacts& facts,
                                                            units::Voltage open_circuit);

}  // namespace ohmtrail::trade
