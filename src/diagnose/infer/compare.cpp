#include "ohmtrail/diagnose/compare.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include "ohmtrail/diagnose/infer_apply.hpp"
#include "ohmtrail/solve/case_solution.hpp"

namespace ohmtrail::diagnose {
namespace {

struct Seen {
  double resistance, low, high, fault;
};

template <class Inferred>
Seen seen_of(const Inferred& one) {
  return {one.resistance, one.low, one.high, one.fault_probability};
}

std::vector<std::pair<std::string, Seen>> rows_of(const InferResult& result) {
  std::vector<std::pair<std::string, Seen>> out;
  for (const InferredBattery& b : result.batteries) {
    out.emplace_back(b.id, seen_of(b));
  }
  for (const InferredElement& e : result.elements) {
    out.emplace_back(e.id, seen_of(e));
  }
  return out;
}

// Width of a 90 % interval of ln R as a standard deviation.
double ln_sd(const Seen& seen) {
  constexpr double interval_over_sd = 3.29;
  return seen.low > 0 ? std::log(seen.high / seen.low) / interval_over_sd : 0;
}

ElementChange change_of(const std::string& id, const Seen& before, const Seen& after) {
  constexpr double sure = 1.96;
  ElementChange out{id, before.resistance, after.resistance, 0, Change::none};
  const double moved = std::log(after.resistance / before.resistance);
  if (std::abs(moved) > sure * std::hypot(ln_sd(before), ln_sd(after)) + 1e-9) {
    out.change = after.resistance - before.resistance;
    out.verdict = moved < 0 ? Change::better : Change::worse;
  }
  return out;
}

/// Of a conductor: surely faulty somewhere, but no part of it is named.
struct Unnamed {
  bool before = false, after = false;
};

bool is_faulty(double fault_probability) {
  return fault_probability >= faulty_from;
}

void sort_in(const std::string& id, bool was, bool is, Comparison& out) {
  if (was && !is) {
    out.cured.push_back(id);
  } else if (was && is) {
    out.left.push_back(id);
  } else if (is) {
    out.fresh.push_back(id);
  }
}

bool unnamed(const InferredConductor& conductor, const std::map<std::string, double>& fault) {
  return is_faulty(conductor.fault_probability) &&
         std::none_of(conductor.parts.begin(), conductor.parts.end(),
                      [&](const std::string& part) { return is_faulty(fault.at(part)); });
}

/// Compares the conductors as wholes; by part, whether its conductor was or is faulty without a part named.
std::map<std::string, Unnamed> compare_conductors(const InferResult& before, const InferResult& after,
                                                  Comparison& out) {
  const auto fault_before = fault_probabilities(before), fault_after = fault_probabilities(after);
  std::map<std::string, Unnamed> by_part;
  for (const InferredConductor& one : before.conductors) {
    const auto later = std::find_if(after.conductors.begin(), after.conductors.end(),
                                    [&](const InferredConductor& other) { return other.id == one.id; });
    if (later == after.conductors.end()) {
      continue;
    }
    out.conductors.push_back(change_of(one.id, seen_of(one), seen_of(*later)));
    const Unnamed whole{unnamed(one, fault_before), unnamed(*later, fault_after)};
    for (const auto* parts : {&one.parts, &later->parts}) {
      for (const std::string& part : *parts) {
        by_part[part] = whole;
      }
    }
    const bool named = (is_faulty(one.fault_probability) && !whole.before) ||
                       (is_faulty(later->fault_probability) && !whole.after);
    if (!named) {
      sort_in(one.id, whole.before, whole.after, out);
    }
  }
  return by_part;
}

void compare_elements(const InferResult& before, const InferResult& after, Comparison& out) {
  const std::map<std::string, Unnamed> wholes = compare_conductors(before, after, out);
  const auto whole_of = [&](const std::string& id) {
    const auto found = wholes.find(id);
    return found == wholes.end() ? Unnamed{} : found->second;
  };
  std::map<std::string, Seen> later;
  for (auto& [id, seen] : rows_of(after)) {
    later.emplace(id, seen);
  }
  std::map<std::string, bool> known;
  for (const auto& [id, seen] : rows_of(before)) {
    known[id] = true;
    const auto found = later.find(id);
    if (found == later.end()) {
      out.gone.push_back(id);
      continue;
    }
    out.elements.push_back(change_of(id, seen, found->second));
    const bool was = is_faulty(seen.fault), is = is_faulty(found->second.fault);
    // A cable that was faulty somewhere may well have been so here, and the other way round.
    sort_in(id, was || (is && whole_of(id).before), is || (was && whole_of(id).after), out);
  }
  for (const auto& [id, seen] : rows_of(after)) {
    if (!known.contains(id)) {
      out.added.push_back(id);
    }
  }
}

// The later system with the batteries' open-circuit voltages, the loads and the cases of the earlier one.
netlist::System on_the_same_day(const netlist::System& before, netlist::System after) {
  for (netlist::Battery& battery : after.batteries) {
    for (const netlist::Battery& earlier : before.batteries) {
      if (earlier.id == battery.id) {
        battery.emf = earlier.emf;
        battery.state_of_charge = earlier.state_of_charge;
      }
    }
  }
  for (netlist::Load& load : after.loads) {
    for (const netlist::Load& earlier : before.loads) {
      load.takes = earlier.id == load.id ? earlier.takes : load.takes;
    }
  }
  for (netlist::Case& one : after.cases) {
    for (const netlist::Case& earlier : before.cases) {
      if (earlier.name == one.name) {
        one.set = earlier.set;
      }
    }
  }
  return after;
}

std::map<std::pair<std::string, std::string>, double> volts_at_loads(const netlist::System& system) {
  std::map<std::pair<std::string, std::string>, double> out;
  for (const netlist::Case& one : system.cases) {
    if (const auto solved = solve::solve_case(network::build(system, one))) {
      for (const solve::LoadResult& load : solved->loads) {
        if (load.running) {
          out[{one.name, solved->network.elements[static_cast<std::size_t>(load.element)].id}] = load.volts;
        }
      }
    }
  }
  return out;
}

void compare_loads(const netlist::System& before, const netlist::System& after, Comparison& out) {
  const auto earlier = volts_at_loads(before), later = volts_at_loads(on_the_same_day(before, after));
  for (const netlist::Case& one : before.cases) {
    for (const netlist::Load& load : before.loads) {
      const auto was = earlier.find({one.name, load.id}), is = later.find({one.name, load.id});
      if (was != earlier.end() && is != later.end()) {
        out.loads.push_back({load.id, one.name, was->second, is->second});
      }
    }
  }
}

// `emf` made explicit, so that both surveys can be solved at it.
netlist::System with_explicit_emf(netlist::System system, const InferResult& result) {
  for (std::size_t k = 0; k < system.batteries.size(); ++k) {
    system.batteries[k].emf = units::Voltage{result.batteries[k].emf};
  }
  return system;
}

template <class Inferred>
bool share_an_id(const std::vector<Inferred>& before, const std::vector<Inferred>& after) {
  return std::any_of(before.begin(), before.end(), [&](const Inferred& one) {
    return std::any_of(after.begin(), after.end(), [&](const Inferred& other) { return other.id == one.id; });
  });
}

// A rewire may leave few cables in place, but not one element and not one load is another boat's file.
// Batteries do not count: everyone has a "house".
bool of_one_system(const InferResult& before, const InferResult& after) {
  return share_an_id(before.elements, after.elements) || share_an_id(before.loads, after.loads);
}

}  // namespace

tl::expected<Comparison, InferFailure> compare(const netlist::System& before, const netlist::System& after) {
  const auto earlier = infer(before), later = infer(after);
  if (!earlier) {
    return tl::unexpected(earlier.error());
  }
  if (!later) {
    return tl::unexpected(later.error());
  }
  if (!of_one_system(*earlier, *later)) {
    return tl::unexpected(
        InferFailure{"the two surveys have no cable, joint, switch, fuse or load in common",
                     "give two surveys of one system, with the same ids for what is still there"});
  }
  Comparison out;
  compare_elements(*earlier, *later, out);
  compare_loads(with_explicit_emf(with_inferred(before, *earlier), *earlier), with_inferred(after, *later),
                out);
  return out;
}

}  // namespace ohmtrail::diagnose
