#include <fmt/format.h>
#include <fmt/ranges.h>

#include "ohmtrail/diagnose/charging.hpp"
#include "ohmtrail/units/print.hpp"
#include "system_rules.hpp"

/// Rules about charging: what is lost between charger and battery, and batteries that never get full.
namespace ohmtrail::diagnose {
namespace {

using units::print;
using units::Voltage;

std::string name_of(const ChargeSplit& split) {
  return fmt::format("{}", fmt::join(split.batteries, "+"));
}

Finding charging_finding(const ChargeSplit& split, const char* rule, const char* source) {
  auto finding = finding_of(rule, source, split.batteries.front());
  finding.in_case = split.in_case;
  return finding;
}

std::string mostly_in(const ChargeSplit& split) {
  if (split.elements.empty()) return "";
  const auto& worst = split.elements.front();
  return fmt::format("; most of it in {}, {}", worst.element, print(Voltage{worst.lost}));
}

Finding drop_finding(const ChargeSplit& split) {
  auto finding = charging_finding(split, "charging-drop", "3 % from charger to battery: common practice");
  finding.text = fmt::format("{} is lost between {} and the posts of {}, {} where {} is allowed{}",
                             print(Voltage{split.lost}), split.charger, name_of(split),
                             print(units::Fraction{split.fraction}),
                             print(units::Fraction{most_charging_drop}), mostly_in(split));
  finding.remedy = "Make good what loses most on the way; measure along it while it charges hard.";
  return finding;
}

Finding undercharge_finding(const ChargeSplit& split) {
  auto finding = charging_finding(split, "undercharge", "set point held to 1 %: common practice");
  finding.text =
      fmt::format("{} never gets beyond {} where {} is set to {}; {}", name_of(split),
                  print(Voltage{*split.reaches}), split.charger, print(Voltage{split.set_point}),
                  split.charger_is_spent
                      ? fmt::format("the charger gives all it can, {}", print(units::Current{split.limit}))
                      : std::string("the rest is lost in isolators, cables and connections"));
  finding.remedy =
      "Batteries that are never full sulphate. Cure the way from charger to battery, let the charger sense "
      "at the battery's posts, or set it to make up for the isolator, within what the battery's maker "
      "allows.";
  return finding;
}

}  // namespace

void charging_losses(const RuleContext& context, Collected& collected) {
  for (const auto& split : charging(context.system, context.solved)) {
    if (!split.within) collected.add(drop_finding(split), split.fraction);
    if (!split.full) collected.add(undercharge_finding(split), split.set_point - *split.reaches);
  }
}

}  // namespace ohmtrail::diagnose
