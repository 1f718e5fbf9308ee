#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "index.hpp"
#include "ohmtrail/diagnose/joint_temperature.hpp"
#include "ohmtrail/diagnose/temperature_in_words.hpp"
#include "ohmtrail/units/print.hpp"
#include "system_rules.hpp"

/// A connection whose temperature was taken at the load at hand, scaled to the fullest load that the file
/// knows.
namespace ohmtrail::diagnose {
namespace {

using network::Role;

// Common practice, textbooks on thermography: a rise goes with the current to the power of 1.6 to 2.
constexpr double least_power = 1.6, most_power = 2;
// ANSI/NETA MTS thermographic criteria, as tabulated on a public page: kelvin over the air around.
constexpr double probable_rise = 10, major_rise = 40;
constexpr const char* source =
    "ANSI/NETA MTS thermographic criteria: over 40 K above ambient, repair at once; over 10 K, probable; "
    "rise with the current to the power of 1.6 to 2: common practice";

bool is_contact(Role role) {
  return role == Role::termination || role == Role::joint || role == Role::switchgear || role == Role::fuse;
}

/// Of the run's own place for a termination, else of the case.
double ambient_of(const RuleContext& context, const network::Element& element) {
  const auto& info = context.system.info;
  if (element.origin.section == network::Section::runs &&
      context.system.runs[element.origin.index].in == "engine-space")
    return info.engine_space.celsius();
  for (const auto& one : context.system.cases)
    if (one.name == context.solved.network.case_name) return one.ambient.value_or(info.ambient).celsius();
  return info.ambient.celsius();
}

/// The case in which an element carries most.
const solve::CaseSolution& fullest(const RuleContext& context, int element) {
  return *std::max_element(context.all.begin(), context.all.end(),
                           [&](const solve::CaseSolution& a, const solve::CaseSolution& b) {
                             return std::abs(at(a.solution.current, element)) <
                                    std::abs(at(b.solution.current, element));
                           });
}

/// What was read, and what it comes to.
struct Scaled {
  double read = 0, rise = 0, amperes = 0, full_amperes = 0, least = 0, most = 0;  ///< °C, K, A, A, °C, °C
};

Scaled scale(double read, double ambient, double amperes, double full_amperes) {
  Scaled scaled{read, read - ambient, amperes, full_amperes, 0, 0};
  const double times = full_amperes / amperes;
  scaled.least = ambient + scaled.rise * std::pow(times, least_power);
  scaled.most = ambient + scaled.rise * std::pow(times, most_power);
  return scaled;
}

std::string in_words(const Scaled& scaled, const std::string& full_case) {
  using units::print;
  auto text = fmt::format("was read at {:.0f} °C with {}, {:.0f} K above the air around it", scaled.read,
                          print(units::Current{scaled.amperes}), scaled.rise);
  if (scaled.full_amperes > 1.01 * scaled.amperes)
    text +=
        fmt::format("; at the {} of case {} that makes {} to {}", print(units::Current{scaled.full_amperes}),
                    full_case, temperature_in_words(scaled.least), temperature_in_words(scaled.most));
  if (scaled.most >= touch_limit_celsius) text += ", too hot to touch";
  return text;
}

void judge(const RuleContext& context, Collected& collected, int element, double celsius) {
  const auto& body = at(context.solved.network.elements, element);
  const double amperes = std::abs(at(context.solved.solution.current, element));
  const double ambient = ambient_of(context, body);
  if (!is_contact(body.role) || !(amperes > 0)) return;
  const auto& full = fullest(context, element);
  const auto scaled = scale(celsius, ambient, amperes, std::abs(at(full.solution.current, element)));
  const double rise = scaled.most - ambient;
  if (!(rise > probable_rise)) return;
  auto finding = finding_of("measured-heat", source, body.id);
  finding.severity = rise > major_rise ? Severity::soon : Severity::improvement;
  finding.in_case = context.solved.network.case_name;
  finding.text = in_words(scaled, full.network.case_name);
  finding.remedy =
      rise > major_rise
          ? "Switch off and let it cool; clean and tighten it, or make it new. Disconnect the "
            "battery first."
          : "Read it again beside a like one under the same load; tighten it if it is the warmer.";
  collected.add(std::move(finding), rise);
}

}  // namespace

void measured_heat(const RuleContext& context, Collected& collected) {
  for (const auto& reading : context.system.readings) {
    const auto* warm = std::get_if<netlist::TemperatureReading>(&reading.what);
    if (!warm || reading.in_case != context.solved.network.case_name) continue;
    if (const auto element = context.solved.network.element(warm->at))
      judge(context, collected, *element, warm->value.celsius());
  }
}

}  // namespace ohmtrail::diagnose
