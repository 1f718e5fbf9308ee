#include "undersized.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include "index.hpp"
#include "ohmtrail/diagnose/staircase.hpp"
#include "ohmtrail/trade/ampacity.hpp"
#include "ohmtrail/trade/conductor.hpp"
#include "ohmtrail/trade/gauge.hpp"
#include "route.hpp"

namespace ohmtrail::diagnose {
namespace {

using network::Element;
using network::Role;
using Runs = std::vector<std::size_t>;

/// A size that may be bought.
struct Offer {
  trade::Gauge gauge;
  std::string name;
};

std::vector<Offer> offers(const netlist::System& system) {
  std::vector<Offer> list;
  for (const auto& cable : system.cable_list) list.push_back({cable.gauge, cable.gauge_as_written});
  if (list.empty())
    for (const auto& gauge : trade::awg_with_ampacity()) list.push_back({gauge, trade::print(gauge)});
  std::stable_sort(list.begin(), list.end(),
                   [](const Offer& a, const Offer& b) { return a.gauge.area < b.gauge.area; });
  return list;
}

/// As its table says but for what a wire's length and strands leave open: readings never give it exactly.
bool at_table_value(const Element& element) {
  constexpr double spread = 1.2;
  return element.role == Role::wire && element.active && element.sound_from_table && element.sound &&
         element.resistance <= spread * *element.sound;
}

/// A load outside its limit with everything sound, and the runs on its route that could be thicker.
struct Need {
  int load = -1;             ///< element index
  double volts = 0;          ///< V above the limit
  Runs runs;                 ///< whose wires stand at their table value, in route order
  std::vector<double> lost;  ///< V, of each run's wires on the route
};

Need need_of(const solve::CaseSolution& rated, const solve::LoadResult& load, const Route& way) {
  Need need;
  need.load = load.element;
  need.volts = load.drop * (1 - load.limit_fraction / load.drop_fraction);
  for (const auto& leg : way.legs()) {
    const auto& element = at(rated.network.elements, leg.element);
    if (!at_table_value(element)) continue;
    const auto place =
        std::find(need.runs.begin(), need.runs.end(), element.origin.index) - need.runs.begin();
    if (place == static_cast<std::ptrdiff_t>(need.runs.size())) {
      need.runs.push_back(element.origin.index);
      need.lost.push_back(0);
    }
    need.lost[static_cast<std::size_t>(place)] += leg.lost;
  }
  return need;
}

const netlist::Case* case_named(const netlist::System& system, const std::string& name) {
  const auto found = std::find_if(system.cases.begin(), system.cases.end(),
                                  [&](const netlist::Case& one) { return one.name == name; });
  return found == system.cases.end() ? nullptr : &*found;
}

bool breaks_limit(const solve::LoadResult& load) {
  return load.running && std::isfinite(load.limit_fraction) && !load.within;
}

/// One case of a system, asked again and again with other gauges and everything else sound.
class Regauge {
 public:
  Regauge(const netlist::System& system, const netlist::Case& in_case)
      : system_(system), in_case_(in_case), offers_(offers(system)) {}

  /// The smallest offer that brings the load inside its limit when it replaces every thinner one of `runs`,
  /// which are of the need's own; null: none does.
  const Offer* smallest_cure(const Need& need, const Runs& runs) const {
    const auto cure = std::find_if(offers_.begin(), offers_.end(), [&](const Offer& offer) {
      return thinner_than(runs, offer) && promising(need, runs, offer) && cures(runs, offer, need.load);
    });
    return cure == offers_.end() ? nullptr : &*cure;
  }

  /// Metal that the runs gain, m³ one way.
  double added_metal(const Runs& runs, const Offer& offer) const {
    double volume = 0;
    for (const auto run : runs) {
      const auto& old = system_.runs[run];
      volume += std::max(0.0, offer.gauge.area.si() - old.gauge.area.si()) * old.length.si();
    }
    return volume;
  }

  network::Network with(const Runs& runs, const Offer& offer) const {
    netlist::System changed = system_;
    for (const auto run : runs)
      if (changed.runs[run].gauge.area < offer.gauge.area) renew(changed.runs[run], offer);
    return network::build(changed, in_case_);
  }

 private:
  /// A wire cannot give back much more than it loses: what falls short by half is not worth a solve.
  bool promising(const Need& need, const Runs& runs, const Offer& offer) const {
    double back = 0;
    for (std::size_t k = 0; k < need.runs.size(); ++k) {
      const auto& area = system_.runs[need.runs[k]].gauge.area;
      if (std::find(runs.begin(), runs.end(), need.runs[k]) != runs.end() && area < offer.gauge.area)
        back += need.lost[k] * (1 - units::ratio(area, offer.gauge.area));
    }
    constexpr double margin = 0.5;
    return back >= margin * need.volts;
  }

