#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "index.hpp"
#include "ohmtrail/network/battery_facts.hpp"
#include "ohmtrail/trade/battery_charge.hpp"
#include "ohmtrail/trade/battery_resistance.hpp"
#include "ohmtrail/trade/battery_source.hpp"
#include "ohmtrail/units/print.hpp"
#include "system_rules.hpp"

/// Rules about loads with a low-voltage cut-out: hunting, and stopping before the battery is empty.
namespace ohmtrail::diagnose {
namespace {

using network::Role;
using units::print;
using units::Voltage;

constexpr units::Fraction half{0.5};
constexpr double usual_swing = 0.02;  // of nominal, common practice

bool stopped(const RuleContext& context, const solve::LoadResult& load) {
  const auto& element = at(context.solved.network.elements, load.element);
  return !load.running && element.active && element.stops_below && std::isfinite(load.volts);
}

/// The volts at which a stopped load starts again.
Voltage restart_of(const RuleContext& context, const network::Element& element) {
  const auto& origin = element.origin;
  if (origin.section != network::Section::loads) return *element.stops_below;
  return context.system.loads[origin.index].restarts_above.value_or(*element.stops_below);
}

/// The same case in the moment in which the load draws.
std::optional<solve::CaseSolution> while_drawing(const RuleContext& context, int load) {
  auto network = context.solved.network;
  at(network.elements, load).stops_below.reset();
  auto solved = solve::solve_case(std::move(network));
  if (!solved || solved->solution.collapse) return std::nullopt;
  return std::move(*solved);
}

struct Pulse {
  std::string load;
  double volts = 0, fraction = 0;
};

/// The other running load whose voltage moves most against its nominal.
Pulse largest_pulse(const RuleContext& context, const solve::CaseSolution& drawing, int hunting_load) {
  Pulse largest;
  for (std::size_t k = 0; k < context.solved.loads.size(); ++k) {
    const auto& calm = context.solved.loads[k];
    const auto& element = at(context.solved.network.elements, calm.element);
    if (calm.element == hunting_load || !calm.running || !element.nominal) continue;
    const double moved = std::abs(calm.volts - drawing.loads[k].volts);
    const double fraction = moved / element.nominal->si();
    if (fraction > largest.fraction) largest = {element.id, moved, fraction};
  }
  return largest;
}

std::string pulse_in_words(const RuleContext& context, const Pulse& pulse) {
  const double limit = context.system.info.limits.swing.value_or(units::Fraction{usual_swing}).of_one();
  if (pulse.fraction <= limit) return "";
  return fmt::format("; with it {} swings by {} ({} where {} is allowed)", pulse.load,
                     print(Voltage{pulse.volts}), print(units::Fraction{pulse.fraction}),
                     print(units::Fraction{limit}));
}

/// The network with every battery that is fuller brought to half charge.
network::Network at_half_charge(const RuleContext& context) {
  auto network = context.solved.network;
  for (auto& element : network.elements) {
    if (element.role != Role::battery) continue;
    const auto facts =
        network::battery_facts(context.system.batteries[element.origin.index], context.system.info.ambient);
    const auto charge = trade::estimate_source(facts).charge;
    if (charge <= half) continue;
    element.voltage = trade::rested_cell(facts.chemistry, half, trade::temperature_of(facts)) *
                      trade::cells_in(facts.chemistry, facts.nominal);
    element.resistance *= trade::resistance_by_charge(facts.chemistry, half) /
                          trade::resistance_by_charge(facts.chemistry, charge);
  }
  return network;
}

bool has_running_cut_out(const RuleContext& context) {
  return std::any_of(context.solved.loads.begin(), context.solved.loads.end(),
                     [&](const solve::LoadResult& load) {
                       return load.running && at(context.solved.network.elements, load.element).stops_below;
                     });
}

}  // namespace

void hunting(const RuleContext& context, Collected& collected) {
  for (const auto& load : context.solved.loads) {
    if (!stopped(context, load)) continue;
    const auto& element = at(context.solved.network.elements, load.element);
    const auto restart = restart_of(context, element);
    if (load.volts <= restart.si()) continue;
    const auto drawing = while_drawing(context, load.element);
    auto finding = finding_of(
        "hunting", "swing limit 2 % of nominal where the file gives none: common practice", element.id);
    finding.in_case = context.solved.network.case_name;
    finding.text = fmt::format(
        "starts and stops again and again: stopped it has {}, above the {} at which it starts; drawing "
        "it falls ",
        print(Voltage{load.volts}), print(restart));
    if (drawing) {
      const double volts = at(drawing->solution.drop, load.element);
      finding.text +=
          fmt::format("to {}, below its cut-out of {}{}", print(Voltage{volts}), print(*element.stops_below),
                      pulse_in_words(context, largest_pulse(context, *drawing, load.element)));
    } else {
      finding.text += "further than any voltage at which it could run";
    }
    finding.remedy =
        "Cure what sags between battery and load; a lower cut-out or a higher restart only hides it.";
    collected.add(std::move(finding),
                  drawing ? load.volts - at(drawing->solution.drop, load.element) : load.volts);
  }
}

void stopped_at_half_charge(const RuleContext& context, Collected& collected) {
  if (context.solved.solution.collapse || !has_running_cut_out(context)) return;
  const auto low = solve::solve_case(at_half_charge(context));
  if (!low || low->solution.collapse) return;
  for (std::size_t k = 0; k < context.solved.loads.size(); ++k) {
    const auto& load = context.solved.loads[k];
    const auto& element = at(context.solved.network.elements, load.element);
    if (!load.running || low->loads[k].running || !element.stops_below) continue;
    auto finding = finding_of("cut-out-at-half-charge",
                              "state-of-charge tables; half charge: common practice", element.id);
    finding.severity = Severity::improvement;
    finding.in_case = context.solved.network.case_name;
    finding.text = fmt::format("runs now with {}, but stops below {} once the batteries are at half charge",
                               print(Voltage{load.volts}), print(*element.stops_below));
    finding.remedy = "Half of what is in the batteries cannot be used: lower the losses on the way to it.";
    collected.add(std::move(finding), -load.volts);
  }
}

}  // namespace ohmtrail::diagnose
