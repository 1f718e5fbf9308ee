// What one other resistance would do: the same as solving the changed circuit, and the solver stays as it
// was.
#include <algorithm>
#include <cmath>

#include "unit/solve/circuits.hpp"

namespace ohmtrail::solve {
namespace {

/// Battery (0), wire (1), and a lamp of 5 Ω (2) beside what is added.
Circuit one_path(const Branch& added, double wire = 0.02) {
  return {3, {source(1, 0, 12, 0.01), resistor(1, 2, wire), load(2, 0, Law::resistor, 5), added}, 0};
}

void expect_alike(const std::vector<double>& found, const std::vector<double>& wanted) {
  ASSERT_EQ(found.size(), wanted.size());
  for (std::size_t k = 0; k < wanted.size(); ++k) {
    if (std::isnan(wanted[k]))
      EXPECT_TRUE(std::isnan(found[k])) << k;
    else
      EXPECT_NEAR(found[k], wanted[k], 1e-11 * std::max(1.0, std::abs(wanted[k]))) << k;
  }
}

/// The what-if against a solver of its own, and the first solver's derivatives before and after, to the bit.
Solution what_if(const Circuit& circuit, int changed, double ohms) {
  Solver solver(circuit);
  EXPECT_TRUE(solver.solve());
  const std::vector<double> before = solver.gradient_of_voltage(2, 0).by_resistance;
  const auto found = solver.with_resistance(changed, ohms);
  EXPECT_EQ(solver.gradient_of_voltage(2, 0).by_resistance, before);
  EXPECT_EQ(solver.circuit().branches[static_cast<std::size_t>(changed)].resistance,
            circuit.branches[static_cast<std::size_t>(changed)].resistance);
  if (!found) {
    ADD_FAILURE() << "failure of kind " << static_cast<int>(found.error().kind);
    return {};
  }
  Circuit other = circuit;
  other.branches[static_cast<std::size_t>(changed)].resistance = ohms;
  const Solution anew = solved(other);
  expect_alike(found->voltage, anew.voltage);
  expect_alike(found->current, anew.current);
  expect_alike(found->drop, anew.drop);
  expect_alike(found->resistance, anew.resistance);
  EXPECT_EQ(found->running, anew.running);
  EXPECT_EQ(found->collapse.has_value(), anew.collapse.has_value());
  return *found;
}

TEST(WhatIf, OnOnePathIsOhmsLaw) {
  const Circuit circuit = one_path(load(2, 0, Law::current, 10));
  const double amperes = (12 - 10 * 0.06) / 5.06;  // of the lamp: 12 − (i + 10) 0.06 = 5 i
  EXPECT_NEAR(what_if(circuit, 1, 0.05).current[2], amperes, 1e-12);
}

TEST(WhatIf, WithConstantPowerIsTheUpperBranch) {
  Circuit circuit = one_path(load(2, 0, Law::power, 300));
  circuit.branches[2].law = Law::open;
  for (const double ohms : {0.001, 0.019, 0.1}) {
    const double volts = (12 + std::sqrt(144 - 4 * (0.01 + ohms) * 300)) / 2;
    EXPECT_NEAR(what_if(circuit, 1, ohms).voltage[2], volts, 1e-11) << ohms;
  }
}

TEST(WhatIf, WithAWarmWireAndOfOne) {
  Circuit circuit = one_path(load(2, 0, Law::power, 200));
  circuit.branches[1].heating = heating_at(0.00393, 30, 60, 25);
  what_if(circuit, 0, 0.08);
  what_if(circuit, 1, 0.08);
  what_if(circuit, 1, 0.002);
}

TEST(WhatIf, DownToNothingAndUpFromIt) {
  EXPECT_EQ(what_if(one_path(load(2, 0, Law::power, 100)), 1, 0).drop[1], 0);
  what_if(one_path(load(2, 0, Law::power, 100), 0), 1, 0.03);
}

TEST(WhatIf, AWorseWireMayBringTheLoadDown) {
  const Solution worse = what_if(one_path(load(2, 0, Law::power, 300)), 1, 0.5);
  ASSERT_TRUE(worse.collapse);
  EXPECT_EQ(worse.collapse->branch, 3);
}

TEST(WhatIf, ABetterWireMayCureACollapse) {
  EXPECT_FALSE(what_if(one_path(load(2, 0, Law::power, 300), 0.5), 1, 0.02).collapse);
}

TEST(WhatIf, ALoadMayDropOutOrComeBack) {
  const Circuit circuit = one_path(load(2, 0, Law::power, 100, 11));
  EXPECT_TRUE(what_if(circuit, 1, 0.05).running[3]);
  EXPECT_FALSE(what_if(circuit, 1, 0.3).running[3]);
  EXPECT_TRUE(what_if(one_path(load(2, 0, Law::power, 100, 11), 0.3), 1, 0.02).running[3]);
}

// 14 V held at the lamp's end: through 20 mΩ the battery takes 66.7 A, through 10 mΩ it would take 100.
TEST(WhatIf, AChargerMayReachItsLimit) {
  const Circuit circuit = one_path(charger(2, 0, 14, 90));
  EXPECT_NEAR(what_if(circuit, 1, 0.03).voltage[2], 14, 1e-12);
  const Solution limited = what_if(circuit, 1, 0.001);
  EXPECT_NEAR(limited.current[3], -90, 1e-10);
  EXPECT_LT(limited.voltage[2], 14);
}

TEST(WhatIf, AnIsolatorMayBlockOrOpen) {
  const Circuit circuit{
      3, {source(1, 0, 12, 0.01), diode(1, 2, 0.5), source(2, 0, 11, 0.05), load(2, 0, Law::resistor, 1)}, 0};
  EXPECT_GT(what_if(circuit, 2, 0.2).current[1], 0);
  Circuit held = circuit;
  held.branches[2].size = 12;
  EXPECT_EQ(what_if(held, 2, 0.001).current[1], 0) << "a stiff second battery holds the lamp alone";
}

TEST(WhatIf, AConverterTakesWhatItsOutputGivesThen) {
  Branch input = load(2, 0, Law::power, 0), output = charger(3, 4, 5, 20);
  output.input = 2, output.efficiency = 0.9, output.idle = 2;
  const Circuit circuit{6,
                        {source(1, 0, 12.6, 0.02), resistor(1, 2, 0.03), input, output, resistor(3, 5, 0.02),
                         load(5, 4, Law::resistor, 0.6)},
                        0};
  what_if(circuit, 1, 0.1);
  const Solution changed = what_if(circuit, 4, 0.4);
  EXPECT_NEAR(changed.drop[2] * changed.current[2], 25 / 0.9 + 2, 1e-10);
}

TEST(WhatIf, OfAWireThatCarriesNothingChangesNothing) {
  Circuit circuit = one_path(resistor(2, 3, 1));
  circuit.points = 4;
  const Solution before = solved(circuit);
  EXPECT_EQ(what_if(circuit, 3, 0.001).voltage, before.voltage);
}

TEST(WhatIf, AShortIsToldAsSolvingTellsIt) {
  Solver solver(one_path(load(2, 0, Law::current, 1)));
  ASSERT_TRUE(solver.solve());
  Solver path(Circuit{3, {source(1, 0, 12, 0.01), resistor(1, 2, 0), resistor(2, 0, 1)}, 0});
  ASSERT_TRUE(path.solve());
  const auto found = path.with_resistance(2, 0);
  ASSERT_FALSE(found);
  EXPECT_EQ(found.error().kind, Failure::Kind::shorted_source);
  EXPECT_NEAR(found.error().amperes, 1200, 1e-9);
}

TEST(EstimatedGains, OfAConstantCurrentAreItsAmperesTimesTheOhmsSaved) {
  const Circuit circuit{3, {source(1, 0, 12, 0.01), resistor(1, 2, 0.02), load(2, 0, Law::current, 10)}, 0};
  Solver solver(circuit);
  ASSERT_TRUE(solver.solve());
  const auto gains = solver.estimate_gains(2, {0.004, 0.005, 7});
  EXPECT_NEAR(gains[0], 0.06, 1e-13);
  EXPECT_NEAR(gains[1], 0.15, 1e-13);
  EXPECT_EQ(gains[2], 0) << "a constant current has no resistance";
}

TEST(EstimatedGains, OfAResistorAreThoseOfTheVoltageDivider) {
  const Circuit circuit{
      4, {source(1, 0, 12, 0.01), resistor(1, 2, 0.02), load(2, 0, Law::resistor, 1), resistor(2, 3, 0)}, 0};
  Solver solver(circuit);
  ASSERT_TRUE(solver.solve());
  const auto gains = solver.estimate_gains(2, {0.01, 0.5, 1, 1});
  EXPECT_NEAR(gains[0], 0, 1e-13) << "the same resistance";
  EXPECT_NEAR(gains[1], 12 / 1.51 - 12 / 1.03, 1e-12);
  EXPECT_EQ(gains[3], 0) << "without resistance";
  const auto again = solver.estimate_gains(2, {0.001, 0.02, 1, 1});
  EXPECT_NEAR(again[0], 12 / 1.021 - 12 / 1.03, 1e-12);
}

// From the tangent: a warm wire made half as long is good to a few percent of its gain.
TEST(EstimatedGains, OfAWarmWireAreGoodToAFewPercent) {
  Circuit circuit{3, {source(1, 0, 12, 0.01), resistor(1, 2, 0.02), load(2, 0, Law::resistor, 0.5)}, 0};
  circuit.branches[1].heating = heating_at(0.00393, 30, 60, 25);
  Solver solver(circuit);
  const double before = solver.solve().value().voltage[2];
  const double gain = solver.estimate_gains(2, {0.01, 0.01, 0.5})[1];
  Circuit better = circuit;
  better.branches[1].resistance = 0.01;
  const double found = solved(better).voltage[2] - before;
  EXPECT_NEAR(gain, found, 0.05 * found);
  EXPECT_GT(found, 0.1);
}

}  // namespace
}  // namespace ohmtrail::solve
