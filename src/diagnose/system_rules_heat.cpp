#include <fmt/format.h>

#include <cmath>

#include "index.hpp"
#include "joint_heat.hpp"
#include "ohmtrail/units/print.hpp"
#include "system_rules.hpp"

/// Rules about what burns: ampacity, insulation, hot connections, fuses that do not protect their wire.
namespace ohmtrail::diagnose {
namespace {

using network::Element;
using network::Role;

constexpr const char* ampacity_source = "33 CFR 183.425 Table 5 (AWG, SAE), ISO 10133 Table A.1 (mm²)";

Finding about(const RuleContext& context, const Element& element, const char* rule, const char* source) {
  auto finding = finding_of(rule, source, element.id);
  finding.in_case = context.solved.network.case_name;
  return finding;
}

/// Element indices at every point.
using Fans = std::vector<std::vector<int>>;

Fans fans_of(const network::Network& network) {
  Fans fans(network.points.size());
  for (int k = 0; k < static_cast<int>(network.elements.size()); ++k) {
    at(fans, at(network.elements, k).from).push_back(k);
    at(fans, at(network.elements, k).to).push_back(k);
  }
  return fans;
}

bool in_series(Role role) {
  return role == Role::wire || role == Role::termination || role == Role::joint || role == Role::switchgear ||
         role == Role::shunt;
}

/// Follows the conductor from an element through a point until something branches off or it ends.
void follow(const network::Network& network, const Fans& fans, int element, int point,
            std::vector<int>& wires) {
  const int start = element;
  while (at(fans, point).size() == 2) {
    element = at(fans, point)[at(fans, point)[0] == element ? 1 : 0];
    const auto& next = at(network.elements, element);
    if (element == start || !in_series(next.role)) return;
    if (next.role == Role::wire) wires.push_back(element);
    point = next.from == point ? next.to : next.from;
  }
}

/// The wires that a fuse is in series with before anything branches off.
std::vector<int> wires_in_series(const network::Network& network, const Fans& fans, int fuse) {
  std::vector<int> wires;
  follow(network, fans, fuse, at(network.elements, fuse).from, wires);
  follow(network, fans, fuse, at(network.elements, fuse).to, wires);
  return wires;
}

Finding fuse_finding(const RuleContext& context, const Element& fuse, const Element& wire) {
  const auto rating = context.system.fuses[fuse.origin.index].rating;
  auto finding = about(context, fuse, "fuse-over-ampacity", ampacity_source);
  finding.in_case.clear();
  finding.text = fmt::format("is a {} fuse on {}, which may carry {}", units::print(rating), wire.id,
                             units::print(wire.heating->rated));
  finding.remedy = "Fit a fuse that the wire can carry, or a larger wire. Disconnect the battery first.";
  return finding;
}

}  // namespace

void wires_overloaded(const RuleContext& context, Collected& collected) {
  const auto& network = context.solved.network;
  for (int k = 0; k < static_cast<int>(network.elements.size()); ++k) {
    const auto& element = at(network.elements, k);
    const double current = std::abs(at(context.solved.solution.current, k));
    if (!element.heating || element.heating->rated.si() <= 0 || !(current > element.heating->rated.si()))
      continue;
    auto finding = about(context, element, "over-ampacity", ampacity_source);
    finding.severity = Severity::before_further_use;
    finding.text = fmt::format("carries {}; as it lies it may carry {} for long",
                               units::print(units::Current{current}), units::print(element.heating->rated));
    finding.remedy = "Fit a larger cable, or keep the load short. Disconnect the battery first.";
    collected.add(std::move(finding), current / element.heating->rated.si());
  }
}

void wires_too_hot(const RuleContext& context, Collected& collected) {
  const auto& network = context.solved.network;
  for (int k = 0; k < static_cast<int>(network.elements.size()); ++k) {
    const auto& element = at(network.elements, k);
    if (element.role != Role::wire) continue;
    const double rating = context.system.runs[element.origin.index].insulation.celsius();
    const double celsius = at(context.solved.solution.temperature, k);
    if (!(celsius > rating)) continue;
    auto finding = about(context, element, "insulation-temperature", "the insulation's own rating");
    finding.severity = Severity::before_further_use;
    finding.text =
        fmt::format("would reach {}; its insulation is rated for {}",
                    units::print(units::Temperature{celsius}), units::print(units::Temperature{rating}));
    finding.remedy = "Fit a larger cable before it is loaded like this again. Disconnect the battery first.";
    collected.add(std::move(finding), celsius - rating);
  }
}

void joints_too_hot(const RuleContext& context, Collected& collected) {
  const auto& network = context.solved.network;
  const JointHeat heat(context.system, context.solved);
  for (int k = 0; k < static_cast<int>(network.elements.size()); ++k) {
    const auto& element = at(network.elements, k);
    // What is sound is as warm as its maker meant it, or its cable is too thin, which has a rule of its own.
    if (!element.sound || element.resistance <= *element.sound) continue;
    const auto joint = heat.of(k);
    if (!joint) continue;
    const auto warning = heat_warning(*joint);
    if (!warning) continue;
    auto finding =
        about(context, element, "hot-connection",
              joint->above_insulation ? "the insulation's own rating" : "from memory: ISO 13732-1");
    finding.severity = joint->above_insulation ? Severity::before_further_use : Severity::soon;
    finding.text = *warning;
    finding.remedy =
        "Switch off and let it cool; clean and tighten it, or make it new. Disconnect the battery first.";
    collected.add(std::move(finding), joint->celsius);
  }
}

void fuses_too_large(const RuleContext& context, Collected& collected) {
  const auto& network = context.solved.network;
  const auto fans = fans_of(network);
  for (int k = 0; k < static_cast<int>(network.elements.size()); ++k) {
    const auto& fuse = at(network.elements, k);
    if (fuse.role != Role::fuse) continue;
    const double rating = context.system.fuses[fuse.origin.index].rating.si();
    for (const int index : wires_in_series(network, fans, k)) {
      const auto& wire = at(network.elements, index);
      const double rated = wire.heating ? wire.heating->rated.si() : 0;
      if (rated > 0 && rating > rated) collected.add(fuse_finding(context, fuse, wire), rating / rated);
    }
  }
}

}  // namespace ohmtrail::diagnose
