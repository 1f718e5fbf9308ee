#pragma once
#include <set>
#include <string>
#include <vector>

#include "ohmtrail/plan/protection.hpp"
#include "plan/feed.hpp"
#include "plan/guards.hpp"

/// The rules of `check_protection`, one function each.
namespace ohmtrail::plan::protection {

struct Context {
  const netlist::System& system;
  const std::vector<solve::CaseSolution>& solved;
  RuleSet rules;
  const network::Network& network;  ///< of the first case; what stands where is the same in all
  Guards guards;
  Feed feed;

  Context(const netlist::System& of, const std::vector<solve::CaseSolution>& cases, RuleSet by)
      : system(of),
        solved(cases),
        rules(by),
        network(cases.front().network),
        guards(find_guards(of, cases.front().network)),
        feed(of, cases.front().network, guards) {}
};

using Findings = std::vector<diagnose::Finding>;

/// Ungrounded runs that a battery feeds further than allowed before the first fuse or breaker.
void unfused_runs(const Context& context, Findings& findings);
/// Devices rated above the ampacity of what they guard.
void devices_over_ampacity(const Context& context, Findings& findings);
/// Devices made for less than the system's voltage.
void devices_below_voltage(const Context& context, Findings& findings);
/// Devices that cannot break what the bank can deliver.
void devices_below_interrupting(const Context& context, Findings& findings);
/// Wires above their insulation's rating under starters, windlasses and other short heavy duty.
void short_duty_heat(const Context& context, Findings& findings);
/// Motors held fast whose fuse or breaker would carry the current for ever.
void devices_above_stall(const Context& context, Findings& findings);
void wing_nuts(const Context& context, Findings& findings);
/// Points at which more than four lugs meet.
void crowded_studs(const Context& context, Findings& findings);
/// Batteries and loads whose negative and positive cables differ in size.
void unlike_gauges(const Context& context, Findings& findings);
/// Strings side by side whose links differ in size.
void unlike_links(const Context& context, Findings& findings);
void unlike_batteries(const Context& context, Findings& findings);

/// Wires of one case that a load of short duty brings above their ampacity, and how warm they become.
struct ShortDuty {
  int element = -1;  ///< wire
  std::size_t in_case = 0;
  std::string load;
  double celsius = 0;  ///< hottest, at the end of its time on
  double current = 0;  ///< A, inrush included
  double seconds = 0;  ///< on for
};
[[nodiscard]] std::vector<ShortDuty> short_duties(const Context& context);

/// The run's id for a wire, its own for anything else.
[[nodiscard]] std::string subject_of(const Context& context, int element);
/// Rating of a fuse or breaker, A.
[[nodiscard]] double rating_of(const Context& context, int element);
/// "blade fuse", "breaker" …
[[nodiscard]] std::string kind_of(const Context& context, int element);
/// A, with every factor; 0: not a wire.
[[nodiscard]] double ampacity_of(const Context& context, int element);

}  // namespace ohmtrail::plan::protection
