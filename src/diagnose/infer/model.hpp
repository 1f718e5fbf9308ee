#pragma once
#include <string>
#include <vector>

#include "diagnose/infer/parameter.hpp"
#include "ohmtrail/solve/circuit.hpp"

/// Everything an inference works on: unknowns, observations, and one plain circuit a case.
namespace ohmtrail::diagnose::inference {

/// Where a parameter acts in the circuit of one case.
struct Placement {
  int parameter;
  int branch;
  bool on_size = false;  ///< sets Branch::size; otherwise Branch::resistance
};

struct CaseCircuit {
  std::string name;
  solve::Circuit circuit;
  std::vector<Placement> placements;
};

/// What an observation looks at.
enum class Sight { voltage, current, resistance, wire_temperature, joint_temperature };

struct Observation {
  Sight sight = Sight::voltage;
  int in_case = -1;          ///< −1: needs no solution (resistance)
  int red = -1, black = -1;  ///< points, voltage
  int branch = -1;           ///< current and temperatures
  int parameter = -1;        ///< resistance: the unknown that is read
  double factor = 1;         ///< resistance at the state it was read in, over the unknown's value
  double measured = 0;
  double sigma = 1;                ///< independent part of the error: counts, rounding, spread
  int gain = -1, zero = -1;        ///< shared parts: parameters, −1: none
  std::vector<int> drifts;         ///< drift parameters that have passed by the time of this observation
  double wrong_log_odds = -4.595;  ///< ln(chance that the number is simply wrong / that it is right)
  int reading = -1;                ///< index in the netlist; −1: a `resistance` given with an element
};

struct Model {
  std::vector<Parameter> parameters;
  std::vector<Observation> observations;
  std::vector<CaseCircuit> cases;
};

}  // namespace ohmtrail::diagnose::inference
