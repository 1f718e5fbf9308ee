#include "ohmtrail/solve/case_solution.hpp"

#include <limits>

#include "solve/islands.hpp"
#include "solve/short_duty.hpp"
#include "solve/supplies.hpp"
#include "units/index.hpp"

namespace ohmtrail::solve {

namespace {

using network::Element;
using network::Role;

constexpr double nan = std::numeric_limits<double>::quiet_NaN();

void judge(LoadResult& load, const Element& element, const Supply* supply) {
  const double nominal = element.nominal ? element.nominal->si() : nan;
  load.limit_fraction = element.drop_limit ? element.drop_limit->of_one() : nan;
  load.drop = load.sag = load.drop_fraction = nan;
  if (!supply) return;
  load.supply = supply->elements.front();
  load.drop = supply->terminal - load.volts;
  load.sag = supply->open_circuit - load.volts;
  load.drop_fraction = load.drop / nominal;
  load.within = !load.running || !(load.drop_fraction > load.limit_fraction);
}

LoadResult result_of(int k, const CaseSolution& solved, const Islands& islands, Feeders& feeders) {
  const Element& element = solved.network.elements[at(k)];
  LoadResult load;
  load.element = k;
  load.volts = solved.solution.drop[at(k)];
  load.current = solved.solution.current[at(k)];
  load.power = load.current == 0 ? 0 : load.volts * load.current;
  load.running = solved.solution.running[at(k)];
  const int island = islands.of_point[at(element.from)];
  const bool joined = island == islands.of_point[at(element.to)];
  judge(load, element, joined ? feeders.of(element.from, island) : nullptr);
  return load;
}

/// Islands whose 0 V the netlist does not name.
void note_references(network::Network& network, const Islands& islands) {
  for (const int point : islands.reference) {
    if (point < 0 || point == network.reference) continue;
    network.assumptions.push_back({"system", "point " + network.points[at(point)] + " is taken as 0 V", 0.0});
  }
}

/// A constant current is taken at any voltage, which below 0 V no real load does.
void note_reversed_loads(CaseSolution& solved) {
  for (const LoadResult& load : solved.loads) {
    const Element& element = solved.network.elements[at(load.element)];
    const bool takes_current = element.takes && std::holds_alternative<units::Current>(*element.takes);
    if (!load.running || !takes_current || !(load.volts <= 0)) continue;
    solved.network.assumptions.push_back({element.id,
                                          "takes its current although its voltage is not above 0 V",
                                          load.volts, network::Assumed::voltage});
  }
}

/// What lasts where the loads of short duty rest; empty where the lasting loads alone have no solution.
std::optional<Turns> find_turns(const network::Network& network, const Solution& all_on) {
  if (!has_short_duty(network, all_on)) return std::nullopt;
  Circuit lasting = circuit_of(network);
  for (std::size_t k = 0; k < network.elements.size(); ++k)
    if (network.elements[k].short_duty) lasting.branches[k].law = Law::open;
  const auto without = Solver(std::move(lasting)).solve();
  if (!without) return std::nullopt;
  return turns_of(network, all_on, *without);
}

/// A network that was solved before has wires as warm as its turns made them then.
void forget_turns(network::Network& network) {
  for (Element& element : network.elements)
    if (element.heating) element.heating->share = 1;
}

}  // namespace

tl::expected<CaseSolution, Failure> solve_case(network::Network network) {
  forget_turns(network);
  Circuit circuit = circuit_of(network);
  const Islands islands = find_islands(circuit);
  Solver solver(std::move(circuit));
  auto solution = solver.solve();
  if (!solution) return tl::unexpected(solution.error());
  auto turns = find_turns(network, *solution);
  if (turns) {  // again with the wires only as warm as short turns make them
    lower_rises(network, *turns);
    solution = Solver(circuit_of(network)).solve();
    if (!solution) return tl::unexpected(solution.error());
  }
  CaseSolution solved{std::move(network), std::move(*solution), {}, {}, std::move(turns)};
  solved.supplies = find_supplies(solved.network, islands, solved.solution);
  Feeders feeders(solved.network, solved.supplies);
  for (std::size_t k = 0; k < solved.network.elements.size(); ++k) {
    if (solved.network.elements[k].role != Role::load) continue;
    solved.loads.push_back(result_of(static_cast<int>(k), solved, islands, feeders));
  }
  note_references(solved.network, islands);
  note_reversed_loads(solved);
  return solved;
}

}  // namespace ohmtrail::solve
