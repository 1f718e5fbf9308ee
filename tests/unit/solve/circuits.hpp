#pragma once
#include <gtest/gtest.h>

#include "ohmtrail/solve/solver.hpp"

/// Short ways to write a circuit down.
namespace ohmtrail::solve {

inline Branch branch(int from, int to, Law law, double size = 0, double resistance = 0) {
  Branch made;
  made.from = from;
  made.to = to;
  made.law = law;
  made.size = size;
  made.resistance = resistance;
  return made;
}

inline Branch resistor(int from, int to, double ohms) {
  return branch(from, to, Law::resistor, 0, ohms);
}
inline Branch source(int plus, int minus, double volts, double ohms) {
  return branch(plus, minus, Law::source, volts, ohms);
}
inline Branch diode(int anode, int cathode, double volts = 0.7) {
  return branch(anode, cathode, Law::diode, volts);
}

inline Branch load(int plus, int minus, Law law, double size, double stops_below = 0) {
  Branch made = branch(plus, minus, law, size);
  if (law == Law::resistor) std::swap(made.size, made.resistance);
  made.nominal = 12;
  made.stops_below = stops_below;
  return made;
}

inline Branch charger(int plus, int minus, double volts, double limit) {
  Branch made = branch(plus, minus, Law::regulator, volts);
  made.limit = limit;
  return made;
}

inline Solution solved(Circuit circuit) {
  auto solution = Solver(std::move(circuit)).solve();
  if (!solution) {
    ADD_FAILURE() << "failure of kind " << static_cast<int>(solution.error().kind);
    return {};
  }
  return *solution;
}

}  // namespace ohmtrail::solve