  /// A new cable has what its table says, whatever the old one was found to have.
  static void renew(netlist::Run& run, const Offer& offer) {
    run.gauge = offer.gauge;
    run.wire.as_found.reset();
    if (run.return_conductor) run.return_conductor->wire.as_found.reset();
  }

  bool thinner_than(const Runs& runs, const Offer& offer) const {
    return std::any_of(runs.begin(), runs.end(),
                       [&](std::size_t run) { return system_.runs[run].gauge.area < offer.gauge.area; });
  }

  bool cures(const Runs& runs, const Offer& offer, int load) const {
    const auto solved = solve::solve_case(as_rated(system_, with(runs, offer)));
    return solved &&
           std::any_of(solved->loads.begin(), solved->loads.end(), [&](const solve::LoadResult& one) {
             return one.element == load && one.running && one.within;
           });
  }

  const netlist::System& system_;
  const netlist::Case& in_case_;
  std::vector<Offer> offers_;
};

/// Against the larger wire at the temperature that this one has.
Fault fault_from(const solve::CaseSolution& found, int index, const Element& larger, const Offer& offer) {
  const auto& element = at(found.network.elements, index);
  const double used = at(found.solution.resistance, index);
  Fault fault;
  fault.cause = Cause::undersized;
  fault.sound_resistance = used * units::ratio(*element.sound, element.resistance);
  fault.excess = used * (1 - larger.resistance.si() / element.resistance.si());
  fault.cure = Cure{index, larger.resistance.si(), std::nullopt, std::nullopt};
  if (larger.heating) fault.cure.heating = solve::heating_of(*larger.heating);
  fault.better_gauge = offer.name;
  return fault;
}

/// Faults by element: where several loads call for different gauges the largest stands.
using Faults = std::map<int, Fault>;

void keep_larger(Faults& faults, Fault fault) {
  const auto [place, is_new] = faults.try_emplace(fault.cure.element, fault);
  if (!is_new && fault.cure.resistance < place->second.cure.resistance) place->second = std::move(fault);
}

bool belongs_to(const Element& element, const Runs& runs) {
  return std::find(runs.begin(), runs.end(), element.origin.index) != runs.end();
}

void add_faults(Faults& faults, const solve::CaseSolution& found, const Regauge& regauge, const Runs& runs,
                const Offer& offer) {
  const auto larger = regauge.with(runs, offer);
  for (int k = 0; k < static_cast<int>(found.network.elements.size()); ++k) {
    const auto& element = at(found.network.elements, k);
    if (!at_table_value(element) || !belongs_to(element, runs)) continue;
    const auto& thicker = at(larger.elements, k);
    if (thicker.resistance < element.resistance) keep_larger(faults, fault_from(found, k, thicker, offer));
  }
}

/// The one run whose cure takes least metal; where no single run is enough, all of them together.
void blame(Faults& faults, const solve::CaseSolution& found, const Regauge& regauge, const Need& need) {
  Runs best;
  const Offer* best_offer = nullptr;
  for (const auto run : need.runs) {
    const auto* offer = regauge.smallest_cure(need, {run});
    const bool less =
        offer && (!best_offer || regauge.added_metal({run}, *offer) < regauge.added_metal(best, *best_offer));
    if (!less) continue;
    best = {run};
    best_offer = offer;
  }
  if (!best_offer) {
    best = need.runs;
    best_offer = regauge.smallest_cure(need, best);
  }
  if (best_offer) add_faults(faults, found, regauge, best, *best_offer);
}

}  // namespace

std::vector<Fault> undersized(const netlist::System& system, const solve::CaseSolution& solved) {
  const auto* in_case = case_named(system, solved.network.case_name);
  if (!in_case || std::none_of(solved.loads.begin(), solved.loads.end(), breaks_limit)) return {};
  const auto rated = solve::solve_case(as_rated(system, solved.network));
  if (!rated) return {};
  const Regauge regauge(system, *in_case);
  Faults faults;
  for (std::size_t k = 0; k < solved.loads.size(); ++k) {
    if (!breaks_limit(solved.loads[k]) || !breaks_limit(rated->loads[k])) continue;
    const auto way = route(*rated, rated->loads[k]);
    if (way) blame(faults, solved, regauge, need_of(*rated, rated->loads[k], *way));
  }
  std::vector<Fault> list;
  for (auto& [element, fault] : faults) list.push_back(std::move(fault));
  return list;
}

}  // namespace ohmtrail::diagnose
