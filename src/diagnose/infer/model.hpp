#pragma once
#include <string>
#include <utility>
#include <vector>

#include "diagnose/infer/parameter.hpp"
#include "ohmtrail/solve/circuit.hpp"
#include "ohmtrail/trade/fin.hpp"

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

/// What heats and what cools a connection whose temperature was read.
struct JointSight {
  std::vector<int> contacts;                  ///< branches whose heat leaves together
  std::vector<trade::Fin> fins;               ///< cables that it leaves along; none: it cannot be told
  std::vector<std::pair<int, double>> wires;  ///< their branches, and shares in the cables' own temperature
  double ambient = 0;                         ///< °C
};

/// What an observation looks at.
enum class Sight { voltage, current, resistance, wire_temperature, joint_temperature };

struct Observation {
  Sight sight = Sight::voltage;
  int in_case = -1;          ///< −1: needs no solution (resistance)
  int red = -1, black = -1;  ///< points, voltage
  int branch = -1;           ///< current and temperatures
  int joint = -1;            ///< joint temperature: index into the model's joints
  int parameter = -1;        ///< resistance: the unknown that is read
  int also = -1;             ///< resistance: a second unknown in series with it, −1: none
  double factor = 1;         ///< resistance at the state it was read in, over the unknown's value
  double above = 0;          ///< temperatures: the ambient that `measured` stands above, °C
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
  std::vector<JointSight> joints;
};

}  // namespace ohmtrail::diagnose::inference
