#include <fmt/format.h>

#include <cmath>

#include "index.hpp"
#include "joint_heat.hpp"
#include "ohmtrail/diagnose/temperature_in_words.hpp"
#include "ohmtrail/units/print.hpp"
#include "system_rules.hpp"

/// Rules about what burns: ampacity, insulation, hot connections.
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

/// Short turns heat a wire as a lower current would that lasts.
std::string carries(const Element& element, double current, double lasting) {
  const auto carried = units::print(units::Current{current});
  const auto allowed = units::print(element.heating->rated);
  if (element.heating->share == 1)
    return fmt::format("carries {}; as it lies it may carry {} for long", carried, allowed);
  return fmt::format("carries {} in turns that heat it as {} would for long; as it lies it may carry {}",
                     carried, units::print(units::Current{lasting}), allowed);
}

/// What is sound, or as good as sound, is as warm as its maker meant it, or its cable is too thin, which has
/// a rule of its own. Temperatures are told to 5 K.
bool heats_by_itself(const Element& element, const JointTemperature& joint) {
  constexpr double told_to = 5;
  return joint.rise * (1 - units::ratio(*element.sound, element.resistance)) >= told_to;
}

}  // namespace

void wires_overloaded(const RuleContext& context, Collected& collected) {
  const auto& network = context.solved.network;
  for (int k = 0; k < static_cast<int>(network.elements.size()); ++k) {
    const auto& element = at(network.elements, k);
    if (!element.heating || element.heating->rated.si() <= 0) continue;
    const double current = std::abs(at(context.solved.solution.current, k));
    const double lasting = current * std::sqrt(element.heating->share);
    if (!(lasting > element.heating->rated.si())) continue;
    auto finding = about(context, element, "over-ampacity", ampacity_source);
    finding.severity = Severity::before_further_use;
    finding.text = carries(element, current, lasting);
    finding.remedy = "Fit a larger cable, or keep the load short. Disconnect the battery first.";
    collected.add(std::move(finding), lasting / element.heating->rated.si());
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
    finding.text = fmt::format("would reach {}; its insulation is rated for {}", reaches_in_words(celsius),
                               units::print(units::Temperature{rating}));
    finding.remedy = "Fit a larger cable before it is loaded like this again. Disconnect the battery first.";
    collected.add(std::move(finding), celsius - rating);
  }
}

void joints_too_hot(const RuleContext& context, Collected& collected) {
  const auto& network = context.solved.network;
  const JointHeat heat(context.system, context.solved);
  for (int k = 0; k < static_cast<int>(network.elements.size()); ++k) {
    const auto& element = at(network.elements, k);
    if (!element.sound) continue;
    const auto joint = heat.of(k);
    if (!joint || !heats_by_itself(element, *joint)) continue;
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

}  // namespace ohmtrail::diagnose
