#include <fmt/format.h>

#include <cmath>

#include "ohmtrail/units/print.hpp"
#include "plan/protection_rules.hpp"
#include "units/index.hpp"

/// A motor that is held fast draws its stall current until something opens: a windlass with its anchor
/// fouled, a pump with a rope in it. What the cables let through counts, not what the label says.
namespace ohmtrail::plan::protection {
namespace {

using diagnose::Finding;
using diagnose::Severity;
using units::Current;

/// A device that carries all but this of a load's current is in its feed.
constexpr double all_of_it = 0.999;

bool opens_on_overload(const network::Element& element, const netlist::System& system) {
  if (element.role == network::Role::fuse) return true;
  return element.role == network::Role::switchgear &&
         system.switches[element.origin.index].kind == trade::SwitchKind::breaker;
}

/// The motor alone is on, and held fast. Switches stand as the file has them.
std::optional<solve::CaseSolution> held_fast(const netlist::System& system, const netlist::Load& load) {
  netlist::Case alone;
  alone.on = {load.id};
  alone.set[load.id] = load.nominal.value_or(system.info.nominal) / *load.stall;
  auto solved = solve::solve_case(network::build(system, alone));
  if (!solved || solved->solution.collapse) return std::nullopt;
  return std::move(*solved);
}

struct Held {
  double current = 0;  ///< A, that the motor gets
  int device = -1;     ///< the smallest in its feed; −1: none
};

Held smallest_device(const Context& context, const solve::CaseSolution& solved, const std::string& load) {
  Held held;
  const auto motor = solved.network.element(load);
  if (motor) held.current = std::abs(solved.solution.current[at(*motor)]);
  for (int e = 0; e < static_cast<int>(solved.network.elements.size()); ++e) {
    if (!opens_on_overload(solved.network.elements[at(e)], context.system) || rating_of(context, e) <= 0)
      continue;
    if (std::abs(solved.solution.current[at(e)]) < all_of_it * held.current) continue;
    if (held.device < 0 || rating_of(context, e) < rating_of(context, held.device)) held.device = e;
  }
  return held;
}

Finding never_opens(const Context& context, const netlist::Load& load, const Held& held) {
  Finding finding;
  finding.rule = "fuse-above-stall";
  finding.source = "common practice: a motor's fuse opens on its stall current";
  finding.severity = Severity::soon;
  finding.subject = load.id;
  finding.text = fmt::format(
      "held fast it draws {} through these cables; the {} of {} in its feed, {}, never opens",
      units::print(Current{held.current}), kind_of(context, held.device),
      units::print(Current{rating_of(context, held.device)}), context.network.elements[at(held.device)].id);
  finding.remedy =
      "Fit the fuse or breaker that the motor's maker names, below what it draws when held. Disconnect the "
      "battery first.";
  return finding;
}

}  // namespace

void devices_above_stall(const Context& context, Findings& findings) {
  for (const auto& load : context.system.loads) {
    if (!load.stall) continue;
    const auto solved = held_fast(context.system, load);
    if (!solved) continue;
    const auto held = smallest_device(context, *solved, load.id);
    if (held.current <= 0 || held.device < 0 || held.current > rating_of(context, held.device)) continue;
    findings.push_back(never_opens(context, load, held));
  }
}

}  // namespace ohmtrail::plan::protection
