#pragma once
#include <algorithm>
#include <cmath>
#include <random>

#include "ohmtrail/solve/circuit.hpp"

/// One battery and a tree of cables, each a conductor out and one back, every conductor a lug, a wire and a
/// lug, with a ring here and there. Invented; drawn by a seeded engine.
namespace ohmtrail::bench {

struct LargeCircuit {
  int elements = 1000;
  double rings = 0.01;       ///< share of cables that close a ring instead of growing the tree
  bool power_loads = false;  ///< a tenth of the elements takes constant power, otherwise constant current
  bool wires_warm = false;   ///< by their own current
};

class CircuitGrower {
 public:
  explicit CircuitGrower(const LargeCircuit& wanted) : wanted_(wanted) {}

  solve::Circuit grow() {
    circuit_.points = 2;
    circuit_.reference = 0;
    add(1, 0, solve::Law::source, 12.6, 1e-4);
    const int loads = std::max(1, wanted_.elements / 10);
    while (count() < wanted_.elements - loads) add_cable();
    for (int k = 0; k < loads; ++k) add_load(loads);
    return std::move(circuit_);
  }

 private:
  int count() const { return static_cast<int>(circuit_.branches.size()); }
  double between(double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random_);
  }
  double ohms(double low, double high) { return std::exp(between(std::log(low), std::log(high))); }
  void add(int from, int to, solve::Law law, double size, double resistance) {
    solve::Branch made;
    made.from = from;
    made.to = to;
    made.law = law;
    made.size = size;
    made.resistance = resistance;
    circuit_.branches.push_back(made);
  }

  struct Ends {
    int plus, minus;
  };
  Ends any() { return ends_[std::uniform_int_distribution<std::size_t>(0, ends_.size() - 1)(random_)]; }

  void add_cable() {
    const Ends from = any();
    const bool ring = ends_.size() > 2 && between(0, 1) < wanted_.rings;
    const Ends to = ring ? ends_[1] : Ends{circuit_.points, circuit_.points + 1};
    if (!ring) {
      circuit_.points += 2;
      ends_.push_back(to);
    }
    add_conductor(from.plus, to.plus);
    add_conductor(to.minus, from.minus);
  }

  void add_conductor(int from, int to) {
    const int barrel = circuit_.points++;
    const int far_barrel = circuit_.points++;
    add(from, barrel, solve::Law::resistor, 0, ohms(2e-5, 2e-4));
    add(barrel, far_barrel, solve::Law::resistor, 0, ohms(1e-4, 3e-3));
    if (wanted_.wires_warm) circuit_.branches.back().heating = solve::heating_at(0.00393, 30, 60, 80);
    add(far_barrel, to, solve::Law::resistor, 0, ohms(2e-5, 2e-4));
  }

  void add_load(int loads) {
    const double amperes = 300.0 / loads;
    const Ends at = any();
    if (wanted_.power_loads)
      add(at.plus, at.minus, solve::Law::power, 12 * amperes, 0);
    else
      add(at.plus, at.minus, solve::Law::current, amperes, 0);
    circuit_.branches.back().nominal = 12;
  }

  LargeCircuit wanted_;
  solve::Circuit circuit_;
  std::mt19937_64 random_{8};
  std::vector<Ends> ends_{{1, 0}};
};

inline solve::Circuit large_circuit(const LargeCircuit& wanted) {
  return CircuitGrower(wanted).grow();
}

}  // namespace ohmtrail::bench
