#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "ohmtrail/diagnose/temperature_in_words.hpp"
#include "ohmtrail/solve/solver.hpp"
#include "ohmtrail/trade/ampacity.hpp"
#include "ohmtrail/units/print.hpp"
#include "plan/protection_rules.hpp"
#include "units/index.hpp"

/// Starters, windlasses and thrusters: loads that are on for short and rest for long. Their heat is stored in
/// the wire's metal before it leaves; what counts is the temperature at the end of the time on.
namespace ohmtrail::plan::protection {
namespace {

using diagnose::Finding;
using diagnose::Severity;
using units::Time;

// Common practice: a motor's inrush has passed after half a second.
constexpr double inrush_seconds = 0.5;

/// How long a load is on and rests. Empty `on`: it runs for ever and only its inrush is short.
struct Duty {
  std::optional<Time> on, rest;
};

std::optional<Duty> duty_of(const netlist::Load& load) {
  if (is_starting_motor(load)) return Duty{Time{cranking_seconds}, Time{cranking_rest_seconds}};
  if (load.inrush) return Duty{};
  return std::nullopt;
}

/// The same case with one load off, steady.
std::optional<solve::Solution> without(const Context& context, std::size_t c, int load) {
  auto network = network::build(context.system, context.system.cases[c]);
  network.elements[at(load)].active = false;
  auto result = solve::Solver(solve::circuit_of(network)).solve();
  if (!result || result->collapse) return std::nullopt;
  return std::move(*result);
}

/// Share of the steady rise that the load reaches in this wire: 1 where it runs on.
double share_of(const Duty& duty, Time constant) {
  return duty.on ? trade::duty_share(*duty.on, duty.rest, constant) : 1;
}

struct Wire {
  const network::Element& element;
  double base, loaded, inrush;  ///< A: load off, load on, load starting
};

trade::WirePlace place_of(const netlist::System& system, const netlist::Run& run) {
  return {run.gauge,  run.insulation, run.in == "engine-space",
          run.bundle, run.conductor,  system.info.nominal};
}

/// Heat adds up by I²: what is there without the load, the load for its time on, its inrush for half a
/// second.
double celsius_of(const Context& context, const Wire& wire, const Duty& duty) {
  const auto& heating = *wire.element.heating;
  // The solved case has lowered the rise to what short turns reach; here it is taken anew.
  const auto rated =
      trade::ampacity(place_of(context.system, context.system.runs[wire.element.origin.index]));
  const double steady = wire.base * wire.base;
  const double duty_heat = (wire.loaded * wire.loaded - steady) * share_of(duty, heating.time_constant);
  const double start_heat = std::max(0.0, wire.inrush * wire.inrush - wire.loaded * wire.loaded) *
                            trade::duty_share(Time{inrush_seconds}, {}, heating.time_constant);
  const double amps = rated.amps.si();
  return heating.ambient.celsius() +
         rated.rise_at_rated.si() * (steady + std::max(0.0, duty_heat) + start_heat) / (amps * amps);
}

void add_load(const Context& context, std::size_t c, const solve::LoadResult& load,
              std::vector<ShortDuty>& duties) {
  const auto& solved = context.solved[c];
  const auto& element = solved.network.elements[at(load.element)];
  if (!load.running || element.origin.section != network::Section::loads) return;
  const auto& body = context.system.loads[element.origin.index];
  const auto& in_case = element.short_duty;  // a motor that starts in this case, or its own turn
  const auto duty = in_case ? Duty{in_case->on, in_case->rest} : duty_of(body);
  if (!duty) return;
  const auto off = without(context, c, load.element);
  if (!off) return;
  const double extra = body.inrush ? std::max(0.0, body.inrush->si() - load.current) : 0;
  for (std::size_t e = 0; e < solved.network.elements.size(); ++e) {
    const auto& wire = solved.network.elements[e];
    if (!wire.heating || wire.heating->rated.si() <= 0) continue;
    const double loaded = std::abs(solved.solution.current[e]), base = std::abs(off->current[e]);
    const double part = std::clamp((loaded - base) / load.current, 0.0, 1.0);
    if (!(part > 0.05) || loaded + part * extra <= wire.heating->rated.si()) continue;
    // What runs on for ever and is too much without its inrush is no matter of short duty.
    if (!duty->on && loaded > wire.heating->rated.si()) continue;
    const Wire heated{wire, base, loaded, loaded + part * extra};
    duties.push_back({static_cast<int>(e), c, body.id, celsius_of(context, heated, *duty), heated.inrush,
                      duty->on ? duty->on->si() : std::numeric_limits<double>::infinity()});
  }
}

Finding too_hot(const Context& context, const ShortDuty& duty, double rating) {
  const auto& network = context.solved[duty.in_case].network;
  Finding finding;
  finding.rule = "short-duty-heat";
  finding.source =
      "33 CFR 183.425 Table 5 or ISO 10133 Table A.1, warmed by the heat capacity of the metal (adiabatic "
      "at first, then the exponential of the wire's time constant)";
  finding.severity = Severity::before_further_use;
  finding.subject = subject_of(context, duty.element);
  finding.in_case = network.case_name;
  finding.text =
      fmt::format("carries up to {} when {} starts", units::print(units::Current{duty.current}), duty.load);
  if (std::isfinite(duty.seconds))
    finding.text += fmt::format(" and runs for {}", units::print(Time{duty.seconds}));
  finding.text +=
      fmt::format("; it reaches {}; its insulation is rated for {}", diagnose::reaches_in_words(duty.celsius),
                  units::print(units::Temperature{rating}));
  finding.remedy =
      "Fit a thicker cable, or run it for less and rest it for longer. Disconnect the battery first.";
  return finding;
}

}  // namespace

std::vector<ShortDuty> short_duties(const Context& context) {
  std::vector<ShortDuty> duties;
  for (std::size_t c = 0; c < context.solved.size(); ++c)
    if (!context.solved[c].solution.collapse)
      for (const auto& load : context.solved[c].loads) add_load(context, c, load, duties);
  return duties;
}

void short_duty_heat(const Context& context, Findings& findings) {
  std::vector<ShortDuty> worst;
  for (const ShortDuty& duty : short_duties(context)) {
    const double rating =
        context.system.runs[context.network.elements[at(duty.element)].origin.index].insulation.celsius();
    if (!(duty.celsius > rating)) continue;
    const auto same = std::find_if(worst.begin(), worst.end(), [&](const ShortDuty& other) {
      return subject_of(context, other.element) == subject_of(context, duty.element);
    });
    if (same == worst.end())
      worst.push_back(duty);
    else if (duty.celsius > same->celsius)
      *same = duty;
  }
  for (const ShortDuty& duty : worst)
    findings.push_back(too_hot(
        context, duty,
        context.system.runs[context.network.elements[at(duty.element)].origin.index].insulation.celsius()));
}

}  // namespace ohmtrail::plan::protection
