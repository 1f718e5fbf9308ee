#pragma once
#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

#include "ohmtrail/netlist/system.hpp"
#include "ohmtrail/solve/case_solution.hpp"

/// Small systems built by hand, with resistances given outright so that no table enters.
namespace ohmtrail::test {

inline netlist::System empty_system(double nominal = 12) {
  netlist::System system;
  system.info.name = "rig";
  system.info.nominal = units::Voltage{nominal};
  netlist::Case all;
  all.name = "all-on";
  all.all_on = true;
  system.cases.push_back(all);
  return system;
}

inline void add_battery(netlist::System& system, const std::string& id, const std::string& plus,
                        const std::string& minus, double emf, double ohms) {
  netlist::Battery battery;
  battery.id = id;
  battery.plus = plus;
  battery.minus = minus;
  battery.nominal = system.info.nominal;
  battery.emf = units::Voltage{emf};
  battery.resistance = units::Resistance{ohms};
  system.batteries.push_back(battery);
}

inline trade::Gauge square_mm(double area) {
  trade::Gauge gauge;
  gauge.system = trade::GaugeSystem::metric;
  gauge.area = units::Area{area * 1e-6};
  return gauge;
}

/// A run whose wire and ends are sound at these values.
inline netlist::Run& add_run(netlist::System& system, const std::string& id, const std::string& from,
                             const std::string& to, double wire_ohms, double end_ohms) {
  netlist::Run run;
  run.id = id;
  run.from = from;
  run.to = to;
  run.gauge = square_mm(35);
  run.length = units::Length{1};
  run.wire.sound = units::Resistance{wire_ohms};
  run.end_from.resistances.sound = units::Resistance{end_ohms};
  run.end_to.resistances.sound = units::Resistance{end_ohms};
  system.runs.push_back(run);
  return system.runs.back();
}

inline netlist::Joint& add_joint(netlist::System& system, const std::string& id, const std::string& from,
                                 const std::string& to, double ohms) {
  netlist::Joint joint{id, from, to, trade::JointKind::stud, {}, {}, {}};
  joint.resistances.sound = units::Resistance{ohms};
  system.joints.push_back(joint);
  return system.joints.back();
}

inline netlist::Switch& add_switch(netlist::System& system, const std::string& id, const std::string& from,
                                   const std::string& to, double ohms) {
  netlist::Switch item{};
  item.id = id;
  item.from = from;
  item.to = to;
  item.kind = trade::SwitchKind::battery_switch;
  item.closed = true;
  item.resistances.sound = units::Resistance{ohms};
  system.switches.push_back(item);
  return system.switches.back();
}

inline netlist::Fuse& add_fuse(netlist::System& system, const std::string& id, const std::string& from,
                               const std::string& to, double ohms, double rating = 100) {
  netlist::Fuse fuse{};
  fuse.id = id;
  fuse.from = from;
  fuse.to = to;
  fuse.rating = units::Current{rating};
  fuse.resistances.sound = units::Resistance{ohms};
  system.fuses.push_back(fuse);
  return system.fuses.back();
}

inline netlist::Load& add_load(netlist::System& system, const std::string& id, const std::string& plus,
                               const std::string& minus, netlist::Takes takes) {
  netlist::Load load;
  load.id = id;
  load.plus = plus;
  load.minus = minus;
  load.takes = takes;
  system.loads.push_back(load);
  return system.loads.back();
}

inline netlist::Case& add_case(netlist::System& system, const std::string& name,
                               std::vector<std::string> on) {
  netlist::Case one;
  one.name = name;
  one.on = std::move(on);
  system.cases.push_back(one);
  return system.cases.back();
}

inline solve::CaseSolution solve_one(const netlist::System& system, const netlist::Case& in_case) {
  auto solved = solve::solve_case(network::build(system, in_case));
  if (!solved) ADD_FAILURE() << "no solution of case " << in_case.name;
  return std::move(solved).value();
}

inline std::vector<solve::CaseSolution> solve_all(const netlist::System& system) {
  std::vector<solve::CaseSolution> solved;
  for (const auto& one : system.cases) solved.push_back(solve_one(system, one));
  return solved;
}

/// 12 V, 10 mΩ, out and back by one run each (20 mΩ of wire, 1 mΩ an end), one load of constant current.
inline netlist::System out_and_back(double amps) {
  auto system = empty_system();
  add_battery(system, "house", "b+", "b-", 12, 0.010);
  add_run(system, "out", "b+", "l+", 0.020, 0.001);
  add_run(system, "back", "l-", "b-", 0.020, 0.001);
  add_load(system, "lamp", "l+", "l-", units::Current{amps});
  return system;
}

/// A charger that runs in every case. V, A.
inline void add_charger(netlist::System& system, const std::string& id, const std::string& plus,
                        const std::string& minus, double set_point, double limit) {
  netlist::Charger charger;
  charger.id = id;
  charger.plus = plus;
  charger.minus = minus;
  charger.setpoint = units::Voltage{set_point};
  charger.limit = units::Current{limit};
  system.chargers.push_back(charger);
  for (auto& one : system.cases) one.chargers.push_back(id);
}

template <class Rows>
auto find_id(const Rows& rows, const std::string& id) {
  return std::find_if(rows.begin(), rows.end(), [&](const auto& row) { return row.id == id; });
}

}  // namespace ohmtrail::test
