#include "plan/size_result.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "ohmtrail/plan/protection.hpp"
#include "ohmtrail/trade/ampacity.hpp"
#include "ohmtrail/trade/conductor.hpp"
#include "ohmtrail/trade/gauge.hpp"
#include "plan/feed.hpp"
#include "plan/inrush.hpp"
#include "units/index.hpp"

namespace ohmtrail::plan {

namespace {

using network::Section;

Reason reason_of(Broken::What what) {
  switch (what) {
    case Broken::What::ampacity:
      return Reason::ampacity;
    case Broken::What::fuse:
      return Reason::fuse;
    default:
      return Reason::drop;
  }
}

/// What breaks when this one run takes the next cheaper offer.
Reason deciding(const DesignSpace& space, const std::vector<Guards>& guards, Design design, std::size_t k) {
  const auto& candidates = space.runs[k].candidates;
  int next = -1;
  for (std::size_t c = 0; c < candidates.size(); ++c)
    if (candidates[c].cost < candidates[at(design[k])].cost &&
        (next < 0 || candidates[c].cost > candidates[at(next)].cost))
      next = static_cast<int>(c);
  if (next < 0) return Reason::cheapest;
  design[k] = next;
  const auto cheaper = assess(space, guards, rewired(space, design));
  return cheaper.broken.empty() ? Reason::drop : reason_of(cheaper.broken.front().what);
}

bool found_faulty(const netlist::Run& run) {
  const auto given = [](const netlist::Resistances& r) { return r.as_found.has_value() || !r.seen.empty(); };
  const auto bad_end = [&](const netlist::RunEnd& end) {
    return given(end.resistances) || (end.crimp && given(*end.crimp));
  };
  const bool out = given(run.wire) || bad_end(run.end_from) || bad_end(run.end_to);
  if (!run.return_conductor) return out;
  const auto& back = *run.return_conductor;
  return out || given(back.wire) || bad_end(back.end_from) || bad_end(back.end_to);
}

/// Largest current of a run over the cases, and the device that guards it in the first.
void add_currents(const Assessment& final, const std::vector<Guards>& guards, std::vector<RunChoice>& runs) {
  for (std::size_t c = 0; c < final.cases.size(); ++c) {
    const auto& solved = final.cases[c];
    for (std::size_t e = 0; e < solved.network.elements.size(); ++e) {
      const auto& element = solved.network.elements[e];
      if (element.role != network::Role::wire) continue;
      RunChoice& run = runs[element.origin.index];
      run.current = std::max(run.current, std::abs(solved.solution.current[e]));
      run.steady = std::max(run.steady, steady_amperes(final, c, static_cast<int>(e)));
      if (c > 0 || guards[c].guard_of[e] < 0) continue;
      const auto& device = solved.network.elements[at(guards[c].devices[at(guards[c].guard_of[e])].element)];
      run.fuse_id = device.id;
      run.fuse = device.origin.section == Section::fuses
                     ? final.system.fuses[device.origin.index].rating.si()
                     : final.system.switches[device.origin.index].rating->si();
    }
  }
}

RunChoice unchanged(const netlist::System& system, const netlist::Run& run) {
  RunChoice choice;
  choice.id = run.id;
  choice.gauge = choice.was = trade::print(run.gauge);
  choice.area = run.gauge.area.si();
  choice.mass = choice.mass_was =
      (run.return_conductor ? 2 : 1) * trade::conductor_mass(run.gauge, run.length, run.conductor).si();
  choice.ampacity = trade::ampacity({run.gauge, run.insulation, run.in == "engine-space", run.bundle,
                                     run.conductor, system.info.nominal})
                        .amps.si();
  return choice;
}

std::vector<RunChoice> run_choices(const netlist::System& original, const DesignSpace& space,
                                   const std::vector<Guards>& guards, const Design* design,
                                   const Assessment& final) {
  std::vector<RunChoice> runs;
  for (const auto& run : original.runs) runs.push_back(unchanged(original, run));
  for (std::size_t k = 0; design != nullptr && k < design->size(); ++k) {
    const auto& candidate = space.runs[k].candidates[at((*design)[k])];
    RunChoice& run = runs[space.runs[k].run];
    run.chosen = true;
    run.gauge = space.offers[candidate.offer].spelling;
    run.area = candidate.area;
    run.mass = candidate.mass;
    run.cost = candidate.cost;
    run.ampacity = candidate.ampacity;
    const auto& was = original.runs[space.runs[k].run];
    const Offer& offer = space.offers[candidate.offer];
    run.renewed = !(was.gauge == offer.gauge) ||
                  offer.insulation.value_or(was.insulation) != was.insulation ||
                  offer.conductor.value_or(was.conductor) != was.conductor || found_faulty(was);
    run.reason = deciding(space, guards, *design, k);
  }
  add_currents(final, guards, runs);
  return runs;
}

std::vector<FuseChoice> fuse_choices(const netlist::System& original, const Assessment& final) {
  std::vector<FuseChoice> fuses;
  for (std::size_t k = 0; k < original.fuses.size(); ++k)
    fuses.push_back(
        {original.fuses[k].id, original.fuses[k].rating.si(), final.system.fuses[k].rating.si(), {}, {}});
  for (std::size_t k = 0; k < original.switches.size(); ++k) {
    const auto& was = original.switches[k];
    if (was.kind == trade::SwitchKind::breaker && was.rating)
      fuses.push_back({was.id, was.rating->si(), final.system.switches[k].rating->si(), {}, {}});
  }
  return fuses;
}

std::vector<LoadChange> load_changes(const DesignSpace& space, const std::vector<Guards>& guards,
                                     const Assessment& final) {
  const Assessment before = assess(space, guards, space.system);
  std::vector<LoadChange> changes;
  for (std::size_t c = 0; c < final.cases.size(); ++c) {
    const auto& after = final.cases[c];
    for (std::size_t l = 0; l < after.loads.size(); ++l) {
      const auto& result = after.loads[l];
      const auto& element = after.network.elements[at(result.element)];
      if (!element.active) continue;
      LoadChange change;
      change.id = element.id;
      change.in_case = after.network.case_name;
      if (c < before.cases.size() && !std::isnan(before.cases[c].loads[l].volts))
        change.volts_before = before.cases[c].loads[l].volts;
      if (!std::isnan(result.volts)) change.volts_after = result.volts;
      change.drop = result.drop;
      change.drop_fraction = result.drop_fraction;
      if (!std::isnan(result.limit_fraction)) change.limit_fraction = result.limit_fraction;
      change.within = result.within;
      change.running = result.running;
      changes.push_back(std::move(change));
    }
  }
  return changes;
}

std::vector<network::Assumption> assumptions(const DesignSpace& space, const Assessment& final) {
  std::vector<network::Assumption> found;
  found.push_back(
      {"system", "cable chosen here is new and its ends are sound; everything else is as found", {}});
  if (space.system.cable_list.empty())
    found.push_back(
        {"system", "no cable list given: every AWG of 33 CFR 183.425 Table 5, 18 to 4/0, may be bought", {}});
  if (!space.priced)
    found.push_back({"system", "no price for every cable: cost is the mass of conductor, kg", {}});
  found.push_back(
      {"system",
       "fuses and breakers are rated for at least 1.25 times their largest current (common practice)",
       {}});
  if (usual_rules(space.system.info.kind) == RuleSet::road_vehicle)
    found.push_back(
        {"system",
         "a vehicle or cart: no fuse is larger than the rules for road vehicles let over its gauge (from "
         "memory: NEC tables 551.10(E)(1) and 552.10(E)(1))",
         {}});
  for (const std::string& id : space.cranked)
    found.push_back(
        {id,
         fmt::format("taken for a starting motor by its name: cranked for {:.0f} s, then at rest for "
                     "{:.0f} s (from memory); on_for and rest_for say otherwise",
                     cranking_seconds, cranking_rest_seconds),
         {}});
  for (const OutOfReach& limit : space.out_of_reach) {
    const auto& network = space.cases[limit.in_case].network;
    found.push_back({network.elements[at(limit.element)].id,
                     "over its drop limit whatever is chosen here, and left out of the choice: case \"" +
                         network.case_name + "\"",
                     {}});
  }
  for (const auto& solved : final.cases)
    for (const auto& assumption : solved.network.assumptions) {
      const bool told = std::any_of(found.begin(), found.end(), [&](const auto& other) {
        return other.id == assumption.id && other.text == assumption.text;
      });
      if (!told) found.push_back(assumption);
    }
  return found;
}

}  // namespace

SizeResult size_result(const netlist::System& original, const DesignSpace& space,
                       const std::vector<Guards>& guards, const Assessment& widest, const Found& found,
                       const std::string& method) {
  SizeResult result;
  result.priced = space.priced;
  result.method = method;
  result.bound = found.bound;
  result.found = found.design.has_value();
  const Design* design = found.design ? &*found.design : nullptr;
  Assessment final = assess(space, guards, design != nullptr ? rewired(space, *design) : space.system);
  result.proved = found.proved && result.found;
  result.runs = run_choices(original, space, guards, design, final);
  for (const RunChoice& run : result.runs) result.cost += run.cost;
  if (result.proved) result.bound = result.cost;
  result.fuses = fuse_choices(original, final);
  add_inrush(final, guards, result.fuses);
  result.loads = load_changes(space, guards, final);
  if (!result.found && found.proved) result.shortfalls = shortfalls(space, widest);
  result.assumptions = assumptions(space, final);
  result.solved = std::move(final.cases);
  result.rewired = original;
  result.rewired.runs = final.system.runs;
  result.rewired.fuses = final.system.fuses;
  result.rewired.switches = final.system.switches;
  return result;
}

}  // namespace ohmtrail::plan
