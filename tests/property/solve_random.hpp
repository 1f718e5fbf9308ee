#pragma once
#include <algorithm>
#include <cmath>
#include <random>

#include "ohmtrail/solve/solver.hpp"

/// Random circuits of the kind that boats and carts have: batteries behind milliohms, trees of wires with a
/// few rings, loads of every kind. Point 0 is 0 V.
namespace ohmtrail::test {

using namespace solve;

class RandomCircuit {
 public:
  explicit RandomCircuit(unsigned seed) : random_(seed) {}

  double between(double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random_);
  }
  double log_between(double low, double high) { return std::exp(between(std::log(low), std::log(high))); }
  int below(int count) { return std::uniform_int_distribution<int>(0, count - 1)(random_); }
  bool chance(double probability) { return between(0, 1) < probability; }

  static Branch branch(int from, int to, Law law) {
    Branch made;
    made.from = from;
    made.to = to;
    made.law = law;
    return made;
  }

  Branch wire(int from, int to) {
    Branch made = branch(from, to, Law::resistor);
    made.resistance = log_between(1e-5, 1e-1);
    if (chance(0.3)) {
      const double ambient = between(10, 50), kelvin = between(50, 80), rated = between(40, 300);
      made.heating = heating_at(0.00393, ambient, kelvin, rated);
    }
    return made;
  }

  /// `plus` points hang on point 1 (the first battery's plus), `minus` points on point 0.
  struct Options {
    bool power = true, heating = true, zero_ohm = true, current = true;
    int most_points = 30;
  };

  Circuit make(const Options& options) {
    Circuit circuit;
    circuit.reference = 0;
    circuit.points = 2;
    plus_ = {1};
    minus_ = {0};
    add_battery(circuit, 1, 0);
    const int wires = 2 + below(options.most_points - 2);
    for (int k = 0; k < wires; ++k) grow(circuit, chance(0.6) ? plus_ : minus_, options);
    for (int k = below(3); k > 0; --k) add_battery(circuit, any(plus_), any(minus_));
    for (int k = below(4); k > 0; --k) add_ring(circuit, chance(0.6) ? plus_ : minus_);
    for (int k = 1 + below(4); k > 0; --k) add_load(circuit, options);
    if (!options.heating) {
      for (Branch& each : circuit.branches) each.heating = {};
    }
    return circuit;
  }

  int any(const std::vector<int>& points) {
    return points[static_cast<std::size_t>(below(static_cast<int>(points.size())))];
  }
  const std::vector<int>& plus() const { return plus_; }
  const std::vector<int>& minus() const { return minus_; }

  void add_battery(Circuit& circuit, int plus, int minus) {
    Branch made = branch(plus, minus, Law::source);
    made.size = between(12.2, 12.8);
    made.resistance = log_between(2e-3, 2e-2);
    circuit.branches.push_back(made);
  }

  void add_load(Circuit& circuit, const Options& options) {
    Branch made = branch(any(plus_), any(minus_), Law::resistor);
    made.nominal = 12;
    const int kind = below(3);
    if (kind == 0 && options.power) {
      made.law = Law::power;
      made.size = log_between(5, 200);
    } else if (kind == 1 && options.current) {
      made.law = Law::current;
      made.size = log_between(0.5, 20);
    } else {
      made.resistance = log_between(0.5, 100);
    }
    circuit.branches.push_back(made);
  }

 private:
  void grow(Circuit& circuit, std::vector<int>& side, const Options& options) {
    Branch made = wire(any(side), circuit.points);
    if (options.zero_ohm && chance(0.15)) {
      made.resistance = 0;
      made.heating = {};
    }
    if (chance(0.5)) std::swap(made.from, made.to);
    side.push_back(circuit.points++);
    circuit.branches.push_back(made);
  }

  void add_ring(Circuit& circuit, const std::vector<int>& side) {
    const int a = any(side);
    const int b = any(side);
    if (a != b) circuit.branches.push_back(wire(a, b));
  }

  std::mt19937_64 random_;
  std::vector<int> plus_, minus_;
};

}  // namespace ohmtrail::test
