#include <gtest/gtest.h>

#include "ohmtrail/network/network.hpp"

namespace ohmtrail::network {
namespace {

using namespace units;

netlist::System with_inverter(netlist::Takes takes) {
  netlist::System system;
  system.info.nominal = Voltage{12};
  netlist::Battery battery;
  battery.id = "bank";
  battery.plus = "+";
  battery.minus = "-";
  battery.nominal = Voltage{12};
  system.batteries = {battery};
  netlist::Load inverter;
  inverter.id = "inverter";
  inverter.plus = "+";
  inverter.minus = "-";
  inverter.takes = takes;
  inverter.efficiency = Fraction{0.8};
  inverter.idle = Power{12};
  system.loads = {inverter};
  netlist::Case all;
  all.name = "all-on";
  all.all_on = true;
  system.cases = {all};
  return system;
}

netlist::Takes taken(const netlist::System& system) {
  const auto network = build(system, system.cases.front());
  return *network.elements[static_cast<std::size_t>(*network.element("inverter"))].takes;
}

TEST(Inverter, TakesWhatItGivesOverItsEfficiencyAndItsIdleDraw) {
  EXPECT_DOUBLE_EQ(std::get<Power>(taken(with_inverter(Power{800}))).si(), 1012);
}

TEST(Inverter, WithNothingPluggedInItDrawsItsIdle) {
  EXPECT_DOUBLE_EQ(std::get<Power>(taken(with_inverter(Power{0}))).si(), 12);
}

TEST(Inverter, WhatACaseSetsIsAlsoWhatComesOut) {
  auto system = with_inverter(Power{800});
  system.cases.front().set["inverter"] = Power{400};
  EXPECT_DOUBLE_EQ(std::get<Power>(taken(system)).si(), 512);
}

TEST(Inverter, AGivenCurrentIsWhatItDraws) {
  EXPECT_DOUBLE_EQ(std::get<Current>(taken(with_inverter(Current{70}))).si(), 70);
}

}  // namespace
}  // namespace ohmtrail::network
