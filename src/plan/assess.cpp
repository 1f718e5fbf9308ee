#include "plan/assess.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include "units/index.hpp"

namespace ohmtrail::plan {

namespace {

using network::Role;
using network::Section;

/// Two figures closer than this share are one.
constexpr double kRounding = 1e-9;

std::string why(const solve::Failure& failure, const network::Network& network) {
  std::string names;
  for (const int branch : failure.branches)
    names += (names.empty() ? "" : ", ") + network.elements[at(branch)].id;
  switch (failure.kind) {
    case solve::Failure::Kind::shorted_source:
      return "a source is shorted through " + names;
    case solve::Failure::Kind::opposed_sources:
      return "sources without resistance oppose each other: " + names;
    default:
      return "no certified solution" + (names.empty() ? "" : " at " + names);
  }
}

std::vector<double> rises_of(const network::Network& network) {
  std::vector<double> rises;
  for (const auto& element : network.elements)
    rises.push_back(element.heating ? element.heating->rise_at_rated.si() : 0);
  return rises;
}

class Assessor {
 public:
  Assessor(const DesignSpace& space, const std::vector<Guards>& guards, netlist::System rewired)
      : space_(space), guards_(guards), in_scope_(space.system.runs.size(), false) {
    for (const RunSpace& run : space.runs) in_scope_[run.run] = true;
    result_.system = std::move(rewired);
  }

  Assessment run() {
    if (!solve()) return std::move(result_);
    // A new rating has another resistance, which moves the current a little: settled within a round or two.
    for (int round = 0; round < 3 && rate_devices(); ++round)
      if (!solve()) return std::move(result_);
    for (std::size_t c = 0; c < result_.cases.size(); ++c) {
      check_loads(c);
      check_wires(c);
      check_devices(c);
    }
    return std::move(result_);
  }

 private:
  bool solve() {
    result_.cases.clear();
    result_.full_rise.clear();
    for (const auto& in_case : result_.system.cases) {
      auto network = network::build(result_.system, in_case);
      result_.full_rise.push_back(rises_of(network));
      auto solved = solve::solve_case(network);
      if (!solved) {
        result_.failure = "case " + in_case.name + ": " + why(solved.error(), network);
        return false;
      }
      result_.cases.push_back(std::move(*solved));
    }
    return true;
  }

  /// Largest current of a device over the cases.
  [[nodiscard]] double most_amperes(int element) const {
    double most = 0;
    for (const auto& solved : result_.cases) {
      const double amperes = std::abs(solved.solution.current[at(element)]);
      if (amperes > most) most = amperes;
    }
    return most;
  }

  /// The largest rating that every run in scope under a device allows; infinite where there is none.
  [[nodiscard]] double largest_rating(const Guard& guard) const {
    double least = INFINITY;
    for (const int e : guard.elements) {
      const auto& element = result_.cases.front().network.elements[at(e)];
      if (element.origin.section == Section::runs && in_scope_[element.origin.index] && element.heating)
        least =
            std::min(least, largest_device(result_.system, result_.system.runs[element.origin.index].gauge,
                                           element.heating->rated.si()));
    }
    return least;
  }

  units::Current& rating(const network::Element& device) {
    if (device.role == Role::fuse) return result_.system.fuses[device.origin.index].rating;
    return *result_.system.switches[device.origin.index].rating;
  }

  netlist::Resistances& resistances(const network::Element& device) {
    if (device.role == Role::fuse) return result_.system.fuses[device.origin.index].resistances;
    return result_.system.switches[device.origin.index].resistances;
  }

