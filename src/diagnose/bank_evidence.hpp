#pragma once
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "ohmtrail/diagnose/bank_verdict.hpp"
#include "ohmtrail/netlist/system.hpp"
#include "ohmtrail/trade/battery_load_test.hpp"
#include "ohmtrail/trade/battery_source.hpp"

/// One battery's checks read into numbers, and the signs that its judges find in them.
namespace ohmtrail::diagnose::bank {

/// Gravities at 26.7 °C of the cells that have one, numbered from 1 as the file lists them.
struct Gravities {
  std::vector<std::pair<int, double>> of_cells;
  double mean = 0, spread = 0, lowest = 0;
  int lowest_cell = 0;
  double mean_of_others = 0;  ///< without the lowest; the mean itself where there is but one
};

/// What the judges found; the verdict is drawn from these alone.
struct Signs {
  bool do_not_test = false;
  bool plates_exposed = false, plates_dry = false;
  bool dead_cell = false, uneven_cells = false;
  bool contradiction = false;
  bool low_charge = false, charge_known = false;
  bool load_passed = false, load_failed = false, load_doubtful = false;
  bool tester_passed = false, tester_failed = false, tester_suspect = false;
  bool resistance_raised = false, resistance_failed = false;
  bool cells_good = false;

  [[nodiscard]] bool tested_under_load() const {
    return load_passed || load_failed || load_doubtful || tester_passed || tester_failed || tester_suspect;
  }
};

struct Evidence {
  const netlist::Battery* battery = nullptr;
  const netlist::SystemInfo* info = nullptr;
  trade::BatteryFacts facts;
  trade::BatterySource source;
  int cells = 0;  ///< that the nominal voltage calls for
  units::Temperature temperature;
  std::optional<Gravities> gravities;
  std::optional<units::Voltage> rest;  ///< of the battery, brought to 26.7 °C; empty with a charger on
  Signs signs;
  std::vector<BankFinding> findings;

  [[nodiscard]] bool lithium() const { return facts.chemistry == trade::Chemistry::lfp; }
  [[nodiscard]] bool flooded() const { return facts.chemistry == trade::Chemistry::flooded; }
  /// Volts of a 12 V battery that this one's volts correspond to.
  [[nodiscard]] double as_12_volts(units::Voltage volts) const { return volts.si() / cells * 6; }
};

[[nodiscard]] Evidence gather(const netlist::Battery& battery, const netlist::SystemInfo& info);

inline constexpr const char* common_practice = "common practice";

/// The judges, each of one kind of check. Later ones may look at the signs of earlier ones.
void judge_safety(Evidence& evidence);
void judge_levels(Evidence& evidence);
void judge_cells(Evidence& evidence);
void judge_rest(Evidence& evidence);
void judge_lithium(Evidence& evidence);
void judge_load_test(Evidence& evidence);
void judge_tester(Evidence& evidence);
void judge_resistance(Evidence& evidence);
void judge_case(Evidence& evidence);
void advise_next_test(Evidence& evidence);

[[nodiscard]] BatteryState state_of(const Evidence& evidence);
[[nodiscard]] std::string in_words(const Evidence& evidence, BatteryState state);

}  // namespace ohmtrail::diagnose::bank
