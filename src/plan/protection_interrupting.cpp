#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

#include "ohmtrail/network/battery_facts.hpp"
#include "ohmtrail/solve/case_solution.hpp"
#include "ohmtrail/solve/solver.hpp"
#include "ohmtrail/trade/battery_short.hpp"
#include "ohmtrail/trade/fuse_ladder.hpp"
#include "ohmtrail/trade/protection.hpp"
#include "ohmtrail/units/print.hpp"
#include "plan/ground.hpp"
#include "plan/protection_rules.hpp"
#include "units/index.hpp"

/// Whether a fuse or breaker can break what the bank drives through a dead short behind it.
namespace ohmtrail::plan::protection {
namespace {

using diagnose::Finding;
using diagnose::Severity;
using network::Role;
using units::Current;

/// The case with nothing on: batteries at their ohmic resistance, everything else as good as it can be made.
network::Network short_network(const netlist::System& system, const netlist::Case& in_case) {
  auto network = network::build(system, in_case);
  for (auto& element : network.elements) {
    if (element.role == Role::load || element.role == Role::charger) element.active = false;
    if (element.sound && *element.sound < element.resistance) element.resistance = *element.sound;
    if (element.heating) element.heating->temperature_coefficient = 0;
    if (element.role == Role::isolator) element.role = Role::joint, element.resistance = units::Resistance{};
    if (element.role != Role::battery) continue;
    const auto& battery = system.batteries[element.origin.index];
    const auto dead_short = trade::short_circuit(network::battery_facts(battery, system.info.ambient));
    element.resistance = dead_short.resistance;
    element.voltage = dead_short.emf;
  }
  return network;
}

/// Current through a short between the feeding side of each device and the return, A; by element, NaN: not
/// fed. The larger over both sides, so that it does not matter which one feeds.
std::vector<double> prospective(const netlist::System& system, const netlist::Case& in_case,
                                const std::vector<int>& devices) {
  const auto network = short_network(system, in_case);
  std::vector<double> amperes(network.elements.size(), NAN);
  const int back = find_ground(system, network).point;
  if (back < 0) return amperes;
  solve::Solver solver(solve::circuit_of(network));
  const auto solved = solver.solve();
  if (!solved) return amperes;
  for (const int device : devices)
    for (const int point : {network.elements[at(device)].from, network.elements[at(device)].to}) {
      const double volts = std::abs(solved->voltage[at(point)] - solved->voltage[at(back)]);
      if (!(volts > 0.1)) continue;
      std::vector<double> injection(network.points.size(), 0);
      injection[at(point)] = 1, injection[at(back)] = -1;
      const auto response = solver.respond(injection);
      const double ohms = response[at(point)] - response[at(back)];
      if (ohms > 0) amperes[at(device)] = std::fmax(amperes[at(device)], volts / ohms);
    }
  return amperes;
}

std::vector<int> devices_of(const Context& context) {
  std::vector<int> devices;
  for (int e = 0; e < static_cast<int>(context.network.elements.size()); ++e)
    if (context.feed.stops(e) && context.guards.ungrounded[at(e)]) devices.push_back(e);
  return devices;
}

/// What a device breaks, A; empty: a breaker of which the file does not say.
std::optional<double> breaks(const Context& context, int device, bool& given, std::string& source) {
  const auto& origin = context.network.elements[at(device)].origin;
  given = true;
  if (origin.section == network::Section::switches) {
    const auto& breaker = context.system.switches[origin.index];
    if (breaker.interrupts) return breaker.interrupts->si();
    return std::nullopt;
  }
  const auto& fuse = context.system.fuses[origin.index];
  if (fuse.interrupts) return fuse.interrupts->si();
  given = false;
  const auto usual = trade::usual_fuse_limits(fuse.form.value_or(trade::usual_fuse_form(fuse.rating)));
  source = usual.source;
  return usual.breaks.si();
}

/// Cold-cranking amperes side by side: the batteries of a string count once. Empty: a battery does not say,
/// or is lithium, of which the table says nothing.
std::optional<Current> cold_cranking(const Context& context) {
  double sum = 0;
  for (const auto& battery : context.system.batteries) {
    if (!battery.cca || battery.chemistry == trade::Chemistry::lfp) return std::nullopt;
    sum += battery.cca->si() * battery.nominal.si() / context.system.info.nominal.si();
  }
  if (sum <= 0) return std::nullopt;
  return Current{sum};
}

/// Nothing stands between it and a battery.
bool is_main(const Context& context, int device) {
  const auto& element = context.network.elements[at(device)];
  return std::isfinite(context.feed.metres(element.from)) || std::isfinite(context.feed.metres(element.to));
}

Finding too_weak(const Context& context, int device, double breaks, bool given, double amperes) {
  Finding finding;
  finding.rule = "interrupting-capacity";
  // Behind a main fuse both see the current and the main one may well be the first.
  finding.severity = given && is_main(context, device) ? Severity::before_further_use : Severity::soon;
  finding.subject = context.network.elements[at(device)].id;
  finding.text = fmt::format("{} {}; a dead short here draws up to {}", given ? "breaks" : "usually breaks",
                             units::print(Current{breaks}), units::print(Current{amperes}));
  finding.remedy =
      given ? "Fit one that breaks that much, such as a fast high-interrupt cartridge, or one of these "
              "before it. Disconnect the battery first."
            : "Read the interrupting capacity off its body; if it is less, fit one that breaks that much.";
  finding.source =
      "Kirchhoff's laws with each battery at its ohmic resistance, the bank full and everything else sound";
  return finding;
}

Finding below_table(const Context& context, int device, double breaks, Current least,
                    const std::string& source) {
  Finding finding;
  finding.rule = "interrupting-capacity-by-table";
  finding.source = source;
  finding.subject = context.network.elements[at(device)].id;
  finding.text = fmt::format("breaks {}; for a bank of this cold-cranking total at least {} is asked for",
                             units::print(Current{breaks}), units::print(least));
  finding.remedy = "Fit a breaker that breaks that much. Disconnect the battery first.";
  return finding;
}

void judge_by_table(const Context& context, int device, double breaks, Findings& findings) {
  const auto cca = cold_cranking(context);
  if (!cca || context.rules != RuleSet::us_small_craft) return;
  const auto& element = context.network.elements[at(device)];
  if (element.origin.section != network::Section::switches) return;  // the table is one of breakers
  const auto least = trade::interrupting_capacity(context.system.info.nominal, *cca);
  const Current wanted = is_main(context, device) ? least.main : least.branch;
  if (breaks < wanted.si()) findings.push_back(below_table(context, device, breaks, wanted, least.source));
}

Finding unknown(const std::string& names, double amperes) {
  Finding finding;
  finding.rule = "interrupting-capacity-unknown";
  finding.source = "common practice: a breaker must be able to break what the bank can deliver";
  finding.severity = Severity::improvement;
  finding.subject = "system";
  finding.text = fmt::format(
      "the file does not say what these breakers can break: {}; a dead short behind them draws up to {}",
      names, units::print(Current{amperes}));
  finding.remedy = "Read it off their bodies and note it in the file, as \"interrupts\".";
  return finding;
}

}  // namespace

void devices_below_interrupting(const Context& context, Findings& findings) {
  const auto devices = devices_of(context);
  std::vector<double> most(context.network.elements.size(), NAN);
  for (const auto& in_case : context.system.cases) {
    const auto amperes = prospective(context.system, in_case, devices);
    for (const int device : devices) most[at(device)] = std::fmax(most[at(device)], amperes[at(device)]);
  }
  std::string silent;
  double silent_most = 0;
  for (const int device : devices) {
    bool given = true;
    std::string source;
    const auto capacity = breaks(context, device, given, source);
    if (!capacity) {
      if (std::isnan(most[at(device)])) continue;
      silent += (silent.empty() ? "" : ", ") + context.network.elements[at(device)].id;
      silent_most = std::max(silent_most, most[at(device)]);
      continue;
    }
    if (most[at(device)] > *capacity) {
      findings.push_back(too_weak(context, device, *capacity, given, most[at(device)]));
      if (!source.empty()) findings.back().source += "; " + source;
    } else {
      judge_by_table(context, device, *capacity, findings);
    }
  }
  if (!silent.empty()) findings.push_back(unknown(silent, silent_most));
}

}  // namespace ohmtrail::plan::protection