  /// True where a rating changed.
  bool rate_devices() {
    bool changed = false;
    if (guards_.empty()) return changed;
    for (const Guard& guard : guards_.front().devices) {
      const double allowed = largest_rating(guard);
      if (!std::isfinite(allowed)) continue;
      const auto& device = result_.cases.front().network.elements[at(guard.element)];
      const double least = 1.25 * most_amperes(guard.element) * (1 - kRounding);
      auto& rated = rating(device);
      if (rated.si() >= least && rated.si() <= allowed * (1 + kRounding)) continue;
      const auto ladder = device_ladder(result_.system, device);
      const auto next = std::lower_bound(ladder.begin(), ladder.end(), std::max(least, ladder.front()));
      if (next == ladder.end() || *next == rated.si()) continue;
      rated = units::Current{*next};
      resistances(device) = {};  // what was said of the old one
      changed = true;
    }
    return changed;
  }

  void check_loads(std::size_t c) {
    const auto& solved = result_.cases[c];
    for (const auto& load : solved.loads) {
      const auto& element = solved.network.elements[at(load.element)];
      if (!element.active || std::isnan(load.volts)) continue;  // off, or an island without a source
      if (solved.solution.collapse)
        result_.broken.push_back({Broken::What::collapsed, load.element, c, load.volts, 0});
      else if (!load.running)
        result_.broken.push_back({Broken::What::stopped, load.element, c, load.volts,
                                  element.stops_below ? element.stops_below->si() : 0});
      else if (in_reach(c, load.element) &&
               load.drop > load.limit_fraction * element.nominal->si() * (1 + kRounding))
        result_.broken.push_back(
            {Broken::What::drop, load.element, c, load.drop, load.limit_fraction * element.nominal->si()});
    }
  }

  [[nodiscard]] bool in_reach(std::size_t c, int load) const {
    return space_.cases[c].network.elements[at(load)].drop_limit.has_value();
  }

  void check_wires(std::size_t c) {
    const auto& solved = result_.cases[c];
    for (std::size_t e = 0; e < solved.network.elements.size(); ++e) {
      const auto& element = solved.network.elements[e];
      if (element.role != Role::wire || !in_scope_[element.origin.index] || !element.heating) continue;
      const double amperes = steady_amperes(result_, c, static_cast<int>(e));
      if (amperes > element.heating->rated.si() * (1 + kRounding))
        result_.broken.push_back(
            {Broken::What::ampacity, static_cast<int>(e), c, amperes, element.heating->rated.si()});
    }
  }

  void check_devices(std::size_t c) {
    for (const Guard& guard : guards_[c].devices) {
      const double allowed = largest_rating(guard);
      if (!std::isfinite(allowed)) continue;
      const double amperes = std::abs(result_.cases[c].solution.current[at(guard.element)]);
      const double rated = rating(result_.cases[c].network.elements[at(guard.element)]).si();
      if (rated < 1.25 * amperes * (1 - 2 * kRounding) || rated > allowed * (1 + kRounding))
        result_.broken.push_back({Broken::What::fuse, guard.element, c, amperes, allowed});
    }
  }

  const DesignSpace& space_;
  const std::vector<Guards>& guards_;
  std::vector<bool> in_scope_;
  Assessment result_;
};

}  // namespace

double steady_amperes(const Assessment& assessment, std::size_t in_case, int wire) {
  const auto& solved = assessment.cases[in_case];
  const double amperes = std::abs(solved.solution.current[at(wire)]);
  const double full = assessment.full_rise[in_case][at(wire)];
  const auto& heating = solved.network.elements[at(wire)].heating;
  if (!heating || full <= 0) return amperes;
  return amperes * std::sqrt(heating->rise().si() / full);
}

Assessment assess(const DesignSpace& space, const std::vector<Guards>& guards, netlist::System rewired) {
  return Assessor(space, guards, std::move(rewired)).run();
}

netlist::System rewired(const DesignSpace& space, const Design& design) {
  netlist::System system = space.system;
  for (std::size_t k = 0; k < design.size(); ++k) {
    const auto& candidate = space.runs[k].candidates[at(design[k])];
    rewire(system.runs[space.runs[k].run], space.offers[candidate.offer]);
  }
  return system;
}

}  // namespace ohmtrail::plan
