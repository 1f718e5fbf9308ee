// The law of each kind of branch, and its derivatives against differences of the law itself.
#include "solve/branch_law.hpp"

#include <cmath>

#include "unit/solve/circuits.hpp"

namespace ohmtrail::solve {
namespace {

Branch warm_wire(double ohms, double rise) {
  Branch wire = resistor(0, 1, ohms);
  wire.heating = heating_at(0.00393, 30, rise, 100);
  return wire;
}

/// V over a wire at this current, from the two relations of `Heating` alone.
double volts_over(const Branch& wire, double amperes) {
  const Heating& heating = wire.heating;
  const double temperature = heating.ambient + heating.rise * amperes * amperes;
  return wire.resistance * (1 + heating.alpha * (temperature - 20)) * amperes;
}

TEST(BranchLaw, AWarmWireTakesTheCurrentThatWarmsItSo) {
  for (const double rise : {0.0, 1.0, 40.0, 5000.0}) {  // hardly, a little, well, out of all reason
    const Branch wire = warm_wire(0.01, rise);
    for (const double amperes : {0.0, 1e-6, 0.5, 30.0, 300.0, -30.0}) {
      const double volts = volts_over(wire, amperes);
      EXPECT_NEAR(operate(wire, volts, 0).current, amperes, 1e-13 * std::abs(amperes)) << rise;
    }
  }
}

/// Where the search for it starts changes nothing but its length.
TEST(BranchLaw, AWarmWiresCurrentIsFoundFromAnyOther) {
  for (const double rise : {0.0, 40.0, 5000.0}) {
    const Branch wire = warm_wire(0.01, rise);
    for (const double amperes : {0.0, 1e-6, 30.0, -100.0, 1e5}) {
      const double volts = volts_over(wire, amperes);
      for (const double near : {1e-9, 1.0, -40.0, amperes, 1e7})
        EXPECT_NEAR(operate(wire, volts, 0, near).current, amperes, 1e-13 * std::abs(amperes)) << near;
    }
  }
}

TEST(BranchLaw, AShortThroughAWireOutOfAllReasonWarm) {
  const Branch wire = warm_wire(1e-3, 5000);
  const Solution solution = solved({2, {source(1, 0, 12, 1e-4), wire}, 0});
  const double amperes = std::abs(solution.current[1]);
  EXPECT_NEAR(std::abs(solution.drop[1]), volts_over(wire, amperes), 1e-12);
  EXPECT_NEAR(12 - 1e-4 * amperes, volts_over(wire, amperes), 1e-12);
}

TEST(BranchLaw, ConductanceIsTheSlopeOfTheCurrent) {
  const Branch branches[] = {warm_wire(0.01, 2), warm_wire(0.01, 400), source(0, 1, 12, 0.02),
                             load(0, 1, Law::current, 5), load(0, 1, Law::power, 60)};
  for (const Branch& branch : branches) {
    const double volts = 0.7, step = 1e-5, watts = branch.law == Law::power ? branch.size : 0;
    const double slope =
        (operate(branch, volts + step, watts).current - operate(branch, volts - step, watts).current) /
        (2 * step);
    EXPECT_NEAR(operate(branch, volts, watts).conductance, slope, 1e-7 * std::abs(slope) + 1e-9);
  }
}

TEST(BranchLaw, ByResistanceAndBySizeAreSlopesToo) {
  Branch drop = diode(0, 1, 0.4);
  drop.resistance = 0.03;
  const Branch branches[] = {warm_wire(0.01, 400), source(0, 1, 0.2, 0.02), drop, load(0, 1, Law::current, 5),
                             load(0, 1, Law::power, 60)};
  constexpr double volts = 0.9;
  const auto amperes = [](const Branch& branch) {
    return operate(branch, volts - series_volts(branch), branch.law == Law::power ? branch.size : 0).current;
  };
  for (const Branch& branch : branches) {
    const double across = volts - series_volts(branch);
    const Operating here = operate(branch, across, branch.size);
    const auto slope = [&](double Branch::*value) {
      if (branch.*value == 0) return 0.0;
      Branch up = branch, down = branch;
      const double step = 1e-5 * branch.*value;
      up.*value += step;
      down.*value -= step;
      return (amperes(up) - amperes(down)) / (2 * step);
    };
    const double by_ohms = slope(&Branch::resistance);
    const double by_volts_amperes_or_watts = slope(&Branch::size);
    EXPECT_NEAR(by_resistance(branch, here, across), by_ohms, 1e-7 * std::abs(by_ohms));
    EXPECT_NEAR(by_size(branch, across, 1), by_volts_amperes_or_watts,
                1e-7 * std::abs(by_volts_amperes_or_watts));
  }
}

TEST(BranchLaw, HalfAShareOfAPowerLoadFollowsItsSizeHalf) {
  EXPECT_DOUBLE_EQ(by_size(load(0, 1, Law::power, 60), 12, 0.5), 0.5 / 12);
}

TEST(BranchLaw, WhatIsOpenPassesNothing) {
  const Operating open = operate(branch(0, 1, Law::open), 12, 0);
  EXPECT_EQ(open.current, 0);
  EXPECT_EQ(open.conductance, 0);
  EXPECT_EQ(by_resistance(branch(0, 1, Law::open), open, 12), 0);
  EXPECT_EQ(by_size(branch(0, 1, Law::open), 12, 1), 0);
}

TEST(BranchLaw, AtACurrentVoltsAndSlopeAgreeWithTheCurrentAtThoseVolts) {
  Branch drop = diode(0, 1, 0.4);
  drop.resistance = 0.03;
  for (const Branch& branch : {warm_wire(0.01, 400), resistor(0, 1, 0.5), source(0, 1, 12, 0.02), drop}) {
    const AtCurrent there = at_current(branch, 25);
    const Operating back = operate(branch, there.volts - series_volts(branch), 0);
    EXPECT_NEAR(back.current, 25, 1e-11);
    EXPECT_NEAR(back.conductance * there.resistance, 1, 1e-12);
  }
}

TEST(BranchLaw, ResistanceAndTemperatureOfAWarmWire) {
  const Branch wire = warm_wire(0.01, 60);
  EXPECT_DOUBLE_EQ(temperature_at(wire.heating, 50), 30 + 60 * 0.25);
  EXPECT_DOUBLE_EQ(temperature_at(wire.heating, -50), 45);
  EXPECT_DOUBLE_EQ(resistance_at(wire, 50), 0.01 * (1 + 0.00393 * 25));
  EXPECT_EQ(temperature_at({}, 1000), 25) << "what does not heat stays at its surroundings";
}

}  // namespace
}  // namespace ohmtrail::solve
