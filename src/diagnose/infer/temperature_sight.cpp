#include "diagnose/infer/temperature_sight.hpp"

#include <algorithm>
#include <cmath>

#include "diagnose/index.hpp"

namespace ohmtrail::diagnose::inference {
namespace {

double heat_of(const JointSight& joint, const solve::Solution& solution) {
  double out = 0;
  for (const int k : joint.contacts) {
    const double one = at(solution.current, k) * at(solution.current, k) * at(solution.resistance, k);
    out += std::isfinite(one) ? one : 0;
  }
  return out;
}

double rise_of(const JointSight& joint, double heat) {
  return trade::joint_rise(units::Power{heat}, joint.fins, units::Temperature{joint.ambient}).si();
}

// The film coefficient depends on the rise, so there is no closed form: a central difference of one smooth
// curve.
double rise_by_heat(const JointSight& joint, double heat) {
  const double step = std::max(1e-3 * heat, 1e-6);
  const double low = std::max(heat - step, 0.0);
  return (rise_of(joint, heat + step) - rise_of(joint, low)) / (heat + step - low);
}

void add(const solve::Gradient& more, double factor, solve::Gradient& sum) {
  for (std::size_t k = 0; k < sum.by_resistance.size(); ++k) {
    sum.by_resistance[k] += factor * more.by_resistance[k];
    sum.by_size[k] += factor * more.by_size[k];
  }
}

}  // namespace

double wire_temperature(const solve::Heating& heating, double current) {
  return heating.ambient + heating.rise * current * current;
}

double wire_temperature_by_current(const solve::Heating& heating, double current) {
  return 2 * heating.rise * current;
}

double joint_temperature(const JointSight& joint, const solve::Circuit& circuit,
                         const solve::Solution& solution) {
  double out = rise_of(joint, heat_of(joint, solution));
  for (const auto& [wire, share] : joint.wires) {
    out += share * wire_temperature(at(circuit.branches, wire).heating, at(solution.current, wire));
  }
  return out;
}

solve::Gradient joint_temperature_gradient(const JointSight& joint, const solve::Circuit& circuit,
                                           const solve::Solution& solution, const solve::Solver& solver) {
  const std::size_t n = circuit.branches.size();
  solve::Gradient out{std::vector<double>(n, 0.0), std::vector<double>(n, 0.0)};
  const double slope = rise_by_heat(joint, heat_of(joint, solution));
  for (const int k : joint.contacts) {
    const double i = at(solution.current, k), r = at(solution.resistance, k);
    if (!std::isfinite(i * r) || i == 0) {
      continue;
    }
    add(solver.gradient_of_current(k), slope * 2 * i * r, out);
    at(out.by_resistance, k) += slope * i * i;
  }
  for (const auto& [wire, share] : joint.wires) {
    const double by_current =
        wire_temperature_by_current(at(circuit.branches, wire).heating, at(solution.current, wire));
    add(solver.gradient_of_current(wire), share * by_current, out);
  }
  return out;
}

JointSight joint_sight(const netlist::System& system, const network::Network& network, int element) {
  const Surround around = Surroundings(system, network).of(element);
  JointSight out;
  double weights = 0;
  for (const int contact : around.contacts) {
    if (at(network.elements, contact).active) {
      out.contacts.push_back(contact);
    }
  }
  for (const Cooling& one : around.cables) {
    const double ambient = at(network.elements, one.wire).heating->ambient.celsius();
    out.ambient = out.fins.empty() ? ambient : std::max(out.ambient, ambient);
    out.fins.push_back(one.fin);
    out.wires.emplace_back(one.wire, one.weight);
    weights += one.weight;
  }
  for (auto& [wire, share] : out.wires) {
    share /= weights;
  }
  return out;
}

}  // namespace ohmtrail::diagnose::inference
