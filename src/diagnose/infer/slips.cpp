#include "diagnose/infer/slips.hpp"

#include <cmath>
#include <optional>

#include "ohmtrail/solve/case_solution.hpp"
#include "ohmtrail/solve/solver.hpp"

namespace ohmtrail::diagnose::inference {
namespace {

// How far an explanation may be off, in standard deviations, and how much better than the number as it
// stands.
constexpr double good_enough = 3.5;
// Loads of a case in which nothing was read are as uncertain as their ratings.
constexpr double other_case_ln_sd = 0.1;

struct Explained {
  Slip slip = Slip::none;
  double misfit = 0;
  std::string in_case;
};

// A case of the system with the most probable resistances and open-circuit voltages in place.
std::optional<std::pair<network::Network, solve::Solution>> solve_as_inferred(const netlist::System& system,
                                                                              const netlist::Case& in_case,
                                                                              const Posterior& posterior) {
  network::Network network = network::build(system, in_case);
  solve::Circuit circuit = solve::circuit_of(network);
  const Eigen::VectorXd value = values_at(posterior.model(), posterior.components.front().optimum.x);
  for (std::size_t k = 0; k < network.elements.size(); ++k) {
    const std::string& id = network.elements[k].id;
    if (circuit.branches[k].law == solve::Law::open) {
      continue;
    }
    if (const auto known = posterior.survey.element_parameter.find(id);
        known != posterior.survey.element_parameter.end()) {
      circuit.branches[k].resistance = value[known->second];
    }
    if (const auto known = posterior.survey.emf_parameter.find(id);
        known != posterior.survey.emf_parameter.end()) {
      circuit.branches[k].size = value[known->second];
    }
  }
  solve::Solver solver(circuit);
  auto solved = solver.solve();
  if (!solved) {
    return std::nullopt;
  }
  return std::pair{std::move(network), std::move(*solved)};
}

std::optional<double> predicted_in(const netlist::Reading& reading, const network::Network& network,
                                   const solve::Solution& solution) {
  if (const auto* volts = std::get_if<netlist::VoltsReading>(&reading.what)) {
    const auto red = network.point(volts->red), black = network.point(volts->black);
    if (red && black) {
      return solution.voltage[static_cast<std::size_t>(*red)] -
             solution.voltage[static_cast<std::size_t>(*black)];
    }
  }
  if (const auto* amps = std::get_if<netlist::AmpsReading>(&reading.what)) {
    if (const auto element = network.element(amps->in)) {
      return solution.current[static_cast<std::size_t>(*element)];
    }
  }
  return std::nullopt;
}

void consider(Explained& best, Slip slip, double misfit, const std::string& in_case = {}) {
  if (std::isfinite(misfit) && misfit < best.misfit) {
    best = {slip, misfit, in_case};
  }
}

// The number itself, changed, against what all others say of this reading.
void consider_changed_number(const InferredReading& row, Explained& best) {
  const double sd = std::hypot(row.sigma, row.would_be_sigma);
  consider(best, Slip::swapped_probes, std::abs(-row.measured - row.would_be) / sd);
  for (const double factor : {1e-3, 1e3}) {
    const double scaled_sd = std::hypot(row.sigma * factor, row.would_be_sigma);
    consider(best, Slip::wrong_unit,
             std::abs(row.measured * factor - row.would_be) / std::max(scaled_sd, 1e-12));
  }
}

// Where the fault is not found yet the explanations ask for different values: swapped probes are looked for
// against each that holds the reading to be wrong.
void consider_swapped(const Posterior& posterior, const InferredReading& row, Explained& best) {
  constexpr double worth_a_look = 0.02;
  const auto& observations = posterior.model().observations;
  for (const Posterior::Component& component : posterior.components) {
    for (std::size_t i = 0; i < observations.size(); ++i) {
      if (observations[i].reading != static_cast<int>(row.index) || component.share < worth_a_look ||
          !component.optimum.hypothesis.is_wrong(static_cast<int>(i))) {
        continue;
      }
      const Screen screen(posterior.model(), component.optimum);
      const Cavity others = screen.cavity(screen.root(), static_cast<int>(i));
      const double sigma = observations[i].sigma, would_be = row.measured - others.at * sigma;
      consider(
          best, Slip::swapped_probes,
          std::abs(-row.measured - would_be) / std::hypot(row.sigma, sigma / std::sqrt(others.precision)));
    }
  }
}

void consider_other_cases(const netlist::System& system, const Posterior& posterior,
                          const InferredReading& row, Explained& best) {
  const netlist::Reading& reading = system.readings[row.index];
  const auto try_case = [&](const netlist::Case& in_case, Slip slip) {
    if (const auto solved = solve_as_inferred(system, in_case, posterior)) {
      if (const auto there = predicted_in(reading, solved->first, solved->second)) {
        const double sd = std::hypot(row.sigma, other_case_ln_sd * std::abs(*there - row.would_be));
        consider(best, slip, std::abs(row.measured - *there) / std::max(sd, 1e-12),
                 slip == Slip::wrong_case ? in_case.name : "");
      }
    }
  };
  // The loads off before another case: where both fit alike the slip is the simpler one.
  for (const netlist::Case& in_case : system.cases) {
    if (in_case.name == reading.in_case) {
      netlist::Case off = in_case;
      off.on.clear();
      off.all_on = false;
      try_case(off, Slip::load_off);
    }
  }
  for (const netlist::Case& in_case : system.cases) {
    if (in_case.name != reading.in_case && best.slip != Slip::load_off) {
      try_case(in_case, Slip::wrong_case);
    }
  }
}

// Volts that nothing in the system could give, and millivolts could: whatever part it was read across.
bool beyond_the_system(const netlist::System& system, const InferredReading& row) {
  constexpr double times_nominal = 3, milli = 1e-3;
  const double nominal = system.info.nominal.si();
  return std::holds_alternative<netlist::VoltsReading>(system.readings[row.index].what) &&
         std::abs(row.measured) > times_nominal * nominal && std::abs(row.measured) * milli < nominal;
}

}  // namespace

void find_slips(const netlist::System& system, const Posterior& posterior,
                std::vector<InferredReading>& readings) {
  for (InferredReading& row : readings) {
    if (!row.suspect || !std::isfinite(row.would_be_sigma)) {
      continue;
    }
    Explained best{Slip::none, good_enough, {}};
    consider_changed_number(row, best);
    if (std::holds_alternative<netlist::VoltsReading>(system.readings[row.index].what)) {
      consider_swapped(posterior, row, best);
    }
    consider_other_cases(system, posterior, row, best);
    if (best.slip == Slip::none && beyond_the_system(system, row)) best.slip = Slip::wrong_unit;
    row.slip = best.slip;
    row.slip_case = best.in_case;
  }
}

}  // namespace ohmtrail::diagnose::inference
