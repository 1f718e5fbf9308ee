#pragma once
#include <gmock/gmock.h>

#include <string>
#include <vector>

#include "ohmtrail/diagnose/bank.hpp"

/// Batteries of our own invention, and what the tests ask of their verdicts.
namespace ohmtrail::diagnose::bank_test {

inline netlist::Battery battery(const std::string& id, double nominal, double cca) {
  netlist::Battery made;
  made.id = id;
  made.plus = id + " +";
  made.minus = id + " -";
  made.nominal = units::Voltage{nominal};
  made.cca = units::Current{cca};
  return made;
}

inline void rested(netlist::Battery& battery, double volts, double hours, double celsius = 26.7) {
  battery.checks.rest =
      netlist::RestCheck{units::Voltage{volts}, units::Time{hours * 3600}, units::Temperature{celsius}};
}

inline void loaded(netlist::Battery& battery, double before, double amps, double volts, double seconds = 15,
                   double celsius = 21) {
  battery.checks.load_test =
      netlist::LoadTest{units::Voltage{before}, units::Current{amps}, units::Voltage{volts},
                        units::Time{seconds}, units::Temperature{celsius}};
}

inline void gravities(netlist::Battery& battery, const std::vector<double>& readings) {
  for (const double reading : readings)
    battery.checks.cells.push_back({reading, {}, units::Temperature{26.7}, netlist::ElectrolyteLevel::at});
}

inline netlist::System system_of(std::vector<netlist::Battery> batteries) {
  netlist::System system;
  system.info.name = "invented";
  system.info.nominal = units::Voltage{12};
  system.batteries = std::move(batteries);
  return system;
}

inline BatteryVerdict judged(const netlist::Battery& battery) {
  return judge_bank(system_of({battery})).batteries.at(0);
}

inline const BankFinding* find(const std::vector<BankFinding>& findings, const std::string& name) {
  for (const auto& finding : findings)
    if (finding.name == name) return &finding;
  return nullptr;
}

MATCHER_P(HasFinding, name, "has finding " + std::string(name)) {
  return find(arg.findings, name) != nullptr;
}

}  // namespace ohmtrail::diagnose::bank_test
