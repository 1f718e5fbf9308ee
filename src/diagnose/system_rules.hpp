#pragma once
#include <string>
#include <vector>

#include "ohmtrail/diagnose/finding.hpp"
#include "ohmtrail/netlist/system.hpp"
#include "ohmtrail/solve/case_solution.hpp"

/// The rules of `check_system`, each for one solved case.
namespace ohmtrail::diagnose {

struct RuleContext {
  const netlist::System& system;
  const solve::CaseSolution& solved;
  const std::vector<solve::CaseSolution>& all;  ///< every solved case
};

/// Findings in the order in which they were met; of one rule and subject the worst is kept.
class Collected {
 public:
  /// `badness` orders the cases of one rule and subject: larger is worse, the first of equals stays.
  void add(Finding finding, double badness);
  [[nodiscard]] std::vector<Finding> worst_first() const;

 private:
  struct Entry {
    Finding finding;
    double badness = 0;
  };
  std::vector<Entry> entries_;
};

/// A finding about something, in every case, to be mended soon: what is not so is set by the rule.
[[nodiscard]] Finding finding_of(std::string rule, std::string source, std::string subject);

/// Parts of the network that no source reaches.
void dead_islands(const RuleContext& context, Collected& collected);
/// Open ends that are live.
void live_stubs(const RuleContext& context, Collected& collected);
/// Loads whose drop is outside their limit.
void limits_broken(const RuleContext& context, Collected& collected);
/// Loads that are on but stopped for want of voltage.
void dropped_out(const RuleContext& context, Collected& collected);
/// Loads that stop for want of voltage, recover, start and stop again.
void hunting(const RuleContext& context, Collected& collected);
/// Loads that run now, but would stop with the batteries at half charge.
void stopped_at_half_charge(const RuleContext& context, Collected& collected);
/// More volts lost between a charger and a battery than should be, and batteries that never come to the set
/// point of their charger.
void charging_losses(const RuleContext& context, Collected& collected);
/// A case whose loads ask for more than the system can deliver.
void collapsed_case(const RuleContext& context, Collected& collected);
/// Wires that carry more than their ampacity.
void wires_overloaded(const RuleContext& context, Collected& collected);
/// Wires warmer than their insulation stands.
void wires_too_hot(const RuleContext& context, Collected& collected);
/// Connections too hot to touch, or hotter than the insulation beside them stands.
void joints_too_hot(const RuleContext& context, Collected& collected);

/// Connections that were found warm, scaled to the fullest load.
void measured_heat(const RuleContext& context, Collected& collected);

}  // namespace ohmtrail::diagnose
