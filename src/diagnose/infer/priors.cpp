#include "diagnose/infer/priors.hpp"

#include <cmath>

#include "diagnose/infer/seen_odds.hpp"

namespace ohmtrail::diagnose::inference {
namespace {

struct Belief {
  double sd;  // of ln (R / sound)
  Normal fault;
  double chance;
};

bool is_half_of_an_end(network::Part part) {
  using network::Part;
  return part == Part::from_crimp || part == Part::to_crimp || part == Part::return_from_crimp ||
         part == Part::return_to_crimp;
}

Belief belief_of(const netlist::System& system, const network::Element& element) {
  const bool table = element.sound_from_table;
  switch (element.role) {
    case network::Role::wire: {
      const bool guessed = table && system.runs[element.origin.index].length_estimated;
      return {guessed ? 0.25 : 0.08, {std::log(2.0), 0.6}, 0.01};
    }
    case network::Role::switchgear:
    case network::Role::fuse:
      return {table ? 0.5 : 0.35, {std::log(6.0), 1.0}, 0.02};
    default:
      return {0.35, table ? Normal{std::log(40.0), 1.5} : Normal{std::log(12.0), 1.2}, 0.03};
  }
}

// An end opened into contact and crimp is still one termination: each half has half the chance.
bool end_is_opened(const netlist::System& system, const network::Element& element) {
  return element.role == network::Role::termination &&
         (system.info.terminations == netlist::Terminations::contact_and_crimp ||
          is_half_of_an_end(element.origin.part));
}

int cells(const netlist::Battery& battery) {
  const double per_cell = battery.chemistry == trade::Chemistry::lfp ? 3.2 : 2.0;
  return std::max(1, static_cast<int>(std::lround(battery.nominal.si() / per_cell)));
}

bool has_gravity(const netlist::Battery& battery) {
  for (const netlist::CellCheck& cell : battery.checks.cells) {
    if (cell.specific_gravity) {
      return true;
    }
  }
  return false;
}

// sd of the open-circuit voltage, relative, by what it was taken from.
double emf_sd(const netlist::Battery& battery) {
  if (battery.emf) {
    return 0.002;
  }
  if (battery.checks.rest) {
    return 0.004;
  }
  if (has_gravity(battery)) {
    return 0.006;
  }
  return battery.state_of_charge ? 0.01 : 0.02;
}

}  // namespace

double log_odds(double chance) {
  return std::log(chance / (1 - chance));
}

Parameter element_prior(const netlist::System& system, const network::Element& element) {
  Parameter out;
  out.kind = Kind::element;
  out.id = element.id;
  if (!element.sound || element.sound->si() <= 0) {
    out.centre = element.resistance.si();
    out.sound = {0, 1};
    return out;
  }
  const Belief belief = belief_of(system, element);
  const double chance = end_is_opened(system, element) ? belief.chance / 2 : belief.chance;
  out.centre = element.sound->si();
  out.sound = {0, belief.sd};
  out.fault = Fault{belief.fault, log_odds(chance) + std::log(seen_odds(element.seen))};
  return out;
}

bool resistance_was_tested(const netlist::Battery& battery) {
  return !battery.resistance && (battery.checks.load_test || battery.checks.tester);
}

Parameter battery_resistance_prior(const netlist::Battery& battery, const network::Element& element) {
  constexpr double chance = 0.11;
  Parameter out;
  out.kind = Kind::battery_resistance;
  out.id = element.id;
  const bool tested = resistance_was_tested(battery) && element.sound;
  out.centre = tested ? element.sound->si() : element.resistance.si();
  out.sound = {0, battery.resistance ? 0.2 : 0.4};
  out.fault = Fault{{std::log(2.5), 0.6}, log_odds(chance) + std::log(seen_odds(battery.seen))};
  return out;
}

Parameter emf_prior(const netlist::Battery& battery, const network::Element& element) {
  constexpr double chance = 0.045;
  Parameter out;
  out.kind = Kind::emf;
  out.scale = Scale::linear;
  out.id = element.id;
  out.centre = element.voltage.si();
  const double sd = emf_sd(battery) * out.centre;
  out.sound = {0, sd};
  const int count = cells(battery);
  if (count > 1) {
    out.fault = Fault{{-out.centre / count, std::hypot(sd, 0.1)},
                      log_odds(chance) + std::log(seen_odds(battery.seen))};
  }
  return out;
}

Normal load_prior(const netlist::Takes& takes) {
  return {0, std::holds_alternative<netlist::Current>(takes) ? 0.1 : 0.3};
}

}  // namespace ohmtrail::diagnose::inference
