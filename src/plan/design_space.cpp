#include "plan/design_space.hpp"

#include <algorithm>
#include <numeric>

#include "ohmtrail/plan/protection.hpp"
#include "ohmtrail/trade/ampacity.hpp"
#include "ohmtrail/trade/conductor.hpp"
#include "ohmtrail/trade/gauge.hpp"
#include "ohmtrail/trade/protection.hpp"
#include "plan/feed.hpp"
#include "plan/guards.hpp"

namespace ohmtrail::plan {

namespace {

/// Without a list: every AWG that may be used without one.
std::vector<Offer> offers_of(const netlist::System& system) {
  std::vector<Offer> offers;
  for (const auto& line : system.cable_list)
    offers.push_back({line.gauge, line.gauge_as_written, line.price, line.insulation, line.conductor});
  if (!offers.empty()) return offers;
  for (const auto& gauge : trade::awg_with_ampacity())
    offers.push_back({gauge, trade::print(gauge), {}, {}, {}});
  return offers;
}

/// A test load is outside limits and sizing: it is off in every case.
void switch_off_test_loads(netlist::System& system) {
  const auto is_test = [&](const std::string& id) {
    return std::any_of(system.loads.begin(), system.loads.end(), [&](const netlist::Load& load) {
      return load.id == id && load.load_class == netlist::LoadClass::test;
    });
  };
  for (auto& in_case : system.cases) {
    if (in_case.all_on) {
      in_case.all_on = false;
      for (const auto& load : system.loads) in_case.on.push_back(load.id);
    }
    std::erase_if(in_case.on, is_test);
  }
}

/// A starting motor whose duty is not given is cranked, not run on. The ids of those.
std::vector<std::string> crank_starting_motors(netlist::System& system) {
  std::vector<std::string> cranked;
  for (auto& load : system.loads) {
    if (load.on_for || !is_starting_motor(load)) continue;
    load.on_for = units::Time{cranking_seconds};
    load.rest_for = units::Time{cranking_rest_seconds};
    cranked.push_back(load.id);
  }
  return cranked;
}

Candidate candidate_of(const DesignSpace& space, const netlist::Run& run, std::size_t index) {
  const Offer& offer = space.offers[index];
  netlist::Run renewed = run;
  rewire(renewed, offer);
  const double conductors = run.return_conductor ? 2 : 1;
  Candidate candidate;
  candidate.offer = index;
  candidate.area = offer.gauge.area.si();
  candidate.mass = conductors * trade::conductor_mass(renewed.gauge, run.length, renewed.conductor).si();
  candidate.cost = space.priced ? conductors * run.length.si() * offer.price.value_or(0) : candidate.mass;
  candidate.ampacity = trade::ampacity({renewed.gauge, renewed.insulation, run.in == "engine-space",
                                        run.bundle, renewed.conductor, space.system.info.nominal})
                           .amps.si();
  candidate.fuse_limit = largest_device(space.system, renewed.gauge, candidate.ampacity);
  return candidate;
}

bool in_scope(const netlist::Run& run, const std::vector<std::string>& only) {
  return only.empty() || std::find(only.begin(), only.end(), run.id) != only.end();
}

/// Puts candidate `index` (or its last) on every run in scope, builds the case and reads what came of it.
void read_values(const DesignSpace& space, std::size_t index, const netlist::Case& in_case,
                 CaseSpace& result) {
  netlist::System system = space.system;
  for (const RunSpace& run : space.runs) {
    const auto& candidate = run.candidates[std::min(index, run.candidates.size() - 1)];
    rewire(system.runs[run.run], space.offers[candidate.offer]);
  }
  const auto network = network::build(system, in_case);
  const std::vector<int> place = places_in_scope(space);
  for (std::size_t e = 0; e < network.elements.size(); ++e) {
    const auto& origin = network.elements[e].origin;
    if (origin.section != network::Section::runs || place[origin.index] < 0) continue;
    auto& values = result.values[static_cast<std::size_t>(place[origin.index])];
    if (index < values.size()) values[index].push_back(value_of(network, static_cast<int>(e)));
  }
}

/// Least share of its steady rise that a wire reaches: that of the load of short duty that rests longest
/// against its turn, whatever else the wire carries.
double least_duty(const network::Network& network, units::Time time_constant) {
  double share = 1;
  for (const auto& element : network.elements)
    if (element.active && element.short_duty)
      share =
          std::min(share, trade::duty_share(element.short_duty->on, element.short_duty->rest, time_constant));
  return share;
}

CaseSpace case_space(const DesignSpace& space, const netlist::Case& in_case) {
  CaseSpace result{network::build(space.system, in_case), {}};
  std::size_t most = 0;
  for (const RunSpace& run : space.runs) {
    result.values.emplace_back(run.candidates.size());
    most = std::max(most, run.candidates.size());
  }
  for (std::size_t index = 0; index < most; ++index) read_values(space, index, in_case, result);
  return result;
}

/// Gives every device its rating number `index`, or its last, and what is known of a new one.
netlist::System rerated(netlist::System system, const network::Network& network,
                        const std::vector<DeviceSpace>& devices, std::size_t index) {
  for (const DeviceSpace& device : devices) {
    const auto& origin = network.elements[static_cast<std::size_t>(device.element)].origin;
    const units::Current rating{device.ladder[std::min(index, device.ladder.size() - 1)]};
    if (origin.section == network::Section::fuses) {
      system.fuses[origin.index].rating = rating;
      system.fuses[origin.index].resistances = {};
    } else {
      system.switches[origin.index].rating = rating;
      system.switches[origin.index].resistances = {};
    }
  }
  return system;
}

std::vector<DeviceSpace> device_spaces(const netlist::System& system, const network::Network& network) {
  std::vector<DeviceSpace> devices;
  std::size_t most = 0;
  for (std::size_t e = 0; e < network.elements.size(); ++e) {
    const auto& element = network.elements[e];
    if (!is_device(system, element)) continue;
    const double rated = element.origin.section == network::Section::fuses
                             ? system.fuses[element.origin.index].rating.si()
                             : system.switches[element.origin.index].rating->si();
    auto ladder = device_ladder(system, element);
    // As it is it may stay, although no new one is made like it.
    const auto place = std::lower_bound(ladder.begin(), ladder.end(), rated);
    if (place == ladder.end() || *place != rated) ladder.insert(place, rated);
    devices.push_back({static_cast<int>(e), rated, std::move(ladder), {}});
    most = std::max(most, devices.back().ladder.size());
  }
  for (std::size_t index = 0; index < most; ++index) {
    const auto built = network::build(rerated(system, network, devices, index), system.cases.front());
    for (DeviceSpace& device : devices)
      if (index < device.ladder.size())
        device.ohms.push_back(built.elements[static_cast<std::size_t>(device.element)].resistance.si());
  }
  return devices;
}

}  // namespace

ElementValue value_of(const network::Network& network, int index) {
  const auto& element = network.elements[static_cast<std::size_t>(index)];
  ElementValue value{index, element.resistance.si()};
  if (element.heating) {
    value.alpha = element.heating->temperature_coefficient;
    value.ambient = element.heating->ambient.celsius();
    value.rise = element.heating->rise_at_rated.si();
    value.rated = element.heating->rated.si();
    value.duty = least_duty(network, element.heating->time_constant);
  }
  return value;
}

double ElementValue::at(double amperes) const {
  if (alpha == 0) return ohms;
  const double load = rated > 0 ? amperes / rated : 0;
  return ohms * (1 + alpha * (ambient + rise * load * load - 20));
}

void rewire(netlist::Run& run, const Offer& offer) {
  const bool same_cable =
      run.gauge == offer.gauge && offer.conductor.value_or(run.conductor) == run.conductor;
  // A sound value given outright speaks of the cable and the lugs that are there; another gauge takes the
  // table's.
  const auto renew = [&](netlist::Resistances& resistances) {
    resistances.as_found.reset();
    resistances.seen.clear();
    if (!same_cable) resistances.sound.reset();
  };
  const auto renew_end = [&](netlist::RunEnd& end) {
    renew(end.resistances);
    if (end.crimp) renew(*end.crimp);
    if (!same_cable) end.crimp.reset();
  };
  renew(run.wire);
  renew_end(run.end_from);
  renew_end(run.end_to);
  if (run.return_conductor) {
    renew(run.return_conductor->wire);
    renew_end(run.return_conductor->end_from);
    renew_end(run.return_conductor->end_to);
  }
  run.gauge = offer.gauge;
  run.insulation = offer.insulation.value_or(run.insulation);
  run.conductor = offer.conductor.value_or(run.conductor);
}

DesignSpace design_space(const netlist::System& system, const std::vector<std::string>& only) {
  DesignSpace space{system, offers_of(system), {}, {}, {}, false, {}, {}};
  switch_off_test_loads(space.system);
  space.cranked = crank_starting_motors(space.system);
  space.priced = std::all_of(space.offers.begin(), space.offers.end(),
                             [](const Offer& o) { return o.price.has_value(); });
  std::vector<std::size_t> by_area(space.offers.size());
  std::iota(by_area.begin(), by_area.end(), 0U);
  std::stable_sort(by_area.begin(), by_area.end(), [&](std::size_t a, std::size_t b) {
    return space.offers[a].gauge.area < space.offers[b].gauge.area;
  });
  for (std::size_t r = 0; r < system.runs.size(); ++r) {
    if (!in_scope(system.runs[r], only)) continue;
    RunSpace run{r, {}};
    for (const std::size_t offer : by_area)
      run.candidates.push_back(candidate_of(space, system.runs[r], offer));
    space.runs.push_back(std::move(run));
  }
  for (const auto& in_case : space.system.cases) space.cases.push_back(case_space(space, in_case));
  if (!space.cases.empty()) space.devices = device_spaces(space.system, space.cases.front().network);
  return space;
}

void leave_out(DesignSpace& space, const std::vector<OutOfReach>& limits) {
  space.out_of_reach = limits;
  for (const OutOfReach& limit : limits)
    space.cases[limit.in_case].network.elements[static_cast<std::size_t>(limit.element)].drop_limit.reset();
}

std::vector<int> places_in_scope(const DesignSpace& space) {
  std::vector<int> place(space.system.runs.size(), -1);
  for (std::size_t k = 0; k < space.runs.size(); ++k) place[space.runs[k].run] = static_cast<int>(k);
  return place;
}

double largest_device(const netlist::System& system, const trade::Gauge& gauge, double ampacity) {
  if (usual_rules(system.info.kind) != RuleSet::road_vehicle) return ampacity;
  const auto by_gauge = trade::vehicle_fuse_limit(gauge);
  return by_gauge ? std::min(ampacity, by_gauge->limit.si()) : ampacity;
}

double cost(const DesignSpace& space, const Design& design) {
  double sum = 0;
  for (std::size_t k = 0; k < design.size(); ++k)
    sum += space.runs[k].candidates[static_cast<std::size_t>(design[k])].cost;
  return sum;
}

}  // namespace ohmtrail::plan
