#pragma once
#include <optional>
#include <tl/expected.hpp>
#include <vector>

#include "ohmtrail/network/network.hpp"
#include "ohmtrail/solve/circuit.hpp"
#include "ohmtrail/solve/solution.hpp"
#include "ohmtrail/solve/solver.hpp"

/// The border between the trade's network and the plain circuit: unit types are stripped here, once.
namespace ohmtrail::solve {

/// Branch k of the circuit is element k of the network, point p is point p.
[[nodiscard]] Circuit circuit_of(const network::Network& network);

/// How a wire's own current warms it, by the rise that it reaches in its turns; not at all where its ampacity
/// is 0.
[[nodiscard]] Heating heating_of(const network::WireHeating& wire);

/// What one load gets, as the results list it. NaN where a value does not exist.
struct LoadResult {
  int element = -1;
  /// First element of the supply that delivers most power in the load's island; behind a converter the
  /// converter's output. −1: none.
  int supply = -1;
  double volts = 0, current = 0, power = 0;
  double drop = 0;  ///< supply's terminal voltage − volts
  double sag = 0;   ///< supply's open-circuit voltage − volts
  double drop_fraction = 0;
  double limit_fraction = 0;  ///< NaN: no limit
  bool within = true;
  bool running = false;
};

/// Batteries in series are one supply, named by its first battery: its posts are the string's ends, its
/// voltages are sums over the batteries, and the link cables between them are wires and terminations like any
/// other.
struct Supply {
  std::vector<int> elements;              ///< its batteries, or one charger
  int plus = -1, minus = -1;              ///< points
  double open_circuit = 0, terminal = 0;  ///< V, summed over the string
  double power = 0;                       ///< W delivered
  int island = -1;
};

/// What lasts and what comes in turns, where loads of short duty run.
struct Turns {
  std::vector<double> lasting;  ///< per element: share of its I²R that stays while such loads rest
  std::vector<network::ShortDuty> duties;  ///< of the loads of short duty that run
};

/// A network with its certified solution.
struct CaseSolution {
  network::Network network;
  Solution solution;
  std::vector<LoadResult> loads;
  std::vector<Supply> supplies;
  std::optional<Turns> turns;  ///< empty where no load of short duty runs
};

[[nodiscard]] tl::expected<CaseSolution, Failure> solve_case(network::Network network);

}  // namespace ohmtrail::solve
