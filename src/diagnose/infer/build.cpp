#include "diagnose/infer/build.hpp"

#include <algorithm>
#include <cmath>
#include <set>

#include "diagnose/infer/build_observations.hpp"
#include "diagnose/infer/priors.hpp"
#include "ohmtrail/solve/case_solution.hpp"

namespace ohmtrail::diagnose::inference {
namespace {

std::vector<const netlist::Case*> cases_read(const netlist::System& system) {
  std::set<std::string> names;
  for (const netlist::Reading& reading : system.readings) {
    names.insert(reading.in_case);
  }
  std::vector<const netlist::Case*> out;
  for (const netlist::Case& one : system.cases) {
    if (names.contains(one.name)) {
      out.push_back(&one);
    }
  }
  if (out.empty()) {
    out.push_back(&system.cases.front());
  }
  return out;
}

// The charger holds its set point, as a reading across it says: its limit does not bind. Where the prior has
// it at its limit instead no reading would have any effect there, and the search would not find its way back.
void lift_limits(const netlist::System& system, network::Network& network) {
  constexpr double held = 0.985, out_of_the_way = 10;
  for (network::Element& element : network.elements) {
    if (element.role != network::Role::charger || !element.active) continue;
    const std::string& plus = network.points[static_cast<std::size_t>(element.from)];
    const std::string& minus = network.points[static_cast<std::size_t>(element.to)];
    const bool holds =
        std::any_of(system.readings.begin(), system.readings.end(), [&](const netlist::Reading& reading) {
          const auto* volts = std::get_if<netlist::VoltsReading>(&reading.what);
          return volts != nullptr && reading.in_case == network.case_name &&
                 ((volts->red == plus && volts->black == minus) ||
                  (volts->red == minus && volts->black == plus)) &&
                 std::abs(volts->value.si()) >= held * element.voltage.si();
        });
    if (holds) element.limit = element.limit * out_of_the_way;
  }
}

class Builder {
 public:
  explicit Builder(const netlist::System& system) : system_(system) {}

  Survey build() {
    for (const netlist::Case* one : cases_read(system_)) {
      survey_.networks.push_back(network::build(system_, *one));
      lift_limits(system_, survey_.networks.back());
    }
    add_common();
    for (std::size_t k = 0; k < survey_.networks.size(); ++k) {
      add_case(k);
    }
    add_observations(system_, survey_);
    survey_.display_factor.resize(survey_.model.parameters.size(), 1.0);
    return std::move(survey_);
  }

 private:
  int add(Parameter parameter) {
    survey_.model.parameters.push_back(std::move(parameter));
    return static_cast<int>(survey_.model.parameters.size()) - 1;
  }

  // Unknowns that are one and the same in every case.
  void add_common() {
    for (const network::Element& element : survey_.networks.front().elements) {
      switch (element.role) {
        case network::Role::wire:
        case network::Role::termination:
        case network::Role::joint:
        case network::Role::switchgear:
        case network::Role::fuse:
          add_element(element);
          break;
        case network::Role::battery: {
          const netlist::Battery& battery = system_.batteries[element.origin.index];
          survey_.element_parameter[element.id] = add(battery_resistance_prior(battery, element));
          survey_.emf_parameter[element.id] = add(emf_prior(battery, element));
          break;
        }
        case network::Role::charger:
          common_size_[element.id] = add(linear(Kind::set_point, element, set_point_sd));
          break;
        case network::Role::isolator:
          common_size_[element.id] = add(linear(Kind::isolator_drop, element, isolator_drop_sd));
          break;
        default:
          break;
      }
    }
  }

  // A resistance of exactly nothing has no logarithm: it stays as it is.
  void add_element(const network::Element& element) {
    Parameter prior = element_prior(system_, element);
    if (prior.centre > 0) {
      survey_.element_parameter[element.id] = add(std::move(prior));
    }
  }

  static Parameter linear(Kind kind, const network::Element& element, double relative_sd) {
    Parameter out;
    out.kind = kind;
    out.scale = Scale::linear;
    out.id = element.id;
    out.centre = element.voltage.si();
    out.sound = {0, relative_sd * std::abs(out.centre)};
    return out;
  }

  void add_case(std::size_t k) {
    const network::Network& network = survey_.networks[k];
    CaseCircuit out{network.case_name, solve::circuit_of(network), {}};
    for (std::size_t e = 0; e < network.elements.size(); ++e) {
      place(network.elements[e], static_cast<int>(e), static_cast<int>(k), out);
    }
    survey_.model.cases.push_back(std::move(out));
  }

  void place(const network::Element& element, int branch, int in_case, CaseCircuit& out) {
    const solve::Branch& law = out.circuit.branches[static_cast<std::size_t>(branch)];
    if (law.law == solve::Law::open) {
      return;
    }
    if (const auto found = survey_.element_parameter.find(element.id);
        found != survey_.element_parameter.end()) {
      out.placements.push_back({found->second, branch, false});
    }
    if (const auto found = survey_.emf_parameter.find(element.id); found != survey_.emf_parameter.end()) {
      out.placements.push_back({found->second, branch, true});
    }
    if (const auto found = common_size_.find(element.id); found != common_size_.end()) {
      out.placements.push_back({found->second, branch, true});
    }
    if (element.role == network::Role::load && element.takes && element.partner < 0) {
      place_load(element, law, branch, in_case, out);
    }
  }

  void place_load(const network::Element& element, const solve::Branch& law, int branch, int in_case,
                  CaseCircuit& out) {
    const bool resistive = law.law == solve::Law::resistor;
    const double size = resistive ? law.resistance : law.size;
    if (size <= 0) {
      return;
    }
    Parameter load;
    load.kind = Kind::load;
    load.id = element.id;
    load.centre = size;
    load.sound = load_prior(*element.takes);
    load.in_case = in_case;
    out.placements.push_back({add(std::move(load)), branch, !resistive});
  }

  const netlist::System& system_;
  Survey survey_;
  std::map<std::string, int> common_size_;
};

}  // namespace

Survey build_survey(const netlist::System& system) {
  return Builder(system).build();
}

}  // namespace ohmtrail::diagnose::inference
